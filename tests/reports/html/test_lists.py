"""What is bought, paid, done and sent back, against the plan."""

from dataclasses import replace
from datetime import date

from partsplan.domain import FaultStatus, Garage, Route
from partsplan.reports.html.duties import (
    deposits_due,
    not_driven_now,
    others_due,
    planned_returns,
)
from partsplan.reports.html.months import months, sums, to_pay
from partsplan.reports.html.shopping import NOWHERE, TOOLS, shopping
from tests.reports.html.made_reports import made_report
from tests.reports.made import GARAGE, PLAN
from tests.support.small_logbook import log

ORDERED = "2027-01-05 ordered ecu-exchange"
FITTED = (ORDERED, "2027-01-25 arrived ecu-exchange", "2027-02-01 fitted ecu-exchange")


def cents(text: str) -> int:
    return round(float(text.replace(",", "")) * 100)


def test_an_order_lists_its_parts_with_what_else_to_know() -> None:
    mill, tools = shopping(GARAGE, PLAN, 0)
    assert (mill.place, mill.shipping) == ("Mill Lane Spares", "6.90")
    (hose,) = mill.items
    assert (hose.name, hose.price) == ("2 x hose-new, part BH-1", "69.00")
    assert hose.target == "Front brake hose bulges, small hatchback"
    assert hose.remarks == (
        "Route: new.",
        "Work for a licensed person, or to be checked by one.",
    )
    assert tools.place == TOOLS
    assert [(one.name, one.target, one.price) for one in tools.items] == [
        ("Brake pipe spanner", "For hose-new", "19.00")
    ]


def test_deposit_and_coding_are_told_beside_the_price() -> None:
    ((order,), nothing) = shopping(GARAGE, PLAN, 1), shopping(GARAGE, PLAN, 2)
    assert order.items[0].remarks == (
        "Route: exchange.",
        "Deposit on top: 80.00 EUR.",
        "Coding, to be paid: 40.00 EUR.",
    )
    assert nothing == ()


def test_what_is_bought_already_is_not_bought_again() -> None:
    bought = replace(
        PLAN, jobs=tuple(replace(job, bought=True) for job in PLAN.jobs), tools=()
    )
    assert shopping(GARAGE, bought, 0) == ()


def test_a_part_without_a_supplier_is_listed_all_the_same() -> None:
    jobs = (replace(PLAN.jobs[0], supplier=None, route=Route.NEW),)
    (order,) = shopping(GARAGE, replace(PLAN, jobs=jobs, tools=()), 0)
    assert (order.place, order.shipping) == (NOWHERE, "")


def test_payments_sum_to_what_goes_out() -> None:
    for month in (0, 1, 2):
        table = to_pay(GARAGE, PLAN, month)
        assert table is not None
        *parts, total = (cents(row[1]) for row in table.rows)
        assert sum(parts) == total == PLAN.ledger[month].out


def test_a_month_tells_its_steps_and_what_is_left() -> None:
    first, second, last = months(GARAGE, PLAN)
    assert [(step.do, step.name) for step in first.steps] == [
        ("order, fit", "hose-new*"),
        ("buy tool", "Brake pipe spanner"),
    ]
    assert [(step.do, step.hours) for step in (*second.steps, *last.steps)] == [
        ("order", ""),
        ("fit", "1"),
    ]
    assert first.sums == (
        "300.00 EUR come in, 103.90 go out: 196.10 EUR at the end. Own hours: 1.5 of 8."
    )
    assert second.sums.startswith("196.10 are left over, 300.00 EUR come in")


def test_money_that_does_not_move_on_is_not_told_as_left_over() -> None:
    assert sums(replace(GARAGE, carry_over=False), PLAN, 1).startswith("300.00 EUR")
    owing = sums(replace(GARAGE, opening_cash=-7500), PLAN, 0)
    assert owing.startswith("75.00 are owed, 300.00 EUR come in")


def test_a_planned_return_has_its_day_and_its_stake() -> None:
    table = planned_returns(made_report())
    assert table is not None
    cells = dict(zip((one.title for one in table.columns), table.rows[0], strict=True))
    assert cells == {
        "Old unit of": "ecu-exchange",
        "To": "Mill Lane Spares",
        "Fitted": "2027-03",
        "Back by": "2027-04-14",  # 30 days from the middle of the month of fitting
        "At stake": "80.00",
        "Freight": "12.00",
        "Comes back in": "2027-04",
    }


def test_a_deposit_that_is_not_trusted_is_not_counted_on() -> None:
    wary = replace(GARAGE, core_trust=GARAGE.core_trust * 2)
    table = planned_returns(made_report(wary))
    assert table is not None
    assert table.rows[0][-1] == "not counted on"


def test_the_logbook_tells_until_when_an_old_unit_goes_back() -> None:
    report = made_report(entries=log(*FITTED), today=date(2027, 2, 20))
    assert deposits_due(report) == (
        "By 2027-03-03: send the old unit of ecu-exchange back, or lose 80.00 EUR.",
    )


def test_other_days_are_told_apart_from_deposits() -> None:
    report = made_report(entries=log(ORDERED), today=date(2027, 1, 30))
    assert deposits_due(report) == ()
    assert others_due(report)[0].startswith("Since 2027-01-2")
    assert "ecu-exchange should have arrived" in others_due(report)[0]


def still_dangerous(status: FaultStatus) -> Garage:
    hose = replace(GARAGE.faults[0], status=status)
    return replace(GARAGE, faults=(hose, *GARAGE.faults[1:]))


def test_a_danger_of_today_is_told_though_the_plan_starts_later() -> None:
    """The plan begins when the brake hose is cured; today it is not."""
    report = made_report()
    assert not_driven_now(report) == ()
    later = replace(report, garage=still_dangerous(FaultStatus.FIXED))
    assert not_driven_now(later) == (
        "small hatchback, until this is cured: Front brake hose bulges (hose).",
    )
