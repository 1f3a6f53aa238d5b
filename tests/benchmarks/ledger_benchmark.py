"""Times the fold of a long logbook, and what is then asked of the ledger.

``python -m tests.benchmarks.ledger_benchmark [ENTRIES]``; processor time, the least of
``RUNS``, since the rest is what else the machine does.
"""

import gc
import random
import sys
from collections.abc import Callable, Iterator, Mapping
from datetime import UTC, date, datetime, timedelta
from itertools import count, islice
from time import process_time
from typing import Any

from partsplan.domain import Entry, EntryKind, Garage, Happening, Month, Quote
from partsplan.ledger import contradictions, duties, fold, money_now
from partsplan.pricing import price
from tests.benchmarks.generator import made_up_garage

ENTRIES = 100_000
FAULTS = 1000
RUNS = 5
A_DAY = 30
"""Entries."""
WRITTEN = datetime(2100, 1, 1, tzinfo=UTC)


def main(entries: int) -> None:
    """Print the seconds of each step."""
    garage = made_up_garage(FAULTS, 12, 1)
    quotes = {option.id: _quote(garage, option.id) for option in garage.options}
    logbook = tuple(islice(_entries(garage, quotes), entries))
    today = logbook[-1].what.day
    ledger = fold(garage, quotes, logbook)
    new = Happening(kind=EntryKind.ARRIVED, day=today, subject=garage.options[0].id)
    print(f"{len(logbook):,} entries of {len(ledger.parts):,} parts")
    steps: Mapping[str, Callable[[], object]] = {
        "fold": lambda: fold(garage, quotes, logbook),
        "duties": lambda: duties(garage, ledger, today, frozenset()),
        "money": lambda: money_now(garage, ledger, Month.of(today), today),
        "a new entry": lambda: contradictions(garage, ledger, new, today, logbook),
    }
    for name, step in steps.items():
        print(f"{name:12} {min(_seconds(step) for _ in range(RUNS)):8.4f} s")


def _seconds(step: Callable[[], object]) -> float:
    gc.collect()
    begun = process_time()
    step()
    return process_time() - begun


def _quote(garage: Garage, option: str) -> Quote:
    priced = price(garage, garage.option[option])
    return Quote(
        landed=priced.landed,
        deposit=priced.deposit,
        fitting=priced.coding + priced.consumables,
        core_return=priced.core_return,
    )


def _entries(garage: Garage, quotes: Mapping[str, Quote]) -> Iterator[Entry]:
    """Parts one after the other, with readings, payments, notes and slips between."""
    chance = random.Random(1)
    begin = date(2027, 1, 1)
    numbers = count(1)

    def entry(kind: EntryKind, subject: str = "", **fields: Any) -> Entry:
        number = next(numbers)
        day = begin + timedelta(number // A_DAY)
        what = Happening(kind=kind, day=day, subject=subject, **fields)
        return Entry(number=number, written=WRITTEN, what=what)

    for place in count():
        option = chance.choice(garage.options).id
        steps = [EntryKind.ORDERED, EntryKind.ARRIVED, EntryKind.FITTED]
        if quotes[option].deposit:
            steps += [EntryKind.SENT_BACK, EntryKind.CREDITED]
        for kind in steps:
            yield entry(kind, option)
        yield entry(EntryKind.PAID, amount=chance.randrange(5000))
        if place % 10 == 0:
            vehicle = chance.choice(garage.vehicles).id
            yield entry(EntryKind.ODOMETER, vehicle, reading=place)
            wrong = entry(EntryKind.NOTE, vehicle, text="squeaks")
            yield wrong
            yield entry(EntryKind.UNDONE, str(wrong.number))


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else ENTRIES)
