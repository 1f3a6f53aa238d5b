"""Why a job is in the plan, against garages in which its options come too late."""

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from partsplan.domain import (
    Access,
    ComesBefore,
    FollowsStandIn,
    Garage,
    Inspection,
    Instead,
    MakesDrivable,
    MakesSafe,
    MeetsDeadline,
    Milestone,
    OneOfPair,
    Plan,
    Reason,
    Route,
    SharesAccess,
    SharesOrder,
    Stages,
    Supplier,
    WhyChosen,
)
from partsplan.explanation import subjects, why
from partsplan.intake import read_garage
from partsplan.planning import Planner, plan, replan
from tests.support.asking_why import (
    CLOSE,
    PLENTY,
    ask,
    closed,
    forced_in,
    order,
    small_plan,
    why_chosen,
)
from tests.support.building import START, fault, garage, option
from tests.support.reference import best

SCENARIOS = Path(__file__).parents[2] / "scenarios"
SEEDS = range(40)


def figures(found: Plan, other: Instead) -> Stages:
    """The figures of another plan, from what it loses."""
    mine, loss = found.stages, other.loss
    return Stages(
        missed_deadlines=mine.missed_deadlines + loss.missed_deadlines,
        unsafe_vehicle_months=mine.unsafe_vehicle_months + loss.unsafe_vehicle_months,
        undrivable_vehicle_months=mine.undrivable_vehicle_months
        + loss.undrivable_vehicle_months,
        net_worth=mine.net_worth - loss.net_worth,
    )


def without(made: Garage, option: str) -> dict[str, Garage]:
    """The garage without an option, and without all for its open faults."""
    named = {cure.fault for cure in made.option[option].fixes}
    taken = {
        one.id
        for fault in named
        for one in made.options_for[fault]
        if made.fault[fault].status.value == "open"
    }
    return {"avoid": closed(made, {option}), "leave": closed(made, taken)}


def defences(planner: Planner, found: Plan) -> Iterator[WhyChosen]:
    for job in found.jobs:
        (answer,) = why(planner, found, job.option, limits=CLOSE, left=lambda: PLENTY)
        assert isinstance(answer, WhyChosen)
        assert answer.option == job.option
        yield answer


def test_without_a_job_every_choice_tried_is_no_better_than_told() -> None:
    checked = 0
    for planned in map(small_plan, SEEDS):
        if planned is None:
            continue
        planner, found = planned
        made = planner.garage
        for answer in defences(planner, found):
            others = without(made, answer.option)
            for told, other in (
                (answer.runner_up, others["avoid"]),
                (answer.without, others["leave"]),
            ):
                reference = best(other)
                assert (told is None) is (reference is None)
                if told is None or reference is None:
                    continue
                stages = figures(found, told)
                assert tuple(map(stages.of, made.priority)) == reference.figures
                checked += 1
            if answer.by is not None:
                assert answer.runner_up is not None
                assert answer.by in answer.runner_up.enters
                assert answer.option in answer.runner_up.leaves
    assert checked > 80


def check_jobs(made: Garage) -> None:
    """Each job of a scenario, against planning without it."""
    planner = Planner(made)
    found = planner.best(CLOSE)
    assert isinstance(found, Plan)
    assert found.jobs
    for answer in defences(planner, found):
        others = without(made, answer.option)
        for told, other in (
            (answer.runner_up, others["avoid"]),
            (answer.without, others["leave"]),
        ):
            planned = plan(other, gap=0.0)
            assert told is not None
            assert isinstance(planned, Plan)
            assert figures(found, told) == planned.stages
            assert order(made, planned.stages) >= order(made, found.stages)


def test_without_a_job_of_the_household_planning_does_as_told() -> None:
    check_jobs(read_garage(SCENARIOS / "household"))


@pytest.mark.slow
@pytest.mark.parametrize("scenario", ["project-car", "transport-club"])
def test_without_a_job_of_a_scenario_planning_does_as_told(scenario: str) -> None:
    check_jobs(read_garage(SCENARIOS / scenario))


@pytest.mark.slow
@pytest.mark.parametrize("scenario", ["household", "project-car", "transport-club"])
def test_a_fault_forced_into_a_scenario_loses_what_is_told(scenario: str) -> None:
    made = read_garage(SCENARIOS / scenario)
    planner = Planner(made)
    found = planner.best(CLOSE)
    assert isinstance(found, Plan)
    asked = [one for one in subjects(made, found) if one in made.fault]
    assert asked
    for subject in asked:
        (answer,) = why(planner, found, subject, limits=CLOSE, left=lambda: 0.0)
        assert not isinstance(answer, WhyChosen)
        forced = replan(made, force=forced_in(made, subject), gap=0.0)
        assert (answer.instead is None) is not isinstance(forced, Plan)
        if answer.instead is None:
            assert answer.ruled_out
        elif isinstance(forced, Plan):
            assert figures(found, answer.instead) == forced.stages


# What asks for a job besides its worth.


def asks(made: Garage, option: str = "o1") -> tuple[Reason, ...]:
    return why_chosen(made, option).forced_by


def test_nothing_but_its_worth_asks_for_a_lone_job() -> None:
    answer = why_chosen(garage(), "o1")
    assert answer.forced_by == ()
    assert answer.by is None
    assert answer.runner_up == answer.without
    assert answer.without is not None
    # 3 months of 50.00, for 3 of the 36 that 100.00 last
    assert answer.without.loss.net_worth == 15000 - round(Fraction(10000 * 3, 36))
    assert answer.without.loss.point_months == 3 * 50


