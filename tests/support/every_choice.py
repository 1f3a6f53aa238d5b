"""A plan held against a second program that tries every choice."""

from collections.abc import Mapping
from dataclasses import asdict

from partsplan.domain import Garage, Needs, Plan, PlanStatus, Stage
from partsplan.planning import plan
from partsplan.verification import violations
from tests.support.reference import Best, judge


def check_best(garage: Garage, record: Best | None) -> None:
    """The plan is as good as the best of all choices; every figure is agreed on."""
    found = plan(garage, gap=0.0)
    if record is None:
        assert isinstance(found, Needs)
        return
    assert isinstance(found, Plan)
    assert found.status is PlanStatus.PROVEN
    assert tuple(found.stages.of(one) for one in garage.priority) == record.figures
    assert asdict(found.stage_bounds) == asdict(found.stages)
    assert found.gap == 0
    check_figures(garage, found)


def check_figures(garage: Garage, found: Plan) -> None:
    """The plan breaks no rule, and the second program agrees on every figure."""
    assert violations(garage, found) == ()
    judged = judge(garage, found.choices.orders, found.choices.tools)
    assert judged.broken == ()
    assert judged.stages == found.stages
    assert judged.out == tuple(line.out for line in found.ledger)
    assert judged.back == tuple(line.back for line in found.ledger)
    assert judged.balances == tuple(line.balance for line in found.ledger)
    assert judged.hours == tuple(line.hours for line in found.ledger)
    assert judged.orders == supplier_orders(found)


def rank(garage: Garage, found: Best | None) -> tuple[int, ...]:
    """What makes one best choice better than another; less is better.

    Parts that are bought and fitted count before all stages.
    """
    assert found is not None
    fitted = sum(garage.option[name].bought is not None for name in found.orders)
    figures = zip(garage.priority, found.figures, strict=True)
    losses = (-one if stage is Stage.WORTH else one for stage, one in figures)
    return -fitted, *losses


def supplier_orders(plan: Plan) -> Mapping[tuple[str, int], tuple[int, int]]:
    """Goods and shipping of each supplier and month. [minor units]"""
    return {(one.supplier, one.month): (one.goods, one.shipping) for one in plan.orders}
