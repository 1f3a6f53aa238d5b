"""A process of its own that writes entries until it is killed."""

from datetime import UTC, date, datetime
from multiprocessing.connection import Connection
from pathlib import Path

from partsplan.domain import EntryKind, Happening
from partsplan.logbook import append

NOW = datetime(2027, 3, 1, 12, 30, tzinfo=UTC)
LONG = "several pages, which is more to tear " * 120
SHORT = "a few words"


def happening(text: str, amount: int = 1250) -> Happening:
    """A sum that was paid."""
    return Happening(
        kind=EntryKind.PAID, day=date(2027, 3, 1), amount=amount, text=text
    )


def append_for_ever(path: Path, confirmed: Connection) -> None:
    """Write two entries at a time, and confirm their numbers."""
    while True:
        pair = append(path, [happening(LONG), happening(SHORT)], now=NOW)
        confirmed.send([entry.number for entry in pair])


def append_some(path: Path, times: int, who: str) -> None:
    """Write entries one by one."""
    for _ in range(times):
        append(path, [happening(who)], now=NOW)
