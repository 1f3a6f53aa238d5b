"""Writes down what has happened."""

from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass, replace
from datetime import date, datetime
from pathlib import Path
from typing import TypeVar

from partsplan.domain import Currency, Entered, Entry, EntryKind, Garage, Happening
from partsplan.errors import InvalidRequest, RefusedEntry

_Value = TypeVar("_Value")

MOST_HOURS = 10_000
"""[h]"""
HIGHEST_READING = 999_999_999


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """An entry as people write it; None where they say nothing.

    ``amount`` and ``deposit`` are decimal text in the garage's currency. A cause may be
    named by its beginning, if no other suspected one begins so.
    """

    kind: EntryKind
    day: date
    subject: str = ""
    amount: str | None = None
    deposit: str | None = None
    hours: str | None = None
    cause: str = ""
    found: bool | None = None
    reading: str | None = None
    who: str = ""
    text: str = ""


def enter(
    folder: Path, told: Told, *, anyway: bool = False, today: date, now: datetime
) -> Entered:
    """Write an entry into the logbook of a garage, made if there is none yet.

    What it leaves to the quote is filled in, so a later change of the quote changes
    nothing. ``anyway`` takes it although something speaks against it, if that can be
    lifted; ``now`` comes with its zone.

    Raises
    ------
    InvalidGarage
    DamagedLogbook, LogbookUnavailable
    InvalidRequest
        If a figure or a text is none.
    RefusedEntry
        With all that speaks against it.
    """
    while True:
        # Another entry between reading and writing could make all of it wrong.
        with suppress(_WrittenMeanwhile):
            return _enter(folder, told, anyway, today, now)


def subjects(folder: Path, kind: EntryKind) -> tuple[str, ...]:
    """The ids in a garage that entries of a kind may name.

    Raises
    ------
    InvalidGarage
    """
    from partsplan.intake import read_garage
    from partsplan.ledger import subjects as ids

    return ids(read_garage(folder), kind)


class _WrittenMeanwhile(Exception):
    """Somebody else has written an entry."""


def _enter(
    folder: Path, told: Told, anyway: bool, today: date, now: datetime
) -> Entered:
    from partsplan.ledger import as_quoted, contradictions
    from partsplan.logbook import append, beside
    from partsplan.usecases.now import on_day
    from partsplan.usecases.where_it_stands import after, where_it_stands

    before = where_it_stands(folder)
    garage, entries = before.garage, before.entries
    what = _read(garage, told)
    against = contradictions(garage, before.ledger, what, today, entries)
    liftable = all(one.liftable for one in against)
    if against and not (anyway and liftable):
        messages = (one.message for one in against)
        raise RefusedEntry(messages, liftable=liftable)
    happening = as_quoted(garage, before.quotes, entries, what)
    written = append(
        beside(folder),
        [replace(happening, anyway=bool(against))],
        now=now,
        known=len(entries),
        check=_nobody_else,
    )
    return Entered(
        entry=written[0],
        quoted=tuple(
            name
            for name in ("amount", "deposit", "hours")
            if getattr(what, name) != getattr(happening, name)
        ),
        lifted=tuple(one.message for one in against),
        before=before.ledger,
        now=on_day(after(garage, (*entries, *written)), today),
    )


def _nobody_else(later: tuple[Entry, ...]) -> None:
    if later:
        raise _WrittenMeanwhile


def _read(garage: Garage, told: Told) -> Happening:
    """What was told, its texts on one line and its figures as numbers."""
    from partsplan.intake.cells import MONEY, number, whole

    def figure(field: str, read: Callable[[str, Currency], _Value]) -> _Value | None:
        text: str | None = getattr(told, field)
        if text is None:
            return None
        try:
            return read(text, garage.currency)
        except ValueError as error:
            raise InvalidRequest(f"{field}: {error}") from error

    subject = _one_line("subject", told.subject)
    return Happening(
        kind=told.kind,
        day=told.day,
        subject=subject,
        amount=figure("amount", MONEY.read),
        deposit=figure("deposit", MONEY.read),
        hours=figure("hours", number(0, MOST_HOURS).read),
        cause=_whole_cause(garage, subject, _one_line("cause", told.cause)),
        found=told.found,
        reading=figure("reading", whole(0, HIGHEST_READING).read),
        who=_one_line("who", told.who),
        text=_one_line("text", told.text),
    )


def _one_line(field: str, text: str) -> str:
    from partsplan.sheets import check_characters

    text = " ".join(text.split())
    try:
        check_characters(text)
        text.encode()
    except ValueError as error:
        raise InvalidRequest(f"{field}: {error}") from error
    return text


def _whole_cause(garage: Garage, fault: str, beginning: str) -> str:
    """The one suspected cause that begins so, else the text as it is."""
    suspected = [cause for name, cause in garage.cause if name == fault]
    if not beginning or beginning in suspected:
        return beginning
    lowered = beginning.lower()
    meant = [one for one in suspected if one.lower().startswith(lowered)]
    return meant[0] if len(meant) == 1 else beginning
