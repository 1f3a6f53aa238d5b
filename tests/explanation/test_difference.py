"""Two plans side by side: what enters, leaves and moves, and what is sure."""

from dataclasses import replace
from fractions import Fraction

import pytest

from partsplan.domain import (
    FaultStatus,
    Fitted,
    Garage,
    JobFact,
    Month,
    Plan,
    PlanDifference,
    Route,
    Stage,
    StageDifference,
    Supplier,
    Tool,
)
from partsplan.explanation import compare_plans, same_jobs
from partsplan.planning import plan
from tests.support.building import START, fault, garage, option, vehicle
from tests.support.small_garages import small_garage


def planned(made: Garage) -> Plan:
    found = plan(made, gap=0.0)
    assert isinstance(found, Plan)
    return found


def difference(made: Garage, other: Garage) -> PlanDifference:
    return compare_plans(made, planned(made), other, planned(other))


@pytest.mark.parametrize("seed", range(20))
def test_a_garage_beside_itself_has_no_difference(seed: int) -> None:
    made = small_garage(seed)
    if not isinstance(found := plan(made), Plan):
        return
    told = compare_plans(made, found, made, found)
    assert told.empty
    assert told.same_jobs
    assert told.otherwise_worth == ()
    assert all(one.before == one.after for one in told.stages)


