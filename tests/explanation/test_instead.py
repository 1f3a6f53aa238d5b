"""One plan against another, its losses worked out by a second program."""

from dataclasses import replace
from fractions import Fraction

import pytest

from partsplan.domain import (
    Choices,
    FaultStatus,
    Garage,
    Moved,
    Plan,
    PlanStatus,
    Stages,
)
from partsplan.explanation.instead import instead, loss
from partsplan.planning import Force
from tests.support.asking_why import CLOSE, order, small_plan
from tests.support.building import fault, garage, option
from tests.support.made_plans import as_planned
from tests.support.reference import judge, offers
from tests.support.reference_prices import points


def borne(made: Garage, choices: Choices) -> Fraction:
    """Points times what no job relieves, month by month, fault by fault."""
    known = offers(made)
    total = Fraction(0)
    for month in range(made.months):
        for one in made.faults:
            gone = month >= made.vehicle[one.vehicle].keep_months
            if one.status is FaultStatus.FIXED or gone:
                continue
            left = Fraction(1)
            for chosen in choices.orders.items():
                offer = known[chosen]
                life = offer.option.life
                worn = life is not None and month >= offer.fitted + life
                for cure in offer.option.fixes:
                    watched = one.status is FaultStatus.WATCH
                    if cure.fault == one.id and not watched and not worn:
                        relieved = cure.relief if month >= offer.fitted else Fraction(0)
                        left = min(left, 1 - relieved)
            total += left * points(made, one, month)
    return total


@pytest.mark.parametrize("first", range(0, 60, 20))
def test_losses_are_the_differences_of_figures_worked_out_anew(first: int) -> None:
    compared = 0
    for planned in map(small_plan, range(first, first + 20)):
        if planned is None:
            continue
        planner, found = planned
        made = planner.garage
        for one in made.faults:
            only = frozenset({one.id})
            touched = any(one.id in job.faults for job in found.jobs)
            force = Force(leave=only) if touched else Force(take=only)
            other = planner.best(CLOSE, force=force, start=found.choices)
            if not isinstance(other, Plan):
                continue
            mine, theirs = (
                judge(made, plan.choices.orders, plan.choices.tools)
                for plan in (found, other)
            )
            assert not mine.broken
            assert not theirs.broken
            told = loss(made, found, other)
            lost = (
                told.missed_deadlines,
                told.unsafe_vehicle_months,
                told.undrivable_vehicle_months,
                told.net_worth,
            )
            assert lost == (
                theirs.stages.missed_deadlines - mine.stages.missed_deadlines,
                theirs.stages.unsafe_vehicle_months - mine.stages.unsafe_vehicle_months,
                theirs.stages.undrivable_vehicle_months
                - mine.stages.undrivable_vehicle_months,
                mine.stages.net_worth - theirs.stages.net_worth,
            )
            more = borne(made, other.choices) - borne(made, found.choices)
            assert told.point_months == more
            assert order(made, other.stages) >= order(made, found.stages)
            compared += bool(other.jobs != found.jobs)
    assert compared > 20


TWO = garage(
    faults=(fault(), fault("f2"), fault("f3")),
    options=(option(), option("o2", "f2"), option("o3", "f3")),
)


def test_what_enters_leaves_and_moves() -> None:
    plan = as_planned(TWO, {"o1": 0, "o2": 0}, worth=10)
    other = as_planned(TWO, {"o2": 2, "o3": 1}, worth=4)
    found = instead(TWO, plan, other)
    assert found.enters == ("o3",)
    assert found.leaves == ("o1",)
    assert found.moved == (Moved(option="o2", before=0, after=2),)
    assert found.loss.net_worth == 6
    # f1 for three months, f2 for two more, f3 for two less
    assert found.loss.point_months == 50 * (3 + 2 - 2)


def test_ordered_earlier_but_fitted_in_the_same_month_is_not_moved() -> None:
    slow = garage(options=(option(lead_days=30, not_before=TWO.start.plus(2)),))
    one, other = (as_planned(slow, {"o1": 1}, worth=1) for _ in range(2))
    assert instead(slow, one, other).moved == ()


@pytest.mark.parametrize(
    ("bound", "other", "certain"),
    [
        (100, 60, True),  # 100 of 100 at most against 50 of 60 at most
        (110, 99, True),
        (100, 100, False),  # the other plan may be as good
        (110, 120, False),
    ],
)
def test_worth_is_lost_for_certain_only_beyond_what_is_unproven(
    bound: int, other: int, certain: bool
) -> None:
    plan = as_planned(TWO, {"o1": 0}, worth=100, bound=bound)
    rival = as_planned(TWO, {"o2": 0}, worth=50, bound=other)
    assert loss(TWO, plan, rival).certain is certain


def test_the_plan_that_should_be_worse_may_be_better_for_certain() -> None:
    plan = as_planned(TWO, {"o1": 0}, worth=50, bound=60)
    rival = as_planned(TWO, {"o2": 0}, worth=70, bound=90)
    told = loss(TWO, plan, rival)
    assert (told.net_worth, told.certain) == (-20, True)


def test_two_plans_of_the_same_proven_worth_lose_nothing_for_certain() -> None:
    plan = as_planned(TWO, {"o1": 0}, worth=100)
    rival = as_planned(TWO, {"o2": 0}, worth=100)
    told = loss(TWO, plan, rival)
    assert (told.net_worth, told.certain) == (0, True)


def test_a_stage_is_lost_for_certain_only_between_proven_plans() -> None:
    plan = as_planned(TWO, {"o1": 0}, worth=100)
    missed = Stages(
        missed_deadlines=1,
        unsafe_vehicle_months=2,
        undrivable_vehicle_months=0,
        net_worth=100,
    )
    rival = replace(as_planned(TWO, {"o2": 0}, worth=100), stages=missed)
    told = loss(TWO, plan, rival)
    assert (told.missed_deadlines, told.unsafe_vehicle_months) == (1, 2)
    assert told.certain
    unproven = replace(rival, status=PlanStatus.FEASIBLE)
    assert not loss(TWO, plan, unproven).certain