def test_the_next_best_option_and_by_how_much() -> None:
    made = garage(options=(option(), option("o2", price=12000)))
    answer = why_chosen(made, "o1")
    assert answer.by == "o2"
    assert answer.runner_up is not None
    assert answer.runner_up.loss.net_worth == 1000 - 833
    assert answer.without is not None
    assert answer.without.loss.net_worth == 15000 - 833


def test_a_deadline() -> None:
    made = garage(faults=(fault(fix_by=START.plus(1)),))
    assert asks(made) == (MeetsDeadline(subject="f1", month=START.plus(1)),)


def test_a_milestone() -> None:
    trip = Milestone(id="trip", month=START.plus(2), faults=("f1",), title="coast")
    made = garage(milestones=(trip,))
    assert asks(made) == (MeetsDeadline(subject="trip", month=START.plus(2)),)


def test_no_deadline_that_the_plan_misses_anyway() -> None:
    made = garage(faults=(fault(fix_by=START),), options=(option(lead_days=30),))
    assert asks(made) == ()


def test_months_in_which_it_must_not_be_driven() -> None:
    made = garage(
        faults=(fault(inspection=Inspection.DANGEROUS),),
        options=(option(lead_days=30),),
    )
    assert asks(made) == (MakesSafe(vehicle="v1", months=2),)


def test_months_in_which_it_cannot_be_driven() -> None:
    made = garage(faults=(fault(drivability=4),))
    assert asks(made) == (MakesDrivable(vehicle="v1", months=3),)


def test_one_of_a_pair_asks_for_the_other_on_either_side() -> None:
    made = garage(
        budget=(40000,),
        faults=(fault(pair_with=("f2",)), fault("f2")),
        options=(option(), option("o2", "f2")),
    )
    assert asks(made) == (OneOfPair(other="f2"),)
    assert asks(made, "o2") == (OneOfPair(other="f1"),)


def test_a_stand_in_asks_for_what_comes_after_it() -> None:
    made = garage(
        budget=(10500, 0),
        options=(
            option(lead_days=30, price=10000),
            option("o2", route=Route.STAND_IN, price=500, followup_within=2),
        ),
    )
    assert asks(made) == (FollowsStandIn(stand_in="o2"),)
    assert FollowsStandIn(stand_in="o1") not in asks(made, "o2")


def test_another_job_waits_for_it() -> None:
    made = garage(
        budget=(40000,),
        faults=(fault(points=Fraction(1)), fault("f2", after=("f1",))),
        options=(option(), option("o2", "f2")),
    )
    assert asks(made) == (ComesBefore(job="o2"),)
    assert asks(made, "o2") == ()


def test_work_behind_the_same_panel_in_the_same_month() -> None:
    panel = Access(id="a1", hours=Fraction(2), title="dash out")
    both = option(access=("a1",)), option("o2", "f2", access=("a1",))
    made = garage(
        budget=(40000,), faults=(fault(), fault("f2")), access=(panel,), options=both
    )
    assert asks(made) == (SharesAccess(access="a1", jobs=("o2",)),)
    later = both[0], replace(both[1], not_before=START.plus(1))
    assert asks(replace(made, options=later)) == ()


def mill(**changes: Any) -> Supplier:
    facts: dict[str, Any] = {"shipping": 690, "free_over": 15000} | changes
    return Supplier(id="s", name="Mill Lane Spares", currency="EUR", **facts)


def shared(*prices: int, **changes: int) -> Garage:
    """Jobs from one supplier, all in the first month."""
    names = [f"{number}" for number in range(1, 1 + len(prices))]
    return garage(
        budget=(90000, 0),
        suppliers=(mill(**changes),),
        faults=tuple(fault(f"f{one}") for one in names),
        options=tuple(
            option(f"o{one}", f"f{one}", price=price, supplier="s", not_after=START)
            for one, price in zip(names, prices, strict=True)
        ),
    )


def test_an_order_that_goes_free_because_of_it() -> None:
    assert asks(shared(10000, 5000)) == (SharesOrder(supplier="s", saved=690),)


@pytest.mark.parametrize(
    ("prices", "changes"),
    [
        ((10000, 4999), {}),  # not sent free
        ((1000, 15000), {}),  # free without it as well
        ((10000, 5000), {"shipping": 0}),
        ((10000, 5000), {"free_over": 0}),
    ],
)
def test_no_order_is_free_because_of_it(
    prices: tuple[int, ...], changes: dict[str, int]
) -> None:
    assert asks(shared(*prices, **changes)) == ()


def test_alone_in_an_order_it_saves_no_shipping() -> None:
    """Without it nothing would be sent."""
    assert asks(shared(20000)) == ()


def test_a_fault_with_two_jobs_gets_an_answer_for_each() -> None:
    made = garage(
        budget=(10500, 0),
        options=(
            option(lead_days=30),
            option("o2", route=Route.STAND_IN, price=500, followup_within=2),
        ),
    )
    found = ask(made, "f1")
    assert all(isinstance(one, WhyChosen) for one in found)
    assert {one.option for one in found if isinstance(one, WhyChosen)} == {"o1", "o2"}


def test_a_reserve_that_only_its_deposit_keeps_leaves_no_plan_without_it() -> None:
    """Unspent money is lost; the second month lives of what comes back."""
    part = option(
        price=1000, core_deposit=5000, core_days=30, not_after=START, lead_days=0
    )
    made = garage(
        budget=(9000, 0, 9000), reserve=3000, carry_over=False, options=(part,)
    )
    answer = why_chosen(made, "o1")
    assert (answer.runner_up, answer.by, answer.without) == (None, None, None)
