"""Where things stand as lines for other programs."""

from collections.abc import Iterator, Sequence
from dataclasses import fields

from partsplan.domain import Duty, Now
from partsplan.reports.duty_words import duty_sentence
from partsplan.reports.records import record_lines

_SUMS = (
    "opening",
    "budget",
    "received",
    "spent",
    "balance",
    "promised",
    "reserve",
    "free",
    "expected_back",
)


def now_plain(now: Now) -> str:
    """Records of duties, money, dues, parts and causes; money is decimal text."""
    return record_lines(_records(now))


def _records(now: Now) -> Iterator[Sequence[str]]:
    garage, ledger = now.standing.garage, now.standing.ledger
    sums = garage.currency.format
    yield "now", garage.name, garage.currency.code, now.today.isoformat()
    for duty in now.duties:
        sentence = duty_sentence(garage, duty)
        yield "duty", duty.code, duty.day.isoformat(), _subject(duty), sentence
    if now.money is not None:
        for name in _SUMS:
            yield "money", str(now.money.month), name, sums(getattr(now.money, name))
    for due in now.dues:
        yield "due", str(due.month), due.option, due.kind, sums(due.amount)
    for part in ledger.parts.values():
        days = (part.ordered, part.expected, part.fitted)
        shown = (day.isoformat() if day else "" for day in days)
        yield "part", part.option, part.state, *shown
    for one in ledger.checked:
        finding = "found" if one.found else "ruled out"
        yield "cause", one.fault, one.cause, finding, one.day.isoformat()
    for flag in ledger.flags:
        yield "doubt", str(flag.entry), flag.message


def _subject(duty: Duty) -> str:
    """The vehicle, fault or option that it is about: its first field after the day."""
    name = next(one.name for one in fields(duty) if one.name != "day")
    return str(getattr(duty, name))
