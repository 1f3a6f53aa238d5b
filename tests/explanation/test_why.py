"""Who is asked, and what is answered for what is left alone."""

from fractions import Fraction
from typing import Any

import pytest

from partsplan.domain import (
    DearerThanAllMoney,
    Dominated,
    FaultStatus,
    Garage,
    LongerThanAllHours,
    NoOption,
    Plan,
    Route,
    RouteRule,
    System,
    Turn,
    WhyChosen,
    WhyNot,
    WorthLessThanCost,
)
from partsplan.explanation import skips, subjects, why
from partsplan.planning import Planner, replan
from tests.support.asking_why import (
    CLOSE,
    ask,
    forced_in,
    order,
    small_plan,
    why_not,
)
from tests.support.building import START, fault, garage, option


def planned(made: Garage) -> tuple[Planner, Plan]:
    planner = Planner(made)
    found = planner.best(CLOSE)
    assert isinstance(found, Plan)
    return planner, found


def crowded(**changes: Any) -> Garage:
    """Money for the job of ``f2`` and half of that of ``f1``."""
    facts: dict[str, Any] = {
        "budget": (6000,),
        "faults": (fault(), fault("f2", points=Fraction(80))),
        "options": (option(price=12000), option("o2", "f2", price=12000)),
    }
    return garage(**facts | changes)


def test_jobs_can_be_asked_about_and_open_faults_without_one() -> None:
    made = crowded(
        faults=(
            fault(),
            fault("f2", points=Fraction(80)),
            fault("f3", status=FaultStatus.WATCH),
            fault("f4", status=FaultStatus.FIXED),
            fault("f5"),
        )
    )
    assert subjects(*_garage_and_plan(made)) == ("o2", "f1", "f5")


def _garage_and_plan(made: Garage) -> tuple[Garage, Plan]:
    return made, planned(made)[1]


def test_a_fault_with_a_job_is_defended_by_it() -> None:
    (by_fault,), (by_option,) = ask(crowded(), "f2"), ask(crowded(), "o2")
    assert isinstance(by_fault, WhyChosen)
    assert by_fault == by_option


@pytest.mark.parametrize("status", [FaultStatus.WATCH, FaultStatus.FIXED])
def test_nothing_is_planned_for_what_is_watched_or_fixed(status: FaultStatus) -> None:
    made = garage(faults=(fault(status=status),))
    assert why_not(made, "f1") == WhyNot(subject="f1")


def test_a_fault_that_nobody_quoted_for() -> None:
    made = garage(faults=(fault(), fault("f2")))
    assert why_not(made, "f2") == WhyNot(subject="f2", ruled_out=(NoOption(),))


def test_each_option_that_is_ruled_out_alone_is_named_once() -> None:
    made = garage(
        budget=(5000, 0, 0),
        faults=(fault(system=System.RESTRAINT),),
        options=(
            option(hours=Fraction(9), price=100),
            option("o2"),
            option("o3", route=Route.USED),
        ),
    )
    answer = why_not(made, "f1")
    assert [type(one) for one in answer.ruled_out] == [
        LongerThanAllHours,
        DearerThanAllMoney,
        RouteRule,
    ]
    assert answer.instead is None
    assert answer.thresholds == ()


def test_what_costs_more_than_it_gains_can_be_forced_in_all_the_same() -> None:
    """In the last month it counts for one month of the 34 that it lasts."""
    made = garage(faults=(fault(points=Fraction(1)),))
    answer = why_not(made, "f1")
    assert answer.ruled_out == (WorthLessThanCost(option="o1", worth=100, cost=294),)
    assert answer.instead is not None
    assert answer.instead.enters == ("o1",)
    assert answer.instead.leaves == ()
    assert answer.instead.loss.net_worth == 294 - 100
    # Three points gain 9.00, more than 8.33; a part for 36.00 costs all of 3.00.
    by_turn = {one.turn: one for one in answer.thresholds}
    assert by_turn[Turn.POINTS].not_at == 2
    assert by_turn[Turn.POINTS].at == 3
    assert by_turn[Turn.PRICE].at == 3550
    assert by_turn[Turn.PRICE].not_at == 3600
    assert by_turn[Turn.BUDGET].at is None