@pytest.mark.parametrize("seed", range(20))
def test_leaving_and_entering_change_sides_with_the_plans(seed: int) -> None:
    made = small_garage(seed)
    other = replace(made, budget=tuple(one // 2 for one in made.budget))
    plans = plan(made), plan(other)
    if not isinstance(plans[0], Plan) or not isinstance(plans[1], Plan):
        return
    there = compare_plans(made, plans[0], other, plans[1])
    back = compare_plans(other, plans[1], made, plans[0])
    assert set(there.enter) == set(back.leave)
    assert set(there.leave) == set(back.enter)
    assert len(there.shifts) == len(back.shifts)
    assert [one.change for one in there.stages] == [-one.change for one in back.stages]
    kept = {shift.before.option for shift in there.shifts}
    for job in plans[0].jobs:  # each job is told once, or is the same in both
        told = (job in there.leave) + (job.option in kept)
        assert told == (job not in plans[1].jobs)


TWO = garage(
    months=2,
    budget=(10000,),
    faults=(fault(points=60), fault("f2")),
    options=(option(), option("o2", "f2")),
)


def test_a_job_enters_leaves_or_moves() -> None:
    poorer = replace(TWO, budget=(10000, 0))
    told = difference(TWO, poorer)
    assert len(told.leave) == 1
    assert not told.enter
    assert [skip.fault for skip in told.left] == list(told.leave[0].faults)
    later = replace(TWO, options=(option(lead_days=30), option("o2", "f2")))
    moved = difference(TWO, replace(later, budget=(20000, 0)))
    facts = {shift.before.option: shift.facts for shift in moved.shifts}
    assert JobFact.FITTED in facts["o1"]
    assert JobFact.ORDERED in facts["o2"]
    back = difference(poorer, TWO)
    assert len(back.enter) == 1
    assert [skip.fault for skip in back.taken_up] == list(back.enter[0].faults)


def test_the_same_fault_by_another_option_is_one_job_done_another_way() -> None:
    made = garage(
        suppliers=(Supplier(id="s1", name="Low Barn Spares", currency="EUR"),)
    )
    cheaper = option("o9", route=Route.USED, price=4000, supplier="s1")
    told = difference(made, replace(made, options=(option(), cheaper)))
    assert not told.enter
    assert not told.leave
    (shift,) = told.shifts
    assert (shift.before.option, shift.after.option) == ("o1", "o9")
    expected = {JobFact.OPTION, JobFact.ROUTE, JobFact.SUPPLIER, JobFact.PRICE}
    assert expected <= set(shift.facts)
    assert not told.same_jobs


def test_a_stand_in_is_not_what_lasts_done_another_way() -> None:
    stand_in = option("o9", route=Route.STAND_IN, followup_within=3, price=100)
    told = difference(garage(), garage(options=(stand_in,)))
    assert [job.option for job in told.leave] == ["o1"]
    assert [job.option for job in told.enter] == ["o9"]


def test_another_price_alone_is_told_of_the_same_jobs() -> None:
    told = difference(garage(), garage(options=(option(price=9000),)))
    assert told.same_jobs
    assert not told.empty
    assert told.shifts[0].facts == (JobFact.PRICE, JobFact.CHARGE)
    before, after = told.money[0].before, told.money[0].after
    assert before is not None
    assert after is not None
    assert before.out - after.out == 1000


def test_tools_are_told_too() -> None:
    puller = Tool(id="t1", name="puller", price=500)
    made = garage(tools=(puller,), options=(option(tools=("t1",)),))
    told = difference(garage(tools=(puller,)), made)
    assert [buy.tool for buy in told.tools_enter] == ["t1"]
    assert not told.tools_leave


def test_months_are_compared_by_the_calendar() -> None:
    made = garage(options=(option(not_before=Month(2027, 2)),))
    later = replace(made, start=Month(2027, 2))
    plans = planned(made), planned(later)
    assert [one.jobs[0].ordered for one in plans] == [1, 0]
    assert same_jobs(made, plans[0], later, plans[1])
    told = compare_plans(made, plans[0], later, plans[1])
    assert [str(one.month) for one in told.money] == [
        "2027-01",
        "2027-02",
        "2027-03",
        "2027-04",
    ]
    assert told.money[0].after is None
    assert told.money[3].before is None


def loose(made: Garage, missing: int, **stages: int) -> Plan:
    """A plan of which that much net worth may be missing."""
    found = planned(made)
    bound = found.stages.net_worth + missing
    bounds = replace(found.stage_bounds, net_worth=bound, **stages)
    return replace(found, bound=bound, stage_bounds=bounds)


def worth(made: Garage, found: Plan, other: Garage, second: Plan) -> StageDifference:
    told = compare_plans(made, found, other, second)
    return next(one for one in told.stages if one.stage is Stage.WORTH)


@pytest.mark.parametrize(
    ("missing", "other_missing", "certain"),
    [(0, 0, True), (50, 49, True), (50, 50, False), (0, 500, False)],
)
def test_a_difference_within_the_two_gaps_is_no_fact(
    missing: int, other_missing: int, certain: bool
) -> None:
    made = garage()  # looks 3 of 36 months ahead, so 12.00 more cost 1.00 more
    dearer = garage(options=(option(price=10000 + 1200),))
    found = worth(made, loose(made, missing), dearer, loose(dearer, other_missing))
    assert found.change == -100
    assert found.certain is certain


def test_after_a_count_that_is_not_proven_nothing_is_certain() -> None:
    made = garage(faults=(fault(fix_by=Month(2027, 1)),), options=())
    found = loose(made, 0, missed_deadlines=0)
    assert found.stages.missed_deadlines == 1
    told = compare_plans(made, found, made, found)
    assert [one.certain for one in told.stages] == [False] * 4


def test_equal_figures_with_a_gap_are_not_told_as_equal() -> None:
    made = garage()
    found = worth(made, loose(made, 10), made, loose(made, 0))
    assert found.change == 0
    assert not found.certain


def test_net_worth_counted_from_another_start_is_told() -> None:
    made = garage()
    worse = garage(faults=(fault(points=60),))
    assert difference(made, worse).otherwise_worth == ("f1",)
    assert difference(made, garage(hour_value=9)).otherwise_worth == ()
    assert difference(made, garage(look_beyond=3)).otherwise_worth == ("f1",)


def test_net_worth_of_what_something_relieves_already_is_told() -> None:
    half = Fitted(option="o9", relief=Fraction(1, 2), until=START.plus(1))
    relieved = garage(faults=(fault(fitted=(half,)),))
    assert difference(garage(), relieved).otherwise_worth == ("f1",)
    over = garage(faults=(fault(fitted=(replace(half, until=START),)),))
    assert difference(garage(), over).otherwise_worth == ()


def test_a_new_fault_that_no_job_touches_leaves_the_net_worths_comparable() -> None:
    more = garage(faults=(fault(), fault("f2")))
    told = difference(garage(), more)
    assert told.otherwise_worth == ()
    assert [skip.fault for skip in told.left] == ["f2"]


def test_a_fault_that_is_mended_meanwhile_is_not_taken_up() -> None:
    made = garage(vehicles=(vehicle(),), options=())
    mended = replace(made, faults=(fault(status=FaultStatus.FIXED),))
    assert difference(made, mended).taken_up == ()
