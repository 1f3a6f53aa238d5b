"""What one more entry changes."""

from dataclasses import dataclass

from partsplan.domain import Entered, Entry, Flag, Ledger
from partsplan.ledger import holding


@dataclass(frozen=True, slots=True, kw_only=True)
class Changed:
    """What an entry changes in where things stand.

    Attributes
    ----------
    spent, received
        Below 0 where it takes something back. [minor units]
    silenced, revived
        Earlier entries that say nothing any more, and that do so again.
    doubts
        Earlier entries that do not fit any more.
    """

    spent: int
    received: int
    silenced: tuple[Entry, ...]
    revived: tuple[Entry, ...]
    doubts: tuple[Flag, ...]


def changed_by(entered: Entered) -> Changed:
    """The difference that an entry makes."""
    standing = entered.now.standing
    before, after = entered.before, standing.ledger
    earlier = standing.entries[:-1]
    held = {entry.number for entry in holding(earlier)[0]}
    hold = {entry.number for entry in holding(standing.entries)[0]}
    silenced, revived, known = held - hold, hold - held, {*before.flags}
    return Changed(
        spent=_spent(after) - _spent(before),
        received=_received(after) - _received(before),
        silenced=tuple(one for one in earlier if one.number in silenced),
        revived=tuple(one for one in earlier if one.number in revived),
        doubts=tuple(
            flag
            for flag in after.flags
            if flag not in known and flag.entry != entered.entry.number
        ),
    )


def _spent(ledger: Ledger) -> int:
    return sum(month.spent for month in ledger.money.values())


def _received(ledger: Ledger) -> int:
    return sum(month.received for month in ledger.money.values())
