"""The search for wide programs, on garages small enough to try every choice."""

from time import monotonic

import numpy as np
import pytest

from partsplan.domain import Garage, Plan, Stage
from partsplan.explanation import disobeyed
from partsplan.planning import Force, Planner, planner, wide
from partsplan.planning.limits import Limits
from partsplan.planning.matrix import Matrix
from partsplan.verification import violations
from tests.benchmarks.generator import made_up_garage
from tests.support.reference import Best
from tests.support.small_optima import small_optimum

CHUNK = 25
COUNTS = list(Stage)[:3]


@pytest.fixture(autouse=True)
def every_program_is_wide(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(planner, "NARROW", 0)


def worth_last(seed: int) -> tuple[Garage, Best] | None:
    garage, record = small_optimum(seed)
    if record is None or garage.priority[-1] is not Stage.WORTH:
        return None
    return garage, record


def wide_plan(garage: Garage, *, threads: int = 1, seconds: float = 20.0) -> Plan:
    limits = Limits(seconds=seconds, gap=0.0, threads=threads, clock=monotonic)
    found = Planner(garage).best(limits)
    assert isinstance(found, Plan)
    return found


def check(garage: Garage, record: Best, found: Plan) -> None:
    """The plan is legal, and no bound is better than the best of all choices."""
    assert violations(garage, found) == ()
    best = dict(zip(garage.priority, record.figures, strict=True))
    for stage in COUNTS:
        if found.stages.of(stage) != best[stage]:
            return  # a later bound holds this stage as it was reached
        assert found.stage_bounds.of(stage) <= best[stage]
    assert found.stages.net_worth <= best[Stage.WORTH] <= found.bound


@pytest.mark.parametrize("first", range(0, 150, CHUNK))
def test_plans_are_the_best_of_all_choices(first: int) -> None:
    for seed in range(first, first + CHUNK):
        if (made := worth_last(seed)) is None:
            continue
        garage, record = made
        found = wide_plan(garage)
        figures = tuple(found.stages.of(stage) for stage in garage.priority)
        assert figures == record.figures, f"small garage {seed}"
        assert found.bound == found.stages.net_worth, f"small garage {seed}"
        check(garage, record, found)


@pytest.mark.parametrize("first", range(150, 200, CHUNK))
def test_plans_of_two_threads_are_the_best_too(first: int) -> None:
    for seed in range(first, first + CHUNK):
        if made := worth_last(seed):
            found = wide_plan(made[0], threads=2)
            assert found.stages.net_worth == made[1].figures[-1], f"garage {seed}"
            check(*made, found)


@pytest.mark.parametrize("priced", [False, True])
@pytest.mark.parametrize("first", range(300, 350, CHUNK))
def test_bounds_are_valid_where_nothing_is_searched_whole(
    first: int, priced: bool, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(wide, "WHOLE_SEARCH", -1)
    if priced:
        monkeypatch.setattr(wide, "PRICED", -1)
    for seed in range(first, first + CHUNK):
        if made := worth_last(seed):
            check(*made, wide_plan(made[0], seconds=0.1))


@pytest.mark.parametrize("first", range(0, 50, CHUNK))
def test_what_is_forced_is_done_or_said_to_be_impossible(
    first: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    for seed in range(first, first + CHUNK):
        if (made := worth_last(seed)) is None or not made[0].faults:
            continue
        garage = made[0]
        force = Force(take=frozenset({garage.faults[0].id}))
        limits = Limits(seconds=20.0, gap=0.0, clock=monotonic)
        by_parts = Planner(garage).best(limits, force=force)
        monkeypatch.setattr(planner, "NARROW", 10**6)
        at_once = Planner(garage).best(limits, force=force)
        monkeypatch.setattr(planner, "NARROW", 0)
        assert type(by_parts) is type(at_once), f"small garage {seed}"
        if isinstance(by_parts, Plan) and isinstance(at_once, Plan):
            assert by_parts.stages == at_once.stages, f"small garage {seed}"
            assert list(disobeyed(force, by_parts)) == []


def test_a_priced_relaxation_bounds_what_the_solver_proves(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    garage = made_up_garage(12, 6, 1)
    proven = wide_plan(garage)
    assert proven.gap <= 1e-4
    monkeypatch.setattr(wide, "WHOLE_SEARCH", -1)
    monkeypatch.setattr(wide, "PRICED", -1)
    bounded = wide_plan(garage, seconds=3.0)
    assert bounded.stages.missed_deadlines == proven.stages.missed_deadlines
    assert proven.stages.net_worth <= bounded.bound
    assert bounded.bound < 2 * proven.stages.net_worth


@pytest.mark.slow
@pytest.mark.parametrize("seed", [1, 2, 3])
@pytest.mark.parametrize("faults", [60, 100, 300])
def test_no_longer_search_beats_an_earlier_bound(faults: int, seed: int) -> None:
    garage = made_up_garage(faults, 12, seed)
    early = wide_plan(garage, seconds=10.0)
    late = wide_plan(garage, seconds=60.0, threads=2)
    for found in (early, late):
        assert violations(garage, found) == ()
    for stage in COUNTS:
        assert early.stage_bounds.of(stage) <= late.stages.of(stage)
        if early.stages.of(stage) != late.stages.of(stage):
            return  # the bounds of later stages hold with this one as it was reached
    assert late.stages.net_worth <= early.bound


def test_a_matrix_says_what_its_program_says() -> None:
    program = Planner(made_up_garage(30, 6, 1)).model.program
    matrix = Matrix.of(program)
    ones = np.ones(len(program.columns))
    told = matrix.rows @ ones
    for place, row in enumerate(program.rows):
        assert told[place] == pytest.approx(sum(row.coefficients))
        assert matrix.low[place] == (-np.inf if row.low is None else row.low)
        assert matrix.high[place] == (np.inf if row.high is None else row.high)
