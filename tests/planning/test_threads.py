"""The number of threads is not taken from a run that is under way."""

from threading import Event
from typing import Any

import highspy
import pytest

from partsplan.planning.solver import highs


class Waiting:
    """Stands for a solver that runs until it is let go."""

    def __init__(self) -> None:
        self.lets_go = Event()

    def run(self) -> None:
        assert self.lets_go.wait(20)


def test_another_number_waits_for_the_end_of_a_run(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    reset: list[bool] = []
    monkeypatch.setattr(highspy.Highs, "resetGlobalScheduler", reset.append)
    monkeypatch.setattr(highs, "_used", [1])
    monkeypatch.setattr(highs, "_running", set())
    waiting: Any = Waiting()

    def poll(_: bool) -> None:
        highs.use_threads(2)
        assert reset == []
        waiting.lets_go.set()

    highs.run_aside(waiting, poll)
    assert reset == []
    highs.use_threads(2)
    assert reset == [True]
    highs.use_threads(2)
    assert reset == [True]