def test_an_option_not_taken_is_answered_for_itself() -> None:
    made = garage(options=(option(price=9000), option("o2")))
    answer = why_not(made, "o2")
    assert answer.subject == "o2"
    assert answer.ruled_out == (Dominated(option="o2", by="o1"),)
    assert answer.instead is not None
    assert (answer.instead.enters, answer.instead.leaves) == (("o2",), ("o1",))
    assert answer.instead.loss.net_worth == 833 - 750


def test_an_option_that_no_plan_can_hold_is_told_without_another_plan() -> None:
    made = garage(options=(option(), option("o2", price=70000)))
    answer = why_not(made, "o2")
    assert answer.instead is None
    assert [type(one) for one in answer.ruled_out] == [DearerThanAllMoney]


def test_what_is_fitted_if_the_plan_looks_twice_as_far() -> None:
    """240.00 are there in the fourth month; in three there are 180.00."""
    assert why_not(crowded(), "f1").later == 3
    dearer = option(price=18000), option("o2", "f2", price=12000)
    assert why_not(crowded(options=dearer), "f1").later == 4


def test_nothing_is_told_of_later_where_it_does_not_come_then() -> None:
    made = garage(faults=(fault(points=Fraction(1)),))
    assert why_not(made, "f1").later is None
    late = crowded(options=(option(price=12000, not_after=START), option("o2", "f2")))
    assert why_not(late, "f1").later is None


def test_without_time_all_but_the_search_is_told() -> None:
    made = crowded()
    planner, found = planned(made)
    (answer,) = why(planner, found, "f1", limits=CLOSE, left=lambda: 0.0)
    (whole,) = ask(made, "f1")
    assert isinstance(answer, WhyNot)
    assert isinstance(whole, WhyNot)
    assert answer.cut_short
    assert not whole.cut_short
    assert (answer.thresholds, answer.later) == ((), None)
    assert answer.instead == whole.instead


@pytest.mark.parametrize("plans", range(1, 12, 2))
def test_a_search_that_is_cut_short_tells_only_what_is_planned(plans: int) -> None:
    """What is told in less time is as true, if not as near."""
    made = crowded()
    planner, found = planned(made)
    seconds = iter([30.0] * plans)
    (answer,) = why(planner, found, "f1", limits=CLOSE, left=lambda: next(seconds, 0.0))
    assert isinstance(answer, WhyNot)
    for one in answer.thresholds:
        if one.turn is Turn.PRICE:
            assert one.at is not None
            assert one.at <= 6000 < one.not_at
        if one.turn is Turn.POINTS:
            assert one.at is not None
            assert one.not_at <= 80 < one.at


@pytest.mark.parametrize("first", range(0, 45, 15))
def test_the_answers_for_small_garages_hang_together(first: int) -> None:
    asked = 0
    for case in map(small_plan, range(first, first + 15)):
        if case is None:
            continue
        planner, found = case
        made = planner.garage
        waiting = {skip.fault for skip in skips(made, found)}
        assert set(subjects(made, found)) == waiting | set(found.choices.orders)
        for subject in [*waiting, *made.option]:
            for answer in why(planner, found, subject, limits=CLOSE, left=lambda: 0.0):
                if isinstance(answer, WhyChosen):
                    assert answer.option in found.choices.orders
                    continue
                forced = replan(made, force=forced_in(made, subject), gap=0.0)
                assert (answer.instead is None) is not isinstance(forced, Plan)
                if isinstance(forced, Plan):
                    assert order(made, forced.stages) >= order(made, found.stages)
                asked += 1
    assert asked > 20
