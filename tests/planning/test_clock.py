"""Plans of a search that the clock or somebody cuts short."""

from functools import cache

import pytest

from partsplan.domain import Garage, Needs, Plan, PlanStatus, Stage
from partsplan.errors import SolverFailed
from partsplan.planning import plan
from partsplan.verification import violations
from tests.support.larger_garages import larger_garage
from tests.support.reference import best, offers
from tests.support.small_garages import small_garage


@cache
def garage_too_large_for_a_moment() -> Garage:
    return larger_garage(1, faults=40, months=12)


@cache
def after(seconds: float) -> Plan:
    found = plan(garage_too_large_for_a_moment(), seconds=seconds, gap=0.0)
    assert isinstance(found, Plan)
    return found


@pytest.mark.parametrize("seconds", [0.0, 0.3, 1.5])
def test_a_plan_cut_short_is_feasible_with_its_bound(seconds: float) -> None:
    found = after(seconds)
    worth = found.stages.net_worth
    assert found.status is PlanStatus.FEASIBLE
    assert found.bound > worth
    assert found.gap == (found.bound - worth) / max(1, abs(worth))
    assert violations(garage_too_large_for_a_moment(), found) == ()


def test_more_time_finds_nothing_above_an_earlier_bound() -> None:
    assert after(0.0).stages.net_worth <= after(1.5).stages.net_worth
    assert after(1.5).stages.net_worth <= after(0.3).bound <= after(0.0).bound


def test_the_clock_is_kept() -> None:
    assert after(1.5).seconds < 5


@pytest.mark.parametrize("first", range(0, 100, 20))
def test_without_any_time_nothing_is_called_proven(first: int) -> None:
    for seed in range(first, first + 20):
        garage = small_garage(seed)
        try:
            found = plan(garage, seconds=0.0)
        except SolverFailed:
            continue
        record = best(garage)
        if isinstance(found, Needs) or record is None:
            assert isinstance(found, Needs)
            assert record is None
            continue
        assert violations(garage, found) == ()
        assert found.status is PlanStatus.FEASIBLE or nothing_to_decide(garage, found)
        for stage, figure in zip(garage.priority, record.figures, strict=True):
            bound = found.stage_bounds.of(stage)
            assert bound >= figure if stage is Stage.WORTH else bound <= figure
            if found.stages.of(stage) != figure:
                break  # bounds of later stages hold with this one as it is


def nothing_to_decide(garage: Garage, found: Plan) -> bool:
    """Whether no offer was within the money and hours of any month."""
    record = best(garage)
    assert record is not None
    return not found.jobs and (not record.orders or not offers(garage))


def test_somebody_who_stops_the_search_keeps_the_best_plan_so_far() -> None:
    garage = larger_garage(1, faults=30, months=12)
    told: list[tuple[str, float | None, float | None]] = []

    def stop_at_the_first_plan(
        stage: str, seconds: float, figure: float | None, bound: float | None
    ) -> None:
        told.append((stage, figure, bound))
        if figure is not None and figure > 0:
            raise KeyboardInterrupt

    found = plan(garage, seconds=20.0, gap=0.0, progress=stop_at_the_first_plan)
    assert isinstance(found, Plan)
    assert found.interrupted
    assert found.status is PlanStatus.FEASIBLE
    assert violations(garage, found) == ()
    stage, figure, bound = told[-1]
    assert stage == "worth"
    assert figure is not None
    assert bound is not None
    assert figure <= found.stages.net_worth <= found.bound <= bound + 1
