"""A plan against life, by hand."""

from dataclasses import replace
from datetime import date
from fractions import Fraction

import pytest

from partsplan.domain import (
    JobAgainst,
    Month,
    PartState,
    PlanAgainst,
    PlannedJob,
    PlannedMonth,
    PlanOnPaper,
)
from partsplan.ledger import against
from tests.support.small_logbook import GARAGE, folded

JANUARY, FEBRUARY, MARCH, APRIL = (Month(2027, month) for month in (1, 2, 3, 4))
LATER = date(2027, 3, 20)

ALTERNATOR = PlannedJob(
    option="alternator",
    faults=("charging",),
    ordered=JANUARY,
    fitted=FEBRUARY,
    landed=24000,
    deposit=8000,
    hours=Fraction(3),
)
RADIATOR = PlannedJob(
    option="radiator",
    faults=("cooling",),
    ordered=FEBRUARY,
    fitted=FEBRUARY,
    landed=10001,
    deposit=0,
    hours=Fraction(2),
)
PLAN = PlanOnPaper(
    number=1,
    kept=date(2027, 1, 2),
    jobs=(ALTERNATOR, RADIATOR),
    months=(
        PlannedMonth(month=JANUARY, out=32000, back=0, hours=Fraction(0)),
        PlannedMonth(month=FEBRUARY, out=5900, back=0, hours=Fraction(5)),
        PlannedMonth(month=MARCH, out=2500, back=0, hours=Fraction(0)),
        PlannedMonth(month=APRIL, out=900, back=8000, hours=Fraction(0)),
    ),
)


def held(*lines: str, today: date = LATER) -> PlanAgainst:
    return against(GARAGE, folded(*lines), PLAN, today)


def alternator(*lines: str, today: date = LATER) -> JobAgainst:
    return held(*lines, today=today).jobs[0]


def test_nothing_is_begun_at_first() -> None:
    found = held(today=date(2027, 1, 2))
    assert [(job.done, job.late) for job in found.jobs] == [(None, 0), (None, 0)]
    assert [job.more_money for job in found.jobs] == [None, None]
    assert [month.begun for month in found.months] == [True, False, False, False]


def test_what_is_not_begun_is_late_from_its_month_of_ordering_on() -> None:
    assert [job.late for job in held().jobs] == [2, 1]


def test_a_job_that_took_longer_and_cost_more() -> None:
    job = alternator(
        "2027-01-05 ordered alternator amount=25050 deposit=9000",
        "2027-02-25 arrived alternator",
        "2027-03-02 fitted alternator hours=4.5",
    )
    assert job.done is not None
    assert (job.done.ordered, job.done.fitted) == (date(2027, 1, 5), date(2027, 3, 2))
    assert (job.more_money, job.done.deposit) == (1050, 9000)
    assert (job.more_hours, job.late) == (Fraction("1.5"), 1)


def test_a_job_done_before_its_month() -> None:
    lines = ("2027-01-05 ordered alternator", "2027-01-20 fitted alternator")
    assert alternator(*lines).late == -1


def test_a_job_under_way_is_late_from_its_month_of_fitting_on() -> None:
    lines = ("2027-01-05 ordered alternator", "2027-01-30 arrived alternator")
    job = alternator(*lines)
    assert (job.late, job.more_money, job.more_hours) == (1, 0, None)
    assert alternator(*lines, today=date(2027, 2, 28)).late == 0


def test_a_part_bought_twice_is_billed_twice() -> None:
    job = alternator(
        "2027-01-05 ordered alternator",
        "2027-01-20 arrived alternator",
        "2027-01-21 fitted alternator",
        "2027-01-25 dud alternator",
        "2027-01-25 ordered alternator amount=1000",
        "2027-02-20 arrived alternator",
        "2027-02-21 fitted alternator",
    )
    assert job.done is not None
    assert (job.done.orders, job.done.billed) == (2, 25000)
    assert job.done.hours == 6
    assert (job.done.ordered, job.late) == (date(2027, 1, 5), 0)
    assert job.done.deposit == 8000  # the first one still stands


def test_a_dud_is_not_done() -> None:
    job = alternator(
        "2027-01-05 ordered alternator",
        "2027-01-20 arrived alternator",
        "2027-01-21 fitted alternator",
        "2027-01-25 dud alternator",
    )
    assert job.done is not None
    assert (job.done.state, job.late) == (PartState.DUD, 1)
    assert job.more_hours is None


