"""Every setting of a garage, as the workbook's sheet of keys and values has them.

A key inside a section is written ``section.key``.
"""

from partsplan.domain import Stage
from partsplan.intake.cells import (
    FINE_MONEY,
    MONEY,
    MONTH,
    TEXT,
    YES_NO,
    money,
    number,
    whole,
    words,
)
from partsplan.intake.currency import CODE
from partsplan.intake.schema import Column
from partsplan.intake.settings import FARTHEST_LOOK, LONGEST_PLAN

SHARE = number(0, 1)

RATES = "rates"
RATE = Column(
    f"{RATES}.USD",
    number(above=True),
    "what one unit of another currency costs; such a row for each one that is named",
)

SETTINGS = (
    Column("name", TEXT, "what you call the garage", needed=True),
    Column("currency", CODE, "of all amounts that name no other one", needed=True),
    Column("start", MONTH, "first month of the plan", needed=True),
    Column("months", whole(1, LONGEST_PLAN), "how many it covers", default="6"),
    Column("budget", MONEY, "money for the cars in each month [money]", needed=True),
    Column("hours", number(), "own hours in each month [hours]", needed=True),
    Column(
        "opening_cash",
        money(debt=True),
        "money in hand before the first month [money]",
        default="0",
    ),
    Column(
        "carry_over",
        YES_NO,
        "whether unspent money moves on to the next month",
        default="yes",
    ),
    Column(
        "reserve", MONEY, "what must be left when a month ends [money]", default="0"
    ),
    Column(
        "money_per_point",
        FINE_MONEY,
        "what a point borne for a month is worth [money]",
        blank="the mean monthly budget / 200",
    ),
    Column("hour_value", MONEY, "what an hour of your own is worth", default="0"),
    Column(
        "tax_rate",
        SHARE,
        "of suppliers whose prices come without tax, as a share",
        default="0",
    ),
    Column(
        "look_beyond",
        whole(0, FARTHEST_LOOK),
        "months after the plan in which a repair still counts",
        default="6",
    ),
    Column(
        "core_trust",
        SHARE,
        "core_chance from which a deposit counts as money that comes back",
        default="0.8",
    ),
    Column(
        "allow_risky_routes",
        YES_NO,
        "whether used and economy parts, and stand-ins, may go into brakes, steering, "
        "tyres and the fuel system",
        default="no",
    ),
    Column(
        "discount_rate",
        SHARE,
        "interest a year, as a share; it only counts when options are compared",
        default="0",
    ),
    Column(
        "decimal_comma",
        YES_NO,
        "whether figures in the tables of a folder, and in texts of garage.toml, are "
        "written 12,50",
        default="no",
    ),
    Column(
        "priority",
        words(Stage),
        "what a plan looks after first, and what next",
        default=";".join(Stage),
    ),
    Column(
        "weights.safety", number(), "how much safety counts in points", default="0.6"
    ),
    Column(
        "weights.drivability",
        number(),
        "how much drivability counts in points",
        default="0.3",
    ),
    Column(
        "weights.enjoyment",
        number(),
        "how much enjoyment counts in points",
        default="0.1",
    ),
    RATE,
    Column(
        "workshop.heated",
        YES_NO,
        "whether it is warm all year",
        blank="yes, unless it has temperatures",
    ),
    Column(
        "workshop.mean_temperature",
        number(-60, 60),
        "of the twelve calendar months, January first [Celsius]",
    ),
    Column(
        "workshop.coding_tool",
        YES_NO,
        "whether you can match control units to a car",
        default="no",
    ),
)

LISTS = frozenset({"budget", "hours", "priority", "workshop.mean_temperature"})
"""Settings of one value or more, with ``;`` between them; of the first two the last
value repeats."""

SECTIONS = frozenset(one.name.partition(".")[0] for one in SETTINGS if "." in one.name)
