"""Plans against a second program that tries every choice of small garages."""

from collections.abc import Mapping
from dataclasses import asdict

import pytest

from partsplan.domain import Garage, Needs, Plan, PlanStatus
from partsplan.planning import plan
from partsplan.verification import violations
from tests.support.reference import best, judge
from tests.support.small_garages import small_garage

CHUNK = 25


def supplier_orders(plan: Plan) -> Mapping[tuple[str, int], tuple[int, int]]:
    return {(one.supplier, one.month): (one.goods, one.shipping) for one in plan.orders}


def check(garage: Garage) -> None:
    """The plan is the best one, and the second program agrees on every figure."""
    found, record = plan(garage, gap=0.0), best(garage)
    if record is None:
        assert isinstance(found, Needs)
        return
    assert isinstance(found, Plan)
    assert found.status is PlanStatus.PROVEN
    assert tuple(found.stages.of(one) for one in garage.priority) == record.figures
    assert asdict(found.stage_bounds) == asdict(found.stages)
    assert found.gap == 0
    assert violations(garage, found) == ()
    judged = judge(garage, found.choices.orders, found.choices.tools)
    assert judged.broken == ()
    assert judged.stages == found.stages
    assert judged.out == tuple(line.out for line in found.ledger)
    assert judged.back == tuple(line.back for line in found.ledger)
    assert judged.balances == tuple(line.balance for line in found.ledger)
    assert judged.hours == tuple(line.hours for line in found.ledger)
    assert judged.orders == supplier_orders(found)


@pytest.mark.parametrize("first", range(0, 400, CHUNK))
def test_no_choice_beats_the_plan(first: int) -> None:
    for seed in range(first, first + CHUNK):
        try:
            check(small_garage(seed))
        except AssertionError as error:
            raise AssertionError(f"small garage {seed}: {error}") from error


@pytest.mark.parametrize(
    "seed", [95, 348, 967, 1001, 1342, 1424, 2027, 2171, 2197, 2499]
)
def test_a_start_that_the_solver_hands_back_is_no_plan(seed: int) -> None:
    # HiGHS 1.16 called each of these optimal in some form of the model, and handed back
    # the plan of the stage before
    check(small_garage(seed))
