"""Which days come from the plan, and which from what happened."""

from dataclasses import replace
from datetime import date

import pytest

from partsplan.domain import (
    DeadlineDay,
    FittingDay,
    Job,
    MilestoneDay,
    Occasion,
    OrderDay,
    Plan,
    QuoteDay,
    ReturnDay,
    ToolBuy,
    ToolDay,
)
from partsplan.reports import occasions
from tests.reports.made import PLAN
from tests.support.small_logbook import FAULTS, GARAGE, OPTIONS, folded

NEW_YEAR = date(2027, 1, 1)


def job(option: str, ordered: int, fitted: int) -> Job:
    found = GARAGE.option[option]
    return Job(
        option=option,
        faults=tuple(cure.fault for cure in found.fixes),
        route=found.route,
        supplier=None,
        ordered=ordered,
        fitted=fitted,
        landed=found.price,
        deposit=found.core_deposit,
        charge=0,
        hours=found.hours,
    )


def planned(*jobs: Job, tools: tuple[ToolBuy, ...] = ()) -> Plan:
    return replace(PLAN, jobs=jobs, tools=tools)


ALTERNATOR = planned(job("alternator", 0, 1))


def days(plan: Plan, *lines: str, today: date = NEW_YEAR) -> list[Occasion]:
    """Without deadlines and milestones, which have tests of their own."""
    found = occasions(GARAGE, plan, folded(*lines), today)
    return [one for one in found if not isinstance(one, DeadlineDay | MilestoneDay)]


def fitting(day: date, option: str = "alternator") -> FittingDay:
    return FittingDay(option=option, day=day)


def back(day: date, *, certain: bool, deposit: int = 8000) -> ReturnDay:
    return ReturnDay(option="alternator", day=day, deposit=deposit, certain=certain)


def order(day: date, *options: str) -> OrderDay:
    return OrderDay(day=day, supplier=None, options=options)


def test_a_planned_exchange_is_ordered_fitted_and_sent_back() -> None:
    assert days(ALTERNATOR) == [
        order(NEW_YEAR, "alternator"),
        fitting(date(2027, 2, 15)),
        back(date(2027, 4, 1), certain=False),  # 45 days after the fitting
    ]


def test_what_is_late_stands_on_today() -> None:
    assert days(ALTERNATOR, today=date(2027, 3, 2)) == [
        order(date(2027, 3, 2), "alternator"),
        fitting(date(2027, 3, 22)),  # 20 days until it is there
        back(date(2027, 5, 6), certain=False),
    ]


def test_what_was_ordered_is_fitted_when_it_can_be() -> None:
    # it comes on 17 February, two days after the middle of the month
    lines = ("2027-01-28 ordered alternator deposit=9000",)
    assert days(ALTERNATOR, *lines, today=date(2027, 1, 29)) == [
        fitting(date(2027, 2, 17)),
        back(date(2027, 4, 3), certain=False, deposit=9000),
    ]
    without = days(planned(), *lines, today=date(2027, 1, 29))
    assert [one.day for one in without] == [date(2027, 2, 17), date(2027, 4, 3)]


def test_what_is_fitted_only_has_to_be_sent_back() -> None:
    lines = (
        "2027-01-05 ordered alternator",
        "2027-01-20 arrived alternator",
        "2027-01-21 fitted alternator",
    )
    today = date(2027, 1, 22)
    assert days(ALTERNATOR, *lines, today=today) == [
        back(date(2027, 3, 7), certain=True)
    ]
    sent = (*lines, "2027-01-23 sent-back alternator")
    assert days(ALTERNATOR, *sent, today=today) == []
    assert days(ALTERNATOR, *lines, today=date(2027, 3, 7)) != []
    assert days(ALTERNATOR, *lines, today=date(2027, 3, 8)) == []


def test_a_dud_is_ordered_again() -> None:
    lines = (
        "2027-01-05 ordered alternator",
        "2027-01-20 arrived alternator",
        "2027-01-20 dud alternator",
    )
    assert days(ALTERNATOR, *lines, today=date(2027, 1, 21)) == [
        order(date(2027, 1, 21), "alternator"),
        fitting(date(2027, 2, 15)),
        back(date(2027, 4, 1), certain=False),
    ]


def test_what_wore_out_before_the_plan_is_done_again() -> None:
    lines = ("2026-01-05 ordered bulb", "2026-01-09 fitted bulb")
    plan = planned(job("bulb", 0, 0))
    assert days(plan, *lines) == [
        order(NEW_YEAR, "bulb"),
        fitting(date(2027, 1, 15), "bulb"),
    ]


def test_a_quote_ends_while_its_option_is_not_bought() -> None:
    plan = planned(job("bulb", 1, 1))
    ends = QuoteDay(option="bulb", day=date(2027, 2, 28))
    assert ends in days(plan)
    assert ends in days(plan, today=date(2027, 2, 28))
    assert ends not in days(plan, today=date(2027, 3, 1))
    assert ends not in days(plan, "2027-01-02 ordered bulb", today=date(2027, 1, 3))
    assert ends not in days(planned())


def test_a_tool_is_bought_until_it_is_paid_for() -> None:
    plan = planned(tools=(ToolBuy(tool="puller", month=2, price=3900),))
    assert days(plan) == [ToolDay(tool="puller", day=date(2027, 3, 1), price=3900)]
    assert days(plan, "2027-01-02 paid puller amount=3900") == []


def test_deadlines_and_milestones_stand_while_their_faults_do() -> None:
    def told(*lines: str, today: date = NEW_YEAR) -> list[Occasion]:
        found = occasions(GARAGE, planned(), folded(*lines), today)
        kinds = DeadlineDay | MilestoneDay
        return [one for one in found if isinstance(one, kinds)]

    deadline = DeadlineDay(fault="charging", day=date(2027, 3, 31))
    milestone = MilestoneDay(
        milestone="inspection", day=date(2027, 4, 30), faults=("pulls",)
    )
    assert told() == [deadline, milestone]
    assert told(today=date(2027, 4, 2)) == [
        replace(deadline, day=date(2027, 4, 2)),
        milestone,
    ]
    fitted = (
        "2027-01-02 fitted alternator",
        "2027-01-03 fitted tracking",
        "2027-01-03 sent-back alternator",
    )
    assert told(*fitted) == []


@pytest.mark.parametrize("supplier", ["counter", None])
def test_one_supplier_gets_one_order_a_month(supplier: str | None) -> None:
    jobs = [
        replace(job(name, month, month), supplier=supplier)
        for name, month in (("bulb", 0), ("tracking", 0), ("radiator", 1))
    ]
    orders = [one for one in days(planned(*jobs)) if isinstance(one, OrderDay)]
    assert [one.options for one in orders] == (
        [("bulb", "tracking"), ("radiator",)]
        if supplier
        else [("bulb",), ("tracking",), ("radiator",)]
    )


def test_names_are_unique_whatever_happened() -> None:
    lines = ("2027-01-05 ordered alternator", "2027-01-21 fitted alternator")
    both = planned(*(job(option.id, 1, 2) for option in OPTIONS))
    found = occasions(GARAGE, both, folded(*lines), NEW_YEAR)
    names = [(one.code, one.names) for one in found]
    assert len(set(names)) == len(names) > len(FAULTS)