BOUGHT = replace(
    PLAN,
    kept=date(2027, 2, 2),
    jobs=(replace(ALTERNATOR, landed=0),),
    months=PLAN.months[1:],
)
"""The plan of the next month: the alternator was ordered before, and is paid for."""


def test_a_part_that_was_bought_before_the_plan_is_begun() -> None:
    lines = ("2027-01-15 ordered alternator", "2027-02-03 arrived alternator")
    ledger = folded(*lines)
    (job,) = against(GARAGE, ledger, BOUGHT, date(2027, 2, 20)).jobs
    assert job.done is not None
    assert (job.done.state, job.done.ordered) == (PartState.IN_HAND, date(2027, 1, 15))
    assert (job.late, job.more_money, job.more_hours) == (0, 0, None)
    fitted = folded(*lines, "2027-03-05 fitted alternator hours=4")
    found = against(GARAGE, fitted, BOUGHT, LATER)
    (job,) = found.jobs
    assert (job.late, job.more_money) == (1, 0)
    assert job.more_hours == 1
    assert found.unplanned == ()


def test_what_is_ordered_again_for_it_is_billed() -> None:
    ledger = folded(
        "2027-01-15 ordered alternator",
        "2027-02-03 arrived alternator",
        "2027-02-04 fitted alternator",
        "2027-02-05 dud alternator",
        "2027-02-06 ordered alternator amount=1000",
    )
    (job,) = against(GARAGE, ledger, BOUGHT, LATER).jobs
    assert job.done is not None
    assert (job.done.orders, job.more_money) == (2, 1000)


def test_what_was_not_planned_is_told_with_what_it_took_the_place_of() -> None:
    found = held("2027-02-05 ordered reseal", "2027-02-07 ordered bulb")
    assert [one.option for one in found.unplanned] == ["reseal", "bulb"]
    assert [job.instead for job in found.jobs] == [(), ("reseal",)]


@pytest.mark.parametrize(
    ("day", "counts"),
    [
        ("2026-12-31", False),
        ("2027-01-01", True),
        ("2027-04-30", True),
        ("2027-05-01", False),
    ],
)
def test_only_orders_in_its_months_are_not_planned(day: str, counts: bool) -> None:
    found = held(f"{day} ordered bulb", today=date(2027, 5, 2))
    assert bool(found.unplanned) is counts


def test_an_order_before_the_first_month_counts_once_the_plan_was_kept() -> None:
    early = PlanOnPaper(
        number=1, kept=date(2026, 12, 28), jobs=PLAN.jobs, months=PLAN.months
    )
    ledger = folded("2026-12-29 ordered alternator")
    assert against(GARAGE, ledger, early, LATER).jobs[0].done is not None
    assert against(GARAGE, ledger, PLAN, LATER).jobs[0].done is None


def test_months_are_summed_up_to_the_one_that_has_begun() -> None:
    found = held(
        "2027-01-05 ordered alternator",
        "2027-02-10 paid - amount=1500",
        "2027-02-20 fitted alternator hours=4",
        "2027-03-01 money-in - amount=700",
    )
    assert [(one.spent, one.received) for one in found.months] == [
        (32000, 0),
        (4300, 0),
        (0, 700),
        (0, 0),
    ]
    assert (found.planned_out, found.spent) == (40400, 36300)
    assert (found.planned_hours, found.hours) == (Fraction(5), Fraction(4))
    assert found.months[1].more_money == -1600


def test_an_option_that_the_garage_has_no_more_is_told_by_its_name() -> None:
    gone = PlannedJob(
        option="gone",
        faults=("cooling",),
        ordered=JANUARY,
        fitted=JANUARY,
        landed=100,
        deposit=0,
        hours=Fraction(0),
    )
    plan = PlanOnPaper(number=1, kept=PLAN.kept, jobs=(gone,), months=PLAN.months)
    ledger = folded("2027-01-05 ordered gone amount=150")
    (job,) = against(GARAGE, ledger, plan, LATER).jobs
    assert job.done is not None
    assert (job.more_money, job.done.faults) == (50, ())
