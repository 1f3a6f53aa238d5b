"""The budget curve against a published sweep, plain plans and cases made by hand."""

from dataclasses import replace
from itertools import pairwise
from typing import Any

import pytest

from partsplan.domain import (
    Bought,
    BudgetCurve,
    FaultStatus,
    Garage,
    Needs,
    Plan,
    PlanStatus,
)
from partsplan.explanation import curve
from partsplan.planning import plan
from tests.support.asking import CLOSE, Asking
from tests.support.building import START, bought, fault, garage, option, vehicle
from tests.support.carried_garages import carried_garage
from tests.support.published import Published, as_garage, projects, published
from tests.support.small_garages import small_garage

# W. L. Winston, Operations Research, 4th ed., section 9.2, example 1; the sweep of its
# budget was computed by trying every subset
STOCKCO: Any = published("capital_budgeting.json")["problems"][0]
SWEEP: dict[int, Any] = {int(one["budget"]): one for one in STOCKCO["budget_sweep"]}
LEAVES = (7, 10, 14)
"""Budgets at which project 1 drops out although there is more money."""


def stockco() -> Published:
    assert STOCKCO["id"] == "stockco"
    classes = projects(STOCKCO["value"], STOCKCO["outlay_by_period"])
    return as_garage(classes, STOCKCO["budget_by_period"])


def sweep(made: Published, budgets: list[int], resolution: int | None) -> BudgetCurve:
    return curve(
        made.garage,
        budgets,
        Asking(),
        limits=CLOSE,
        resolution=resolution,
        most_plans=200,
    )


def numbers(found: Bought | Needs) -> list[int]:
    assert isinstance(found, Bought)
    return sorted(int(job[1 : job.index("-")]) for job in found.jobs)


def test_every_budget_of_the_published_sweep_buys_its_optimum() -> None:
    made = stockco()
    found = sweep(made, [budget * made.scale for budget in SWEEP], None)
    assert len(found.points) == len(SWEEP)
    for point, one in zip(found.points, SWEEP.values(), strict=True):
        assert isinstance(point.found, Bought)
        assert numbers(point.found) in one["optimal_sets_1_based"]
        assert point.found.stages.net_worth == one["optimum"] * made.scale
        assert point.found.proven


@pytest.mark.parametrize("resolution", [None, 1])
def test_project_1_drops_out_again_where_it_is_published(
    resolution: int | None,
) -> None:
    made = stockco()
    # searched closely it begins from every fourth budget only
    first = range(3, 20) if resolution is None else range(3, 20, 4)
    found = sweep(made, [budget * made.scale for budget in first], resolution)
    stays = [stay for stay in found.stays if stay.option == "o1-0"]
    leaves = [stay.above for stay in stays if stay.above is not None]
    assert leaves == [budget * made.scale for budget in LEAVES]
    assert stays[-1].above is None
    for stay in stays:
        assert stay.below is not None
        apart = made.scale if resolution is None else resolution
        assert stay.first - stay.below == apart


