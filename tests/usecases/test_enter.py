"""Entries are checked against what is really in the logbook when they are written."""

from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from datetime import UTC, date, datetime
from pathlib import Path
from typing import Any

import pytest

from partsplan import ledger
from partsplan.domain import Entered, EntryKind, Objection
from partsplan.errors import RefusedEntry
from partsplan.logbook import FILE, read
from partsplan.usecases import Told, enter, where_it_stands
from tests.cli.logged import logged_garage
from tests.cli.running import start

DAY = date(2027, 1, 5)
NOW = datetime(2027, 1, 5, 12, tzinfo=UTC)


@pytest.fixture
def cars(tmp_path: Path) -> Path:
    return logged_garage(tmp_path / "cars")


def happens(cars: Path, kind: str, subject: str, **said: Any) -> Entered:
    told = Told(kind=EntryKind(kind), day=DAY, subject=subject, **said)
    return enter(cars, told, today=DAY, now=NOW)


def meanwhile(monkeypatch: pytest.MonkeyPatch, other: Callable[[], object]) -> None:
    """Once, between what an entry is checked against and its writing, this happens."""
    check = ledger.contradictions

    def checked(*words: Any) -> tuple[Objection, ...]:
        monkeypatch.setattr(ledger, "contradictions", check)
        found = check(*words)
        other()
        return found

    monkeypatch.setattr(ledger, "contradictions", checked)


def test_an_entry_of_somebody_else_in_between_is_looked_at(
    cars: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    meanwhile(monkeypatch, lambda: happens(cars, "ordered", "hose-new"))
    with pytest.raises(RefusedEntry, match="hose-new is on the way since 2027-01-05"):
        happens(cars, "ordered", "hose-new")
    assert len(read(cars / FILE)) == 1


def test_sums_are_those_of_what_somebody_else_has_entered(
    cars: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    happens(cars, "ordered", "starter-exchange")
    happens(cars, "arrived", "starter-exchange")
    happens(cars, "fitted", "starter-exchange")
    meanwhile(monkeypatch, lambda: happens(cars, "dud", "starter-exchange"))
    ordered = happens(cars, "ordered", "starter-exchange").entry
    assert (ordered.number, ordered.what.amount, ordered.what.deposit) == (5, 0, 0)


def test_of_many_processes_that_order_the_same_one_succeeds(cars: Path) -> None:
    words = ("enter", cars, "ordered", "hose-new", "--today", "2027-01-05")
    with ThreadPoolExecutor(4) as pool:
        ran = [pool.submit(start, *words) for _ in range(4)]
    codes = sorted(one.result().returncode for one in ran)
    assert codes == [0, 3, 3, 3]
    assert len(read(cars / FILE)) == 1


def test_the_answer_is_what_the_file_says(cars: Path) -> None:
    entered = happens(cars, "ordered", "starter-exchange", hours=None)
    assert entered.now.standing == where_it_stands(cars)
    assert entered.before.parts == {}
    assert entered.quoted == ("amount", "deposit")
    assert entered.entry.written == NOW
