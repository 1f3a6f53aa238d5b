"""Every table of a garage and every column in it, in one place.

Reading, writing and the page that explains the columns all go by these tables. A column
has the name of the fact's field, and a blank cell leaves that field at its default.
"""

from partsplan.domain import (
    Access,
    Cause,
    Fault,
    FaultStatus,
    Inspection,
    Likelihood,
    Milestone,
    Severity,
    Supplier,
    System,
    Tax,
    Tool,
    Use,
    Vehicle,
)
from partsplan.intake.cells import (
    DRIVEN_FROM,
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
from partsplan.intake.lists import IDS, TEXTS
from partsplan.intake.option_columns import OPTIONS
from partsplan.intake.schema import ID, MOST_MONTHS, NOTE, Column, Table

MOST_FAULTS = 20_000
"""Most rows of faults.csv."""

VEHICLES = Table(
    "vehicles",
    "What is kept alive.",
    Vehicle,
    (
        ID,
        Column("name", TEXT, "what you call it", needed=True),
        Column("year", whole(1880, 2100), "year of build"),
        Column("use", words(Use), "how it is used", default="daily"),
        Column(
            "keep_months",
            whole(0, MOST_MONTHS),
            "how long it stays, from the start [months]",
            default="36",
        ),
        Column(
            "driven_from",
            DRIVEN_FROM,
            "first month on the road",
            blank="from the start; for stored ones no",
        ),
        Column("value", MONEY, "what it would fetch as it stands [money]"),
        NOTE,
    ),
    needed=True,
)

FAULTS = Table(
    "faults",
    "What is wrong with a vehicle, or wished for.",
    Fault,
    (
        ID,
        Column("vehicle", IDENT, "the vehicle", needed=True, refers="vehicles"),
        Column("title", TEXT, "what is wrong", needed=True),
        Column("kind", IDENT, "a fault kind of the catalogue; fills blanks of the row"),
        Column("system", words(System), "part of the vehicle", default="other"),
        Column(
            "severity",
            or_none(words(Severity), None, "it can do no harm"),
            "of the harm it can do",
            blank="it can do no harm",
        ),
        Column(
            "likelihood", words(Likelihood), "of that harm; F is never", default="F"
        ),
        Column(
            "inspection",
            words(Inspection),
            "what a roadworthiness inspection would call it",
            default="none",
        ),
        Column(
            "drivability",
            whole(0, 4),
            "how much it hampers driving; 4 is not drivable",
            default="0",
        ),
        Column(
            "loss_per_month", MONEY, "what it costs while it waits [money]", default="0"
        ),
        Column(
            "damage_chance",
            number(0, 1),
            "chance of further damage [a month]",
            default="0",
        ),
        Column(
            "damage_cost", MONEY, "what that damage would cost [money]", default="0"
        ),
        Column("enjoyment", number(0, 10), "worth of a cosmetic wish", default="0"),
        Column(
            "points",
            number(0, 100),
            "your own figure instead of the scores",
            blank="the scores count",
        ),
        Column("growth", number(0, 1), "how its points grow [a month]", default="0"),
        Column("lamps", or_none(TEXTS, (), "no lamp"), "warning lamps it lights"),
        Column("codes", TEXTS, "trouble codes it stores"),
        Column("pair_with", IDS, "faults to be mended together", refers="faults"),
        Column("after", IDS, "faults to be cured before", refers="faults"),
        Column("fix_by", MONTH, "month in which it is to be cured at last"),
        Column(
            "status",
            words(FaultStatus),
            "open is planned, watch is only shown",
            default="open",
        ),
    ),
    needed=True,
)

SUPPLIERS = Table(
    "suppliers",
    "Where parts come from.",
    Supplier,
    (
        ID,
        Column("name", TEXT, "what you call it", needed=True),
        Column("currency", CODE, "of its prices", blank="the garage's"),
        Column("shipping", MONEY, "an order [money]", default="0", own_money=True),
        Column(
            "free_over",
            MONEY,
            "goods value from which shipping is free [money]",
            blank="never free",
            own_money=True,
        ),
        Column(
            "tax", words(Tax), "whether its prices have tax in them", default="included"
        ),
        Column("duty_rate", number(0, 1), "duty, share of the goods", default="0"),
        NOTE,
    ),
)

ACCESS = Table(
    "access",
    "Work that jobs behind the same panel share.",
    Access,
    (
        ID,
        Column("hours", number(0), "to get there and back [hours]", needed=True),
        Column("title", TEXT, "what is taken off"),
    ),
)

TOOLS = Table(
    "tools",
    "Tools that jobs need.",
    Tool,
    (
        ID,
        Column("name", TEXT, "what it is", needed=True),
        Column("price", MONEY, "what it costs to buy [money]", default="0"),
        Column("owned", YES_NO, "whether you have it", default="no"),
    ),
)

CAUSES = Table(
    "causes",
    "What may be behind a fault, to be checked before anything is bought.",
    Cause,
    (
        Column("fault", IDENT, "the fault", needed=True, refers="faults"),
        Column("cause", TEXT, "what is suspected", needed=True),
        Column("chance", number(0, 1), "that it is this one", needed=True),
        Column("check_cost", MONEY, "what a check costs [money]", default="0"),
        Column("check_hours", number(0), "own work of a check [hours]", default="0"),
        Column("cure", IDENT, "the option that would cure it", refers="options"),
    ),
    key=("fault", "cause"),
)

MILESTONES = Table(
    "milestones",
    "Months in which a set of faults is to be cured.",
    Milestone,
    (
        ID,
        Column("month", MONTH, "the month", needed=True),
        Column("faults", IDS, "the faults", needed=True, refers="faults"),
        Column("title", TEXT, "what it is for"),
    ),
)

TABLES = (VEHICLES, FAULTS, OPTIONS, SUPPLIERS, ACCESS, TOOLS, CAUSES, MILESTONES)
