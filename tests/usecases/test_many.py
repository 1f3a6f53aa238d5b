"""Many plans at once, by every executor there is."""

import os
import sys
import threading
import time
from collections.abc import Callable, Sequence
from concurrent.futures import Executor, Future
from dataclasses import replace
from importlib.util import find_spec
from pathlib import Path
from typing import ParamSpec, TypeVar

import pytest

from partsplan.domain import BudgetCurve, Garage
from partsplan.errors import InvalidRequest, SolverFailed, UnsoundPlan
from partsplan.explanation import Question, Reply, curve
from partsplan.planning import Limits
from partsplan.usecases import many
from partsplan.verification import Violation
from tests.support.building import garage
from tests.support.larger_garages import larger_garage

P = ParamSpec("P")
T = TypeVar("T")

LIMITS = Limits(seconds=30.0, gap=1e-4)
BUDGETS = tuple(range(4000, 64000, 12000))
CASE = larger_garage(3, faults=10, months=3)


def curve_by(executor: Executor) -> BudgetCurve:
    return curve(
        CASE,
        BUDGETS,
        many.asker(executor),
        limits=LIMITS,
        resolution=2000,
        most_plans=12,
    )


def questions(count: int, made: Garage | None = None) -> list[Question]:
    made = made or garage()
    return [
        Question(garage=replace(made, budget=(20000 + place,)), limits=LIMITS)
        for place in range(count)
    ]


def test_processes_find_what_is_found_in_turn() -> None:
    with many.executor(1) as here, many.executor(2) as there:
        assert isinstance(here, many.InTurn)
        assert isinstance(there, many.Processes)
        mine = curve_by(here)
        assert mine.points
        assert mine == curve_by(there)


@pytest.mark.skipif(
    not find_spec("distributed"), reason="the extra cluster is not installed"
)
def test_a_cluster_finds_what_is_found_in_turn() -> None:
    from distributed import LocalCluster

    with (
        LocalCluster(
            n_workers=2, processes=True, threads_per_worker=1, dashboard_address=None
        ) as cluster,
        many.executor(cluster=cluster.scheduler_address) as there,
    ):
        assert curve_by(there) == curve_by(many.InTurn())
        ran = [there.submit(os.getpid) for _ in range(8)]
        assert os.getpid() not in {one.result() for one in ran}


def test_a_cluster_without_its_library_names_the_extra(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setitem(sys.modules, "distributed", None)
    with (
        pytest.raises(InvalidRequest, match=r"partsplan\[cluster\]"),
        many.executor(cluster="tcp://127.0.0.1:8786"),
    ):
        pass


@pytest.mark.skipif(
    not find_spec("distributed"), reason="the extra cluster is not installed"
)
@pytest.mark.parametrize("address", ["nonsense", "tcp://127.0.0.1:9"])
def test_a_cluster_that_does_not_answer_is_named(
    address: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(many, "PATIENCE_SECONDS", 0.5)
    with (
        pytest.raises(InvalidRequest, match=f"nothing answers at {address}"),
        many.executor(cluster=address),
    ):
        pass


def test_each_plan_is_told_when_it_is_done() -> None:
    told: list[int] = []
    found = many.asker(many.InTurn(), told.append)(questions(3))
    assert told == [1, 2, 3]
    assert list(found) == [0, 1, 2]


def test_a_plan_that_verification_refuses_is_never_answered(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    broken = Reply(found=None, broken=(Violation("money", "overspent"),))
    monkeypatch.setattr("partsplan.explanation.reply", lambda _: broken)
    with pytest.raises(UnsoundPlan, match="overspent"):
        many.asker(many.InTurn())(questions(1))


def test_what_a_solver_says_no_to_comes_back_as_it_is(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def fail(_: Question) -> Reply:
        raise SolverFailed("no")

    monkeypatch.setattr("partsplan.explanation.reply", fail)
    with pytest.raises(SolverFailed, match="no"):
        many.asker(many.InTurn())(questions(3))


def test_ctrl_c_in_turn_answers_what_is_known(monkeypatch: pytest.MonkeyPatch) -> None:
    made: list[Question] = []

    def stop_at_third(question: Question) -> Reply:
        made.append(question)
        if len(made) == 3:
            raise KeyboardInterrupt
        return Reply(found=None)

    monkeypatch.setattr("partsplan.explanation.reply", stop_at_third)
    assert list(many.asker(many.InTurn())(questions(5))) == [0, 1]
    assert len(made) == 3


class Stopping(Executor):
    """Answers the second question only; Ctrl-C comes while the rest is waited for."""

    def __init__(self) -> None:
        self.futures: list[Future[object]] = []

    def submit(
        self, fn: Callable[P, T], /, *args: P.args, **kwargs: P.kwargs
    ) -> Future[T]:
        future: Future[T] = Future()
        self.futures.append(future)  # type: ignore[arg-type]  # only looked at
        if len(self.futures) == 2:
            future.set_result(fn(*args, **kwargs))
        return future


def test_ctrl_c_while_waiting_cancels_the_rest(monkeypatch: pytest.MonkeyPatch) -> None:
    def interrupted(_: Sequence[Future[Reply]]) -> bool:
        raise KeyboardInterrupt

    monkeypatch.setattr(many, "_going_on", interrupted)
    stopping = Stopping()
    assert list(many.asker(stopping)(questions(4))) == [1]
    assert [one.cancelled() for one in stopping.futures] == [True, False, True, True]


def test_processes_that_are_given_up_end_at_once() -> None:
    with many.executor(2) as made:
        naps = [made.submit(time.sleep, 60) for _ in range(4)]
        pid = made.submit(os.getpid)
        while not naps[0].running():
            time.sleep(0.01)
        time.sleep(0.5)  # so that they are asleep and not still beginning
        begun = time.monotonic()
    assert time.monotonic() - begun < 5
    assert pid.cancelled() or pid.exception()


def test_processes_come_and_go_quietly(capfd: pytest.CaptureFixture[str]) -> None:
    threads = threading.active_count()
    for _ in range(3):
        with many.executor(2) as made:
            assert made.submit(abs, -1).result() == 1
    assert threading.active_count() == threads
    assert capfd.readouterr() == ("", "")


def test_a_process_that_dies_is_a_failure_of_the_solver() -> None:
    with many.executor(2) as made:
        made.submit(os._exit, 3)
        ask = many.asker(made)
        with pytest.raises(SolverFailed, match="before its time"):
            ask(questions(40))


def test_one_process_a_core_unless_told(monkeypatch: pytest.MonkeyPatch) -> None:
    assert many.cores() >= 1
    monkeypatch.setattr(many, "cores", lambda: 1)
    with many.executor() as made:
        assert isinstance(made, many.InTurn)


def test_a_question_is_small_enough_to_be_sent() -> None:
    import pickle

    folder = Path(__file__).parents[2] / "scenarios" / "household"
    from partsplan.intake import read_garage

    question = Question(garage=read_garage(folder), limits=LIMITS)
    sent = pickle.dumps(question)
    assert pickle.loads(sent) == question
    assert len(sent) < 100_000