def test_a_close_search_finds_every_budget_where_the_sweep_changes() -> None:
    made = stockco()
    found = sweep(made, [budget * made.scale for budget in range(3, 20, 4)], 1)
    assert found.finished
    changes = [
        budget * made.scale
        for last, budget in pairwise(SWEEP)
        if SWEEP[last]["optimal_sets_1_based"] != SWEEP[budget]["optimal_sets_1_based"]
    ]
    assert [point.budget for point in found.changes[1:]] == changes
    for point in found.points:
        sets = SWEEP[point.budget // made.scale]["optimal_sets_1_based"]
        assert numbers(point.found) in sets


@pytest.mark.parametrize(
    "made",
    [*map(small_garage, range(25)), *map(carried_garage, range(8))],
    ids=lambda made: made.name,
)
def test_each_point_is_what_planning_for_that_sum_gives(made: Garage) -> None:
    budgets = [0, 4000, 9000, 9001, 15000, 40000]
    found = curve(made, budgets, Asking(), limits=CLOSE)
    assert [point.budget for point in found.points] == budgets
    for point in found.points:
        alone = plan(replace(made, budget=(point.budget,)), gap=0.0)
        if isinstance(alone, Needs):
            assert point.found == alone
        else:
            assert isinstance(point.found, Bought)
            assert point.found.stages == alone.stages


def test_the_worth_of_a_point_stays_as_it_is() -> None:
    asking = Asking()
    made = garage()
    curve(made, [1, 90000], asking, limits=CLOSE)
    assert {one.garage.money_per_point for one in asking.asked} == {
        made.money_per_point
    }
    assert [one.garage.budget for one in asking.asked] == [(1,), (90000,)]


def test_each_plan_starts_from_the_choices_of_the_one_below() -> None:
    asking = Asking()
    curve(garage(), list(range(9000, 18000, 1000)), asking, limits=CLOSE)
    assert [len(one) for one in asking.rounds] == [3, 2, 4]
    assert all(one.start is None for one in asking.rounds[0])
    plans = {one.garage.budget[0]: plan for one, plan in asking.answered}
    below = {10000: 9000, 11000: 9000, 12000: 11000, 14000: 13000, 15000: 13000}
    for one in (*asking.rounds[1], *asking.rounds[2]):
        found = plans[below.get(one.garage.budget[0], one.garage.budget[0] - 1000)]
        assert isinstance(found, Plan)
        assert one.start == found.choices


def test_a_change_is_closed_in_on_by_halves_and_no_more() -> None:
    asking = Asking()
    found = curve(
        garage(months=1, look_beyond=12),
        [0, 16000],
        asking,
        limits=CLOSE,
        resolution=100,
        most_plans=50,
    )
    (stay,) = found.stays
    assert (stay.below, stay.first, stay.above) == (9900, 10000, None)
    assert found.finished
    assert len(asking.asked) <= 2 + 8  # 160 steps of 100 take 8 halvings
    assert len({one.garage.budget for one in asking.asked}) == len(asking.asked)


def test_the_search_ends_when_the_plans_run_out() -> None:
    asking = Asking()
    found = curve(
        garage(months=1, look_beyond=12),
        [0, 16000],
        asking,
        limits=CLOSE,
        resolution=1,
        most_plans=5,
    )
    assert len(asking.asked) == len(found.points) == 5
    assert not found.finished
    assert not found.interrupted


def test_what_was_stopped_is_missing_and_said_so() -> None:
    found = curve(
        garage(), [0, 1, 2, 90000], Asking(most=3), limits=CLOSE, resolution=1
    )
    assert found.interrupted
    assert len(found.points) == 3


def test_sums_that_cannot_pay_a_debt_say_what_is_needed() -> None:
    found = curve(
        garage(opening_cash=-5000),
        [0, 16000],
        Asking(),
        limits=CLOSE,
        resolution=10,
        most_plans=50,
    )
    first = found.points[0].found
    assert isinstance(first, Needs)
    assert first.money == 5000
    possible = [one.budget for one in found.points if isinstance(one.found, Bought)]
    assert min(possible) == 5000
    assert found.changes[1].budget == 5000


def test_a_plan_is_kept_where_more_money_buys_nothing_better() -> None:
    """Two options cost the same worth; the first is kept though both could be had."""
    twins = garage(options=(option("o1"), option("o2")))
    found = curve(twins, [20000, 30000, 40000], Asking(), limits=CLOSE)
    jobs = {one.found.jobs for one in found.points if isinstance(one.found, Bought)}
    assert len(jobs) == 1


def test_a_part_that_waits_is_fitted_from_the_sum_on_that_pays_for_it() -> None:
    # it gains 150.00 and takes 160.00
    made = garage(
        vehicles=(vehicle(keep_months=3),), options=(bought(consumables=16000),)
    )
    found = curve(made, [5000, 6000], Asking(), limits=CLOSE)
    outcomes = [point.found for point in found.points]
    assert [isinstance(one, Bought) and one.jobs for one in outcomes] == [(), ("o1",)]


def test_open_faults_are_those_not_cured_at_the_end() -> None:
    made = garage(
        vehicles=(vehicle(), vehicle("v2", keep_months=0)),
        faults=(
            fault("f1"),
            fault("f2"),
            fault("f3", status=FaultStatus.WATCH),
            fault("f4", status=FaultStatus.FIXED),
            fault("f5", vehicle="v2"),
            fault("f6"),
        ),
        options=(
            option("o1", "f1"),
            option("o6", "f6", price=10, life_months=1, not_after=START),
        ),
    )
    assert open_faults(made, 90000) == ("f2", "f6")
    assert open_faults(made, 0) == ("f1", "f2", "f6")


def open_faults(made: Garage, budget: int) -> tuple[str, ...]:
    (point,) = curve(made, [budget], Asking(), limits=CLOSE).points
    assert isinstance(point.found, Bought)
    return point.found.open_faults


def test_a_plan_cut_short_by_the_clock_is_not_called_proven() -> None:
    made = garage()
    best = plan(made)
    assert isinstance(best, Plan)
    short = replace(best, status=PlanStatus.FEASIBLE, bound=best.bound + 500)
    found = curve(made, [20000], lambda _: {0: short}, limits=CLOSE)
    (point,) = found.points
    assert isinstance(point.found, Bought)
    assert not point.found.proven
    assert point.found.gap == pytest.approx(500 / best.stages.net_worth)
