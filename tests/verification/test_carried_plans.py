"""A sound plan that carries something from before, damaged in one place at a time."""

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from functools import cache
from typing import Any

import pytest

from partsplan.domain import (
    ONE,
    Fault,
    Fitted,
    Flow,
    Garage,
    Inspection,
    Month,
    Plan,
    Purchase,
)
from partsplan.planning import plan
from partsplan.verification import violations
from tests.support.building import START, bought, fault, garage, option


def carried_garage() -> Garage:
    """January to March: a pump that is bought comes in February.

    The brakes are cured until February, the seat is half done for good, and what cured
    the frame, which the sill waits for, has run out.
    """
    return garage(
        budget=(5000,),
        promised=(Flow(month=1, out=2000, back=300), Flow(month=3, out=10**6)),
        grown=2,
        faults=(
            fault("pump", growth=Fraction(1, 10)),
            fault(
                "brakes",
                points=Fraction(1),
                inspection=Inspection.DANGEROUS,
                fix_by=START,
                fitted=(Fitted(option="pads", relief=ONE, until=START.plus(2)),),
            ),
            fault("seat", fitted=(fitted("0.5", 36),)),
            fault("frame", points=Fraction(0), fitted=(fitted("0.8", -1),)),
            fault("sill", after=("frame",)),
        ),
        options=(
            bought("pump-bought", "pump", core_deposit=4000, not_before=START.plus(1)),
            option("pump-new", "pump", price=100),
            option("seat-new", "seat", price=900),
            option("sill-new", "sill", price=900),
        ),
    )


def fitted(relief: str, months: int) -> Fitted:
    return Fitted(option="old", relief=Fraction(relief), until=START.plus(months))


@cache
def carried_plan() -> Plan:
    found = plan(carried_garage(), gap=0.0)
    assert isinstance(found, Plan)
    return found


def rules(garage: Garage, plan: Plan) -> set[str]:
    return {one.rule for one in violations(garage, plan)}


def with_fault(name: str, **changes: Any) -> Garage:
    made = carried_garage()

    def changed(one: Fault) -> Fault:
        return replace(one, **changes) if one.id == name else one

    return replace(made, faults=tuple(map(changed, made.faults)))


def test_the_plan_is_sound_before_it_is_damaged() -> None:
    found = carried_plan()
    assert violations(carried_garage(), found) == ()
    assert found.choices.orders == {"pump-bought": 1, "seat-new": 0, "sill-new": 0}
    # the deposit of the pump is back in March, and was never paid here
    assert [line.out for line in found.ledger] == [1800, 2000, 0]
    assert [line.back for line in found.ledger] == [0, 300, 4000]
    assert found.stages.missed_deadlines == 0
    assert found.stages.unsafe_vehicle_months == 1


@pytest.mark.parametrize(
    ("rule", "orders"),
    [
        ("not bought twice", {"pump-new": 0}),  # left on the shelf
        ("not bought twice", {"pump-new": 0, "pump-bought": 1}),
        ("one lasting", {"pump-new": 0, "pump-bought": 1}),
        ("in time", {"pump-bought": 0}),  # it is not there yet
    ],
)
def test_damaged_orders(rule: str, orders: Mapping[str, int]) -> None:
    found = carried_plan()
    damaged = replace(found, choices=replace(found.choices, orders=orders))
    assert rule in rules(carried_garage(), damaged)


@pytest.mark.parametrize(
    ("rule", "name", "changes"),
    [
        ("in order", "frame", {"fitted": ()}),
        ("in order", "frame", {"fitted": (fitted("0.79", -1),)}),
        ("figures: stages", "seat", {"fitted": ()}),
        ("figures: stages", "seat", {"fitted": (fitted("0.5", 2),)}),
        ("figures: stages", "seat", {"fitted": (fitted("0.6", 36),)}),
        ("figures: stages", "brakes", {"fitted": ()}),
        ("figures: stages", "brakes", {"fitted": (fitted("1", 1),)}),
        ("figures: stages", "brakes", {"fitted": (fitted("0.79", 2),)}),
    ],
)
def test_what_was_fitted_otherwise(
    rule: str, name: str, changes: dict[str, Any]
) -> None:
    assert rule in rules(with_fault(name, **changes), carried_plan())


@pytest.mark.parametrize(
    ("rule", "changes"),
    [
        ("figures: ledger", {"promised": ()}),
        ("figures: ledger", {"promised": (Flow(month=1, out=2001, back=301),)}),
        ("figures: ledger", {"promised": (Flow(month=2, out=2000, back=300),)}),
        ("within money", {"promised": (Flow(month=1, out=10**5),)}),
        ("figures: stages", {"grown": 3}),
    ],
)
def test_another_past(rule: str, changes: dict[str, Any]) -> None:
    assert rule in rules(replace(carried_garage(), **changes), carried_plan())


def test_promises_past_the_horizon_are_none_of_this_plan() -> None:
    other = replace(
        carried_garage(),
        promised=(Flow(month=1, out=2000, back=300), Flow(month=4, out=1)),
    )
    assert violations(other, carried_plan()) == ()


def test_a_part_that_was_not_bought_pays_its_deposit() -> None:
    made = carried_garage()
    unpaid = replace(made.options[0], bought=None)
    other = replace(made, options=(unpaid, *made.options[1:]))
    assert {"figures: ledger", "figures: jobs"} <= rules(other, carried_plan())


@pytest.mark.parametrize(
    "changes", [{"bought": False}, {"ordered": 1}, {"supplier": "s1"}]
)
def test_wrong_figures_of_a_job(changes: dict[str, Any]) -> None:
    found = carried_plan()
    damaged = tuple(
        replace(job, **changes) if job.bought else job for job in found.jobs
    )
    assert damaged != found.jobs
    assert rules(carried_garage(), replace(found, jobs=damaged)) == {"figures: jobs"}


def test_another_day_of_the_purchase() -> None:
    made = carried_garage()
    earlier = Purchase(month=Month(2026, 6))
    other = replace(
        made, options=(replace(made.options[0], bought=earlier), *made.options[1:])
    )
    assert rules(other, carried_plan()) == {"figures: jobs"}
