"""What is wrong with a new entry, before it is written down."""

from collections.abc import Iterable
from datetime import date

from partsplan.domain import Entry, Garage, Happening, Ledger, Objection
from partsplan.ledger.form import form_objections
from partsplan.ledger.steps import out_of_step


def contradictions(
    garage: Garage,
    ledger: Ledger,
    what: Happening,
    today: date,
    entries: Iterable[Entry] = (),
) -> tuple[Objection, ...]:
    """All objections to an entry that is to follow those of a ledger.

    ``entries`` are those in the logbook, of which an ``undone`` names some. What does
    not follow from the ledger is only looked for in an entry that is right by itself.

    Many entries at once are checked faster by ``form_objections`` of each and one
    ``fold`` of all: the flags of the new ones are what does not follow.
    """
    found = form_objections(garage, what, today, entries)
    if any(not objection.liftable for objection in found):
        return found
    steps = out_of_step(garage, ledger.parts, ledger.odometer, what)
    return (*found, *(Objection(message=one, liftable=True) for one in steps))
