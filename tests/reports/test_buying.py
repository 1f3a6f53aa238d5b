from dataclasses import replace
from fractions import Fraction

import pytest

from partsplan.domain import Instalment, System
from partsplan.reports.buying import buying, credited_in, payments
from partsplan.reports.page import Page
from tests.reports.made import GARAGE, PLAN


@pytest.mark.parametrize("month", [0, 1, 2])
def test_the_payments_of_a_month_add_up_to_its_ledger(month: int) -> None:
    due = sum(amount for _, amount in payments(GARAGE, PLAN, month))
    assert due == PLAN.ledger[month].out


def test_a_later_instalment_is_told_apart() -> None:
    half = Fraction(1, 2)
    split = (Instalment(months=0, share=half), Instalment(months=1, share=half))
    options = tuple(replace(one, instalments=split) for one in GARAGE.options)
    garage = replace(GARAGE, options=options)
    now, later = (dict(payments(garage, PLAN, month)) for month in (0, 1))
    assert now["Parts and work ordered this month, as far as due"] == 3450
    assert later["Instalments of earlier orders"] == 3450


@pytest.mark.parametrize(("days", "month"), [(0, 2), (1, 3), (30, 3), (31, 4)])
def test_a_deposit_is_credited_after_whole_months(days: int, month: int) -> None:
    options = tuple(replace(one, core_days=days) for one in GARAGE.options)
    assert credited_in(replace(GARAGE, options=options), PLAN.jobs[1]) == month


def test_the_return_is_paid_with_the_credit() -> None:
    options = tuple(replace(one, core_days=0) for one in GARAGE.options)
    garage = replace(GARAGE, options=options)
    assert dict(payments(garage, PLAN, 2))["Sending old units back"] == 1200


def test_brake_work_is_flagged_for_a_licensed_person() -> None:
    page = Page()
    buying(page, GARAGE, PLAN, 0)
    assert "* Work for a licensed person" in str(page)
    harmless = replace(GARAGE.faults[0], system=System.COOLING)
    unflagged = Page()
    buying(unflagged, replace(GARAGE, faults=(harmless, *GARAGE.faults[1:])), PLAN, 0)
    assert "licensed" not in str(unflagged)
