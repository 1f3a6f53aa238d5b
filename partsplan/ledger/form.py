"""What is wrong with an entry whatever stands in the ledger."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date

from partsplan.domain import Entry, EntryKind, Garage, Happening, Objection
from partsplan.ledger.subjects import (
    nearest_cause,
    nearest_subject,
    unknown_cause,
    unknown_subject,
)
from partsplan.ledger.undoing import (
    holding,
    nothing_to_undo,
    undone_before,
    undone_name,
)

YEARS = range(1900, 3000)
"""Days in other years are slips."""

_FIELDS = {
    "subject": "what it is about",
    "amount": "an amount",
    "deposit": "a deposit",
    "hours": "own hours",
    "cause": "the cause that was checked",
    "found": "whether the cause was found",
    "reading": "a reading",
}
"""Fields that only some kinds have, and what they hold."""


@dataclass(frozen=True, slots=True)
class _Form:
    needs: tuple[str, ...]
    may: tuple[str, ...] = ()


_FORMS = {
    EntryKind.ORDERED: _Form(("subject",), ("amount", "deposit")),
    EntryKind.ARRIVED: _Form(("subject",), ("amount",)),
    EntryKind.FITTED: _Form(("subject",), ("amount", "hours")),
    EntryKind.CHECKED: _Form(("subject", "cause", "found"), ("amount", "hours")),
    EntryKind.DUD: _Form(("subject",)),
    EntryKind.SENT_BACK: _Form(("subject",), ("amount",)),
    EntryKind.CREDITED: _Form(("subject",), ("amount",)),
    EntryKind.REFUSED: _Form(("subject",), ("amount",)),
    EntryKind.PAID: _Form(("amount",), ("subject",)),
    EntryKind.MONEY_IN: _Form(("amount",), ("subject",)),
    EntryKind.ODOMETER: _Form(("subject", "reading")),
    EntryKind.UNDONE: _Form(("subject",)),
    EntryKind.NOTE: _Form((), ("subject",)),
}


def form_objections(
    garage: Garage, what: Happening, today: date, entries: Iterable[Entry] = ()
) -> tuple[Objection, ...]:
    """All that is wrong with an entry by itself; ``entries`` are those it may undo.

    What can be lifted is a day after ``today``, a cause that nobody suspected, and
    undoing once more what is undone.
    """
    fixed = [*_fields(what), *_figures(garage, what)]
    if unknown := unknown_subject(garage, what):
        fixed.append(f"{unknown}{nearest_subject(garage, what)}")
    liftable = []
    if what.cause and (unknown := unknown_cause(garage, what)):
        liftable.append(f"{unknown}{nearest_cause(garage, what)}")
    if what.day.year not in YEARS:
        fixed.append(f"expected a year from 1900 to 2999, got {what.day}")
    elif what.day > today:
        liftable.append(f"{what.day} is still to come; expected a day up to {today}")
    if what.kind is EntryKind.UNDONE and what.subject:
        name, known = undone_name(what.subject), tuple(entries)
        if not _named(known, name):
            fixed.append(nothing_to_undo(name))
        elif not _named(holding(known)[0], name):
            liftable.append(undone_before(name))
    return (
        *(Objection(message=message, liftable=False) for message in fixed),
        *(Objection(message=message, liftable=True) for message in liftable),
    )


def _fields(what: Happening) -> Iterator[str]:
    """Fields that are missing, and ones that say nothing with this kind."""
    form = _FORMS[what.kind]
    for field, holds in _FIELDS.items():
        blank = getattr(what, field) in ("", None)
        if blank and field in form.needs:
            yield f'"{what.kind}" needs {holds}'
        elif not blank and field not in form.needs + form.may:
            yield f'"{what.kind}" takes no {field}'
    if what.kind is EntryKind.NOTE and not what.text:
        yield '"note" needs a text'


def _figures(garage: Garage, what: Happening) -> Iterator[str]:
    """Figures below 0."""
    for field, money in (("amount", what.amount), ("deposit", what.deposit)):
        if money is not None and money < 0:
            text = garage.currency.format(money)
            yield f"{field}: expected 0 or more, got {text}"
    for field, figure in (("hours", what.hours), ("reading", what.reading)):
        if figure is not None and figure < 0:
            yield f"{field}: expected 0 or more, got {figure}"


def _named(entries: tuple[Entry, ...], name: int | str) -> bool:
    return any(name in (entry.number, entry.what.batch) for entry in entries)
