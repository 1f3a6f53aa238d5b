"""What an entry leaves to the quote is written into it, so it holds for good."""

from collections.abc import Iterable, Mapping
from dataclasses import replace
from typing import Any

from partsplan.domain import ZERO, Entry, EntryKind, Garage, Happening, Quote
from partsplan.ledger.fold import fold
from partsplan.ledger.undoing import holding


def as_quoted(
    garage: Garage,
    quotes: Mapping[str, Quote],
    entries: Iterable[Entry],
    what: Happening,
) -> Happening:
    """An entry with its own figures, the same that ``fold`` would count without them.

    A later change of a quote then changes nothing that has happened. ``entries`` are
    those before it; ids must be known.
    """
    blank = {
        name: figure
        for name, figure in _figures(garage, quotes, tuple(entries), what).items()
        if getattr(what, name) is None
    }
    return replace(what, **blank)


def _figures(
    garage: Garage,
    quotes: Mapping[str, Quote],
    entries: tuple[Entry, ...],
    what: Happening,
) -> Mapping[str, Any]:
    """What fields of an entry hold where nothing is said."""
    quote = quotes.get(what.subject, Quote())
    match what.kind:
        case EntryKind.ORDERED:
            # What happened later may be known already.
            kept = (one for one in holding(entries)[0] if one.what.day <= what.day)
            part = fold(garage, quotes, kept).parts.get(what.subject)
            if part and part.to_be_replaced:
                return {"amount": 0, "deposit": 0}
            return {"amount": quote.landed, "deposit": quote.deposit}
        case EntryKind.FITTED:
            hours = garage.option[what.subject].hours
            return {"amount": quote.fitting, "hours": hours}
        case EntryKind.SENT_BACK:
            return {"amount": quote.core_return}
        case EntryKind.CREDITED:
            part = fold(garage, quotes, entries).parts.get(what.subject)
            out = part.deposit.out if part and part.deposit else 0
            return {"amount": out}
        case EntryKind.REFUSED:
            return {"amount": 0}
        case EntryKind.CHECKED:
            cause = garage.cause.get((what.subject, what.cause))
            return {
                "amount": cause.check_cost if cause else 0,
                "hours": cause.check_hours if cause else ZERO,
            }
    return {}
