"""What-ifs: another garage, or demands on what the plan chooses."""

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from partsplan.domain import (
    AvoidOption,
    Change,
    ChangeBudget,
    ChangeHours,
    ChangeMonths,
    ChangePrice,
    ChangeReserve,
    Garage,
    GiveUpVehicle,
    LeaveFault,
    Month,
    ParkVehicle,
    Plan,
    RefuseRoute,
    Route,
    TakeFault,
    UseOption,
)
from partsplan.explanation import changed, disobeyed
from partsplan.intake import read_garage
from partsplan.planning import Force, plan, replan
from partsplan.verification import violations
from tests.support.building import fault, garage, option, vehicle
from tests.support.small_garages import small_garage

SCENARIOS = Path(__file__).parents[2] / "scenarios"
FEBRUARY = Month(2027, 2)
MADE = garage(
    vehicles=(vehicle(), vehicle("v2")),
    faults=(fault(), fault("f2", vehicle="v2")),
    options=(option(), option("o2", "f2", route=Route.USED)),
)


@pytest.mark.parametrize(
    ("change", "edited"),
    [
        (ChangeBudget(amount=5000), {"budget": (5000,)}),
        (
            ChangeBudget(amount=5000, month=FEBRUARY),
            {"budget": (20000, 5000, 20000)},
        ),
        (ChangeHours(hours=Fraction(3)), {"hours": (Fraction(3),)}),
        (
            ChangeHours(hours=Fraction(3), month=Month(2027, 1)),
            {"hours": (Fraction(3), Fraction(8))},
        ),
        (ChangeReserve(reserve=700), {"reserve": 700}),
        (ChangeMonths(months=5), {"months": 5}),
        (
            ChangePrice(option="o2", price=1),
            {"options": (option(), option("o2", "f2", route=Route.USED, price=1))},
        ),
        (
            ParkVehicle(vehicle="v1", until=FEBRUARY),
            {"vehicles": (vehicle(driven_from=FEBRUARY), vehicle("v2"))},
        ),
        (
            ParkVehicle(vehicle="v2"),
            {"vehicles": (vehicle(), vehicle("v2", driven_from=None))},
        ),
        (
            GiveUpVehicle(vehicle="v2", month=FEBRUARY),
            {"vehicles": (vehicle(), vehicle("v2", keep_months=1))},
        ),
    ],
)
def test_a_change_of_the_garage_is_the_garage_edited_by_hand(
    change: Change, edited: dict[str, Any]
) -> None:
    found, force = changed(MADE, [change])
    assert found == replace(MADE, **edited)
    assert not force


@pytest.mark.parametrize(
    ("change", "force"),
    [
        (TakeFault(fault="f1"), Force(take=frozenset({"f1"}))),
        (LeaveFault(fault="f1"), Force(leave=frozenset({"f1"}))),
        (UseOption(option="o2"), Force(use=frozenset({"o2"}))),
        (AvoidOption(option="o2"), Force(avoid=frozenset({"o2"}))),
        (RefuseRoute(route=Route.USED), Force(avoid=frozenset({"o2"}))),
        (RefuseRoute(route=Route.USED, vehicle="v1"), Force()),
        (RefuseRoute(route=Route.NEW, vehicle="v1"), Force(avoid=frozenset({"o1"}))),
    ],
)
def test_a_demand_on_the_plan_leaves_the_garage_alone(
    change: Change, force: Force
) -> None:
    assert changed(MADE, [change]) == (MADE, force)


def test_one_month_goes_before_all_months_in_whatever_order() -> None:
    one, every = ChangeBudget(amount=1, month=FEBRUARY), ChangeBudget(amount=9)
    for changes in ([one, every], [every, one]):
        found, _ = changed(MADE, changes)
        assert found.monthly_budget == (9, 1, 9)


def test_a_month_past_the_plan_counts_once_the_plan_reaches_it() -> None:
    late = ChangeBudget(amount=1, month=Month(2027, 5))
    assert changed(MADE, [late])[0].monthly_budget == MADE.monthly_budget
    longer, _ = changed(MADE, [late, ChangeMonths(months=6)])
    assert longer.monthly_budget == (20000, 20000, 20000, 20000, 1, 20000)


@pytest.mark.parametrize(
    "change", [TakeFault(fault="x"), UseOption(option="x"), ParkVehicle(vehicle="x")]
)
def test_a_name_that_is_not_there_is_no_change(change: Change) -> None:
    with pytest.raises(KeyError):
        changed(MADE, [change])


