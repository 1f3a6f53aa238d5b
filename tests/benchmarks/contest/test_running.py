"""A contestant is heard while it runs, and ended if it does not end."""

import os
from collections.abc import Callable
from time import sleep

import pytest

from partsplan.domain import Garage
from tests.benchmarks.contest import running
from tests.benchmarks.contest.cell import Task
from tests.benchmarks.contest.telling import Teller


def oversleep() -> str:
    sleep(60)
    return "on time"


def vanish() -> str:
    os._exit(3)


def gorge() -> str:
    raise MemoryError("too much")


ENDS: tuple[Callable[[], str], ...] = (oversleep, vanish, gorge)


def compete(garage: Garage, task: Task, teller: Teller) -> str:
    """Runs as a contestant, which knows by the seed how to misbehave."""
    teller.start()
    for _ in range(2):
        teller.tell("worth", 5.0, 7.0)
    teller.show(())
    return ENDS[task.seed]()


@pytest.mark.parametrize(
    ("end", "told"),
    [
        (oversleep, "killed after"),
        (vanish, "crashed, exit code 3"),
        (gorge, "failed: MemoryError: too much"),
    ],
)
def test_what_was_told_before_a_bad_end_is_kept(
    end: Callable[[], str], told: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(running.CONTESTANTS, "bad", "test_running")
    seed = ENDS.index(end)
    task = Task(faults=3, months=1, seed=seed, seconds=0.1, gap=0.0, threads=1)
    cell = running.run("bad", task, grace=0.9)
    assert cell.ended.startswith(told)
    assert [(e.stage, e.value, e.bound) for e in cell.events] == [("worth", 5.0, 7.0)]
    assert cell.took < 10
    assert cell.peak > 1
    assert cell.broken == 0
    assert cell.figures is not None
    assert cell.figures["worth"] == 0


def test_a_contestant_that_is_not_installed_is_left_out(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setitem(running.CONTESTANTS, "absent", "not_there")
    task = Task(faults=3, months=1, seed=1, seconds=1.0, gap=0.0, threads=1)
    cell = running.run("absent", task)
    assert cell.ended.startswith("left out")
    assert cell.events == []
