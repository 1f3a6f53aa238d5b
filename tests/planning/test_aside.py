"""A search beside another one, which must not hold it up."""

from collections.abc import Callable
from threading import Event
from typing import Any

import numpy as np
import pytest

from partsplan.domain import PlanStatus
from partsplan.errors import SolverFailed
from partsplan.planning import aside
from partsplan.planning.aside import Aside
from partsplan.planning.solver import SolverRun, Tuning

TUNING = Tuning(seconds=9.0, gap=0.0)
FOUND = np.array([1.0, 0.0])


def begun(monkeypatch: pytest.MonkeyPatch, work: Callable[..., SolverRun]) -> Aside:
    """A search that does this work instead of solving anything."""
    monkeypatch.setattr(aside, "solve_whole", work)
    nothing: Any = None
    return Aside(nothing, np.zeros(2), TUNING, frozenset())


def run(values: tuple[float, ...], bound: float = 7.0) -> SolverRun:
    return SolverRun(
        status=PlanStatus.FEASIBLE, values=values, bound=bound, seconds=0.0
    )


def test_what_it_found_is_told_when_it_ends(monkeypatch: pytest.MonkeyPatch) -> None:
    search = begun(monkeypatch, lambda *_, **__: run((1.0, 0.0)))
    solved = search.stop()
    assert solved is not None
    assert [*solved] == [1.0, 0.0]
    assert search.done
    assert search.bound == 7.0


def test_it_is_asked_to_stop(monkeypatch: pytest.MonkeyPatch) -> None:
    def work(*_: Any, watch: Callable[..., None], **__: Any) -> SolverRun:
        while True:
            try:
                watch(0.0, None, 9.0)
            except KeyboardInterrupt:
                return run(())

    search = begun(monkeypatch, work)
    assert search.stop() is None
    assert search.done


def test_one_that_does_not_look_up_is_not_waited_for(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    lets_go, has_found = Event(), Event()

    def work(*_: Any, found: Callable[..., None], **__: Any) -> SolverRun:
        found(FOUND)
        has_found.set()
        assert lets_go.wait(20)
        return run((0.0, 1.0))

    monkeypatch.setattr(aside, "PATIENCE", 0.05)
    search = begun(monkeypatch, work)
    assert has_found.wait(20)
    solved = search.stop()
    assert not search.done
    assert solved is FOUND
    lets_go.set()
    assert search.stop() is not None


def test_what_goes_wrong_in_it_is_told(monkeypatch: pytest.MonkeyPatch) -> None:
    def work(*_: Any, **__: Any) -> SolverRun:
        raise SolverFailed("the solver refused the model")

    search = begun(monkeypatch, work)
    with pytest.raises(SolverFailed, match="refused"):
        search.stop()
