"""A plan that stays with intentions, against every choice tried."""

import pytest

from partsplan.domain import Garage, Plan
from partsplan.explanation.ties import parts_fitted
from partsplan.planning import Force, Limits, Planner
from partsplan.planning.staying import OTHER_MONTH, SAME_MONTH
from partsplan.verification import violations
from tests.support.carried_garages import carried_garage
from tests.support.small_garages import small_garage

LIMITS = Limits(seconds=30.0, gap=0.0)


def best(garage: Garage) -> tuple[Garage, Planner, Plan] | None:
    planner = Planner(garage)
    found = planner.best(LIMITS)
    if not isinstance(found, Plan) or not found.jobs:
        return None
    return garage, planner, found


def kept(plan: Plan, wishes: dict[str, int]) -> int:
    ordered = plan.choices.orders
    return sum(
        SAME_MONTH if ordered[option] == month else OTHER_MONTH
        for option, month in wishes.items()
        if option in ordered
    )


@pytest.mark.parametrize(
    "made",
    [*map(small_garage, range(80)), *map(carried_garage, range(40))],
    ids=lambda made: made.name,
)
def test_it_is_as_good_and_keeps_no_less(made: Garage) -> None:
    known = best(made)
    if known is None:
        return
    garage, planner, plan = known
    wishes = {offer.option.id: offer.ordered for offer in planner.offers[::3]}
    near = planner.staying(plan, wishes, 0, LIMITS)
    assert violations(garage, near) == ()
    assert near.stages == plan.stages
    assert near.status is plan.status
    assert parts_fitted(garage, near.choices) == parts_fitted(garage, plan.choices)
    assert kept(near, wishes) >= kept(plan, wishes)


@pytest.mark.parametrize("seed", range(40))
def test_with_enough_to_spare_it_keeps_the_plan_of_before(seed: int) -> None:
    known = best(small_garage(seed))
    if known is None:
        return
    garage, planner, plan = known
    other = planner.best(LIMITS, force=_without_first(plan))
    if not isinstance(other, Plan) or other.stages == plan.stages:
        return
    same_counts = other.stages.missed_deadlines == plan.stages.missed_deadlines and (
        other.stages.unsafe_vehicle_months,
        other.stages.undrivable_vehicle_months,
    ) == (plan.stages.unsafe_vehicle_months, plan.stages.undrivable_vehicle_months)
    if not same_counts:
        return
    wishes = dict(other.choices.orders)
    spare = plan.stages.net_worth - other.stages.net_worth
    near = planner.staying(plan, wishes, spare, LIMITS)
    assert violations(garage, near) == ()
    assert kept(near, wishes) == SAME_MONTH * len(wishes)
    assert near.stages.net_worth >= other.stages.net_worth
    assert near.bound == plan.bound


def _without_first(plan: Plan) -> Force:
    return Force(avoid=frozenset({plan.jobs[0].option}))
