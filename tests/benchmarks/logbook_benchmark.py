"""Times a logbook of many entries.

``python -m tests.benchmarks.logbook_benchmark [ENTRIES]``; the file lies in the folder
for temporary files, so the disk behind it counts.
"""

import sys
import time
from collections.abc import Callable, Iterator
from datetime import UTC, date, datetime, timedelta
from fractions import Fraction
from pathlib import Path
from statistics import median
from tempfile import TemporaryDirectory
from typing import TypeVar

from partsplan.domain import Entry, EntryKind, Happening
from partsplan.logbook import FILE, append, read
from tests.benchmarks.machine import load, machine

ENTRIES = 100_000
APPENDS = 50
NOW = datetime(2027, 3, 1, 12, 30, tzinfo=UTC)
FIRST_DAY = date(2007, 3, 1)
KINDS = (
    EntryKind.ORDERED,
    EntryKind.ARRIVED,
    EntryKind.FITTED,
    EntryKind.SENT_BACK,
    EntryKind.CREDITED,
    EntryKind.PAID,
    EntryKind.NOTE,
)

Result = TypeVar("Result")


def main(entries: int) -> None:
    """Print the seconds of each step."""
    print(f"{machine()}; load {load()}; {entries:,} entries")
    happenings = list(made_up(entries))
    with TemporaryDirectory() as folder:
        path = Path(folder) / FILE
        timed("write all at once", lambda: append(path, happenings, now=NOW))
        known = timed("read all", lambda: read(path))
        append_one_by_one(path, known)
        print(f"{path.stat().st_size / 2**20:.1f} MiB")


def append_one_by_one(path: Path, known: tuple[Entry, ...]) -> None:
    """Time single entries, each with a check that nothing came between."""
    seconds = []
    for number in range(APPENDS):
        begun = time.perf_counter()
        append(
            path,
            [known[number].what],
            now=NOW,
            known=len(known) + number,
            check=refuse_others,
        )
        seconds.append(time.perf_counter() - begun)
    told("append one, median", median(seconds))
    told("append one, slowest", max(seconds))


def refuse_others(newer: tuple[Entry, ...]) -> None:
    """A check that costs nothing itself."""
    assert not newer


def made_up(entries: int) -> Iterator[Happening]:
    """What could happen in twenty years, each part step by step."""
    for number in range(entries):
        part, step = divmod(number, len(KINDS))
        kind = KINDS[step]
        yield Happening(
            kind=kind,
            day=FIRST_DAY + timedelta(days=number * 365 * 20 // entries),
            subject=f"part-{part}",
            amount=part % 9000 + 50 if kind is EntryKind.PAID else None,
            hours=Fraction(part % 17, 4) if kind is EntryKind.FITTED else None,
            who="Ann" if part % 2 else "Ben",
            text="what was to be said about it" if kind is EntryKind.NOTE else "",
        )


def timed(name: str, step: Callable[[], Result]) -> Result:
    """The result of a step, its seconds printed."""
    begun = time.perf_counter()
    result = step()
    told(name, time.perf_counter() - begun)
    return result


def told(name: str, seconds: float) -> None:
    """Print one line."""
    print(f"{name:20} {seconds:8.4f} s")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else ENTRIES)
