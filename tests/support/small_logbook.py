"""A garage whose parts are ordered, fitted and sent back, and a way to write entries.

One entry a line: day, kind, subject (``-`` for none) and fields, such as
``2027-01-05 ordered alternator amount=25000``. Money is in minor units.
"""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from datetime import UTC, date, datetime
from fractions import Fraction
from typing import Any

from partsplan.domain import (
    Cause,
    Coding,
    Entry,
    EntryKind,
    Garage,
    Happening,
    Ledger,
    Milestone,
    Month,
    Quote,
    Route,
    Supplier,
    Tool,
)
from partsplan.ledger import fold
from tests.support.building import fault, garage, instalments, option, vehicle

WRITTEN = datetime(2031, 1, 1, tzinfo=UTC)

FAULTS = (
    fault("charging", vehicle="van", fix_by=Month(2027, 3)),
    fault("cooling", vehicle="van"),
    fault("lamp", vehicle="coupe"),
    fault("pulls", vehicle="van"),
)
OPTIONS = (
    option(
        "alternator",
        "charging",
        route=Route.EXCHANGE,
        price=24000,
        core_deposit=8000,
        core_chance=Fraction("0.9"),
        core_days=45,
        core_return_cost=900,
        coding=Coding.PAID,
        coding_cost=2500,
        consumables=300,
        lead_days=20,
        hours=Fraction(3),
        warranty_months=24,
    ),
    option(
        "radiator",
        "cooling",
        price=10001,
        instalments=instalments("0:0.25;1:0.25;3:0.5"),
        lead_days=5,
        consumables=600,
        hours=Fraction(2),
    ),
    option("reseal", "cooling:0.5", route=Route.STAND_IN, price=500, followup_within=2),
    option("bulb", "lamp", price=1200, valid_until=Month(2027, 2)),
    option("tracking", "pulls", route=Route.WORKSHOP, price=7000),
)
GARAGE = garage(
    months=6,
    vehicles=(vehicle("van"), vehicle("coupe", driven_from=None)),
    faults=FAULTS,
    options=OPTIONS,
    tools=(Tool(id="puller", name="puller", price=3900),),
    suppliers=(Supplier(id="counter", name="the counter", currency="EUR"),),
    causes=(
        Cause(
            fault="charging",
            cause="worn brushes",
            chance=Fraction(1, 2),
            check_cost=1500,
            check_hours=Fraction(1, 2),
        ),
    ),
    milestones=(Milestone(id="inspection", month=Month(2027, 4), faults=("pulls",)),),
)
QUOTES = {
    "alternator": Quote(landed=24000, deposit=8000, fitting=2800, core_return=900),
    "radiator": Quote(landed=10001, fitting=600),
    "reseal": Quote(landed=500),
    "bulb": Quote(landed=1200),
    "tracking": Quote(landed=7000),
}


def log(*lines: str) -> tuple[Entry, ...]:
    """Entries, numbered from 1 on."""
    return numbered(happening(line) for line in lines)


def numbered(happenings: Iterable[Happening]) -> tuple[Entry, ...]:
    """Entries in the order in which they were written down."""
    return tuple(
        Entry(number=number, written=WRITTEN, what=what)
        for number, what in enumerate(happenings, 1)
    )


def happening(line: str) -> Happening:
    """What one line says; ``_`` stands for a space."""
    day, kind, *rest = line.split()
    subject = "" if rest[:1] == ["-"] else "".join(rest[:1])
    fields = dict(field.split("=") for field in rest[1:])
    given: dict[str, Any] = {name: _READ[name](text) for name, text in fields.items()}
    return Happening(
        kind=EntryKind(kind), day=date.fromisoformat(day), subject=subject, **given
    )


def folded(*lines: str, made: Garage = GARAGE) -> Ledger:
    """Where things stand after these lines."""
    return fold(made, QUOTES, log(*lines))


def flags(ledger: Ledger) -> list[tuple[int, str]]:
    """The number and the sentence of each flag."""
    return [(flag.entry, flag.message) for flag in ledger.flags]


def without_flags(ledger: Ledger) -> Ledger:
    """All else that it says."""
    return replace(ledger, flags=())


def _spaced(text: str) -> str:
    return text.replace("_", " ")


_READ: Mapping[str, Callable[[str], Any]] = {
    "amount": int,
    "deposit": int,
    "reading": int,
    "hours": Fraction,
    "cause": _spaced,
    "text": _spaced,
    "batch": str,
    "found": lambda text: text == "yes",
    "anyway": lambda text: text == "yes",
}
