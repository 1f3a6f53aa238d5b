"""The columns of options.csv."""

from partsplan.domain import Coding, Option, Route
from partsplan.intake.cells import (
    DAY,
    IDENT,
    MONEY,
    MONTH,
    TEXT,
    YES_NO,
    number,
    or_none,
    whole,
    words,
)
from partsplan.intake.currency import CODE
from partsplan.intake.lists import FIXES, IDS, INSTALMENTS
from partsplan.intake.schema import ID, MOST_DAYS, MOST_MONTHS, NOTE, Column, Table

OPTIONS = Table(
    "options",
    "Ways to cure faults: a part from somewhere, or somebody's work.",
    Option,
    (
        ID,
        Column(
            "fixes",
            FIXES,
            "faults it cures, all of one vehicle; relief is the share of the trouble "
            "that it takes away, 1 if not given",
            needed=True,
            refers="faults",
        ),
        Column("route", words(Route), "how it is sourced", needed=True),
        Column("supplier", IDENT, "where it is bought", refers="suppliers"),
        Column("part_no", TEXT, "part number"),
        Column("price", MONEY, "one piece [money]", needed=True, own_money=True),
        Column("price_low", MONEY, "lowest price seen [money]", own_money=True),
        Column("price_high", MONEY, "highest price seen [money]", own_money=True),
        Column(
            "currency",
            CODE,
            "of the prices and the deposit",
            blank="its supplier's, else the garage's",
        ),
        Column("quantity", number(0, above=True), "pieces", default="1"),
        Column(
            "core_deposit",
            MONEY,
            "paid until the old unit is back, a piece [money]",
            default="0",
            own_money=True,
        ),
        Column(
            "core_chance",
            number(0, 1),
            "chance that the old unit is accepted",
            default="1",
        ),
        Column(
            "core_days",
            whole(0, MOST_DAYS),
            "from fitting to the credit [days]",
            default="30",
        ),
        Column(
            "core_return_cost",
            MONEY,
            "sending the old units back, all of them [money]",
            default="0",
        ),
        Column(
            "coding", words(Coding), "who matches a unit to the car", default="none"
        ),
        Column("coding_cost", MONEY, "of paid coding [money]", default="0"),
        Column("consumables", MONEY, "fluids, seals, sundries [money]", default="0"),
        Column(
            "life_months",
            or_none(whole(1, MOST_MONTHS), None, "no end"),
            "how long it lasts [months]",
            blank="as long as the vehicle is kept",
        ),
        Column(
            "dud_chance",
            number(0, 1, below=True),
            "chance that it is bad out of the box",
            default="0",
        ),
        Column(
            "warranty_months", whole(0, MOST_MONTHS), "warranty [months]", default="0"
        ),
        Column(
            "lead_days",
            whole(0, MOST_DAYS),
            "from order to delivery [days]",
            default="0",
        ),
        Column(
            "hours", number(0), "own work, without shared access [hours]", default="0"
        ),
        Column("access", IDS, "access groups it shares", refers="access"),
        Column("tools", IDS, "tools it needs", refers="tools"),
        Column("min_temp", number(-60, 60), "coldest workshop that will do [Celsius]"),
        Column(
            "instalments",
            INSTALMENTS,
            "months after ordering and share of the landed price",
            default="0:1",
        ),
        Column(
            "followup_within",
            whole(1, MOST_MONTHS),
            "how long a stand-in holds; needed there [months]",
        ),
        Column("not_before", MONTH, "first fitting month"),
        Column("not_after", MONTH, "last fitting month"),
        Column("road_legal", YES_NO, "whether it may go on the road", default="yes"),
        Column("quoted_on", DAY, "when the price was asked"),
        Column("valid_until", MONTH, "last ordering month at that price"),
        NOTE,
    ),
    needed=True,
)