def test_the_worth_of_a_point_stays_whatever_the_budget() -> None:
    found, _ = changed(MADE, [ChangeBudget(amount=1)])
    assert found.money_per_point == MADE.money_per_point


def planned(made: Garage, *changes: Change) -> Plan | None:
    """The plan with these changes, sound; None if there is none."""
    found, force = changed(made, changes)
    best = replan(found, force=force, gap=0.0)
    if not isinstance(best, Plan):
        return None
    assert violations(found, best) == ()
    assert list(disobeyed(force, best)) == []
    return best


@pytest.mark.parametrize("seed", range(12))
def test_a_what_if_is_worth_what_the_edited_garage_is_worth(seed: int) -> None:
    made = small_garage(seed)
    amount = sum(made.monthly_budget) // 2
    found = planned(made, ChangeBudget(amount=amount))
    edited = plan(replace(made, budget=(amount,)), gap=0.0)
    if found is None:
        assert not isinstance(edited, Plan)
    else:
        assert isinstance(edited, Plan)
        assert found.stages == edited.stages


@pytest.mark.parametrize("seed", range(12))
def test_a_refused_route_is_worth_what_it_is_without_its_options(seed: int) -> None:
    made = small_garage(seed)
    for route in {one.route for one in made.options}:
        found = planned(made, RefuseRoute(route=route))
        if found is None:
            continue
        assert route not in {job.route for job in found.jobs}
        left = tuple(one for one in made.options if one.route is not route)
        edited = plan(replace(made, options=left), gap=0.0)
        assert isinstance(edited, Plan)
        assert found.stages == edited.stages


def household() -> Garage:
    return read_garage(SCENARIOS / "household")


def names(found: Plan | None, what: str) -> bool:
    """Whether some job of a plan names a fault."""
    assert found is not None
    return any(what in job.faults for job in found.jobs)


def uses(found: Plan | None, what: str) -> bool:
    """Whether a plan uses an option, or one of a route."""
    assert found is not None
    return any(what in (job.option, job.route.value) for job in found.jobs)


@pytest.mark.parametrize(
    ("change", "holds", "now"),
    [
        (
            TakeFault(fault="cabrio-soft-top"),
            lambda found: names(found, "cabrio-soft-top"),
            False,
        ),
        (
            LeaveFault(fault="cabrio-seat"),
            lambda found: names(found, "cabrio-seat"),
            True,
        ),
        (
            UseOption(option="comfort-new"),
            lambda found: uses(found, "comfort-new"),
            False,
        ),
        (AvoidOption(option="belt-kit"), lambda found: uses(found, "belt-kit"), True),
        (RefuseRoute(route=Route.ECONOMY), lambda found: uses(found, "economy"), True),
        (
            ChangePrice(option="comfort-new", price=1000),
            lambda found: uses(found, "comfort-new"),
            False,
        ),
        (
            ChangeBudget(amount=20000),
            lambda found: found.stages.unsafe_vehicle_months > 0,
            False,
        ),
        (
            ChangeHours(hours=Fraction(1)),
            lambda found: max(line.hours for line in found.ledger) > 1,
            True,
        ),
        (
            ChangeReserve(reserve=5000),
            lambda found: min(line.balance for line in found.ledger) >= 5000,
            False,
        ),
        (ChangeMonths(months=3), lambda found: len(found.ledger) == 3, False),
        (
            ParkVehicle(vehicle="hatch", until=FEBRUARY),
            lambda found: found.stages.undrivable_vehicle_months == 0,
            False,
        ),
        (
            GiveUpVehicle(vehicle="cabrio", month=Month(2027, 1)),
            lambda found: names(found, "cabrio-seat"),
            True,
        ),
    ],
    ids=lambda value: type(value).__name__,
)
def test_each_change_changes_the_household(
    change: Change, holds: Callable[[Plan | None], bool], now: bool
) -> None:
    assert holds(planned(household())) == now
    assert holds(planned(household(), change)) != now


def test_what_is_not_obeyed_is_told() -> None:
    found = plan(MADE)
    assert isinstance(found, Plan)
    force = Force(leave=frozenset({"f1"}), use=frozenset({"x"}))
    assert len(list(disobeyed(force, found))) == 2
    assert not list(disobeyed(Force(take=frozenset({"f1"})), found))
