"""What orders, arrivals, fittings and duds cost and leave owed."""

from datetime import date
from fractions import Fraction

import pytest

from partsplan.domain import Due, DueKind, Month, MonthMoney, PartState
from tests.support.small_logbook import flags, folded

JANUARY, FEBRUARY, MARCH, APRIL = (Month(2027, month) for month in (1, 2, 3, 4))


def due(option: str, kind: DueKind, month: Month, amount: int) -> Due:
    return Due(option=option, kind=kind, month=month, amount=amount)


def test_an_order_spends_the_first_instalment_and_owes_the_rest() -> None:
    ledger = folded("2027-01-05 ordered radiator")
    # 10001 x 0.25 = 2500.25 twice, the last takes the rounding; fitted by 10 January
    assert ledger.money == {JANUARY: MonthMoney(spent=2500)}
    assert ledger.dues == (
        due("radiator", DueKind.FITTING, JANUARY, 600),
        due("radiator", DueKind.INSTALMENT, FEBRUARY, 2500),
        due("radiator", DueKind.INSTALMENT, APRIL, 5001),
    )
    part = ledger.parts["radiator"]
    assert (part.state, part.price) == (PartState.ON_THE_WAY, 10001)
    assert (part.ordered, part.expected) == (date(2027, 1, 5), date(2027, 1, 10))
    assert (part.warranty_until, part.deposit) == (None, None)


def test_an_exchange_part_spends_its_deposit_and_owes_the_freight_back() -> None:
    ledger = folded("2027-01-05 ordered alternator")
    # 20 days lie past the middle of the month: fitted in February; 45 days: 2 months
    assert ledger.money == {JANUARY: MonthMoney(spent=24000 + 8000)}
    assert ledger.dues == (
        due("alternator", DueKind.FITTING, FEBRUARY, 2800),
        due("alternator", DueKind.RETURN, APRIL, 900),
    )
    assert ledger.parts["alternator"].warranty_until == date(2029, 1, 5)


def test_what_was_billed_goes_before_the_quote() -> None:
    ledger = folded("2027-01-05 ordered alternator amount=25000 deposit=0")
    assert ledger.money == {JANUARY: MonthMoney(spent=25000)}
    assert ledger.dues == (due("alternator", DueKind.FITTING, FEBRUARY, 2800),)
    assert ledger.parts["alternator"].deposit is None


def test_a_part_goes_its_way() -> None:
    ledger = folded(
        "2027-01-05 ordered alternator",
        "2027-01-28 arrived alternator amount=450",
        "2027-03-02 fitted alternator hours=3.5",
    )
    assert ledger.money == {
        JANUARY: MonthMoney(spent=32000 + 450),
        MARCH: MonthMoney(spent=2800, hours=Fraction("3.5")),
    }
    # fitted in March instead of February: the freight moves a month
    assert ledger.dues == (due("alternator", DueKind.RETURN, Month(2027, 5), 900),)
    part = ledger.parts["alternator"]
    assert part.state is PartState.FITTED
    assert (part.expected, part.arrived) == (date(2027, 1, 28), date(2027, 1, 28))
    assert part.fitted == date(2027, 3, 2)
    assert part.warranty_until == date(2029, 1, 28)
    assert part.hours == Fraction("3.5")
    assert part.deposit is not None
    assert part.deposit.send_by == date(2027, 4, 16)
    assert (ledger.last, flags(ledger)) == (date(2027, 3, 2), [])


def test_a_fitting_takes_the_hours_of_its_option_unless_said_otherwise() -> None:
    lines = ("2027-01-05 ordered radiator", "2027-01-10 arrived radiator")
    quoted = folded(*lines, "2027-01-12 fitted radiator amount=0")
    assert quoted.money[JANUARY] == MonthMoney(spent=2500, hours=Fraction(2))
    assert [one.kind for one in quoted.dues] == [DueKind.INSTALMENT] * 2


@pytest.mark.parametrize(
    ("ordered", "until"),
    [("2026-02-28", "2028-02-28"), ("2028-02-29", "2030-02-28")],
)
def test_a_warranty_ends_on_the_same_day_or_the_last_of_a_shorter_month(
    ordered: str, until: str
) -> None:
    ledger = folded(f"{ordered} ordered alternator")
    assert ledger.parts["alternator"].warranty_until == date.fromisoformat(until)


def test_a_dud_that_was_not_fitted_needs_no_fitting_but_is_still_paid_for() -> None:
    ledger = folded(
        "2027-01-05 ordered radiator",
        "2027-01-10 arrived radiator",
        "2027-01-11 dud radiator",
    )
    assert [one.kind for one in ledger.dues] == [DueKind.INSTALMENT] * 2
    part = ledger.parts["radiator"]
    assert (part.state, part.failed) == (PartState.DUD, date(2027, 1, 11))


def test_a_replacement_under_warranty_is_free_and_keeps_the_deposit() -> None:
    ledger = folded(
        "2027-01-05 ordered alternator",
        "2027-01-25 arrived alternator",
        "2027-02-01 fitted alternator",
        "2029-01-25 dud alternator",
        "2029-01-26 ordered alternator",
    )
    assert Month(2029, 1) not in ledger.money
    part = ledger.parts["alternator"]
    assert (part.replaces, part.price, part.state) == (True, 0, PartState.ON_THE_WAY)
    assert part.deposit is not None
    assert (part.deposit.amount, part.deposit.send_by) == (8000, date(2027, 3, 18))
    assert ledger.dues == (
        due("alternator", DueKind.RETURN, APRIL, 900),
        due("alternator", DueKind.FITTING, Month(2029, 2), 2800),
    )
    assert flags(ledger) == []


def test_a_day_after_the_warranty_it_is_paid_again() -> None:
    ledger = folded(
        "2027-01-05 ordered alternator",
        "2027-01-25 arrived alternator",
        "2029-01-26 dud alternator",
        "2029-01-27 ordered alternator",
    )
    assert ledger.money[Month(2029, 1)] == MonthMoney(spent=32000)
    part = ledger.parts["alternator"]
    assert not part.replaces
    # what is still out of the first deposit is out with the second
    assert part.deposit is not None
    assert (part.deposit.amount, part.deposit.return_cost) == (16000, 1800)


@pytest.mark.parametrize("end", ["credited", "refused"])
def test_a_deposit_that_is_settled_is_not_out_with_the_next_one(end: str) -> None:
    ledger = folded(
        "2027-01-05 ordered alternator",
        "2027-01-25 arrived alternator",
        "2027-02-01 fitted alternator",
        "2027-02-02 sent-back alternator",
        f"2027-02-12 {end} alternator",
        "2027-03-01 ordered alternator",
        "2027-03-20 arrived alternator",
    )
    deposit = ledger.parts["alternator"].deposit
    assert deposit is not None
    assert (deposit.amount, deposit.out, deposit.send_by) == (8000, 8000, None)
    replaced = folded(
        "2027-01-05 ordered alternator",
        f"2027-02-12 {end} alternator",
        "2027-02-13 dud alternator",
        "2027-02-14 ordered alternator",
    )
    assert replaced.parts["alternator"].deposit is None


def test_the_first_last_day_holds_for_deposits_of_two_orders() -> None:
    ledger = folded(
        "2027-01-05 ordered alternator",
        "2027-01-25 arrived alternator",
        "2027-02-01 fitted alternator",
        "2027-03-01 ordered alternator",
    )
    deposit = ledger.parts["alternator"].deposit
    assert deposit is not None
    assert (deposit.out, deposit.send_by) == (16000, date(2027, 3, 18))


def test_a_new_order_of_a_fitted_part_begins_another_one() -> None:
    ledger = folded(
        "2027-01-05 ordered bulb",
        "2027-01-06 arrived bulb",
        "2027-01-06 fitted bulb",
        "2027-03-01 ordered bulb amount=1300",
    )
    assert ledger.money == {
        JANUARY: MonthMoney(spent=1200),
        MARCH: MonthMoney(spent=1300),
    }
    part = ledger.parts["bulb"]
    assert (part.state, part.ordered) == (PartState.ON_THE_WAY, date(2027, 3, 1))
    assert (part.arrived, part.fitted, part.price) == (None, None, 1300)
    assert flags(ledger) == []


def test_a_job_of_a_workshop_needs_no_arrival() -> None:
    ledger = folded("2027-01-05 ordered tracking", "2027-01-09 fitted tracking")
    assert flags(ledger) == []


# Taken although it does not fit.


def test_a_fitting_without_an_order_pays_the_fitting_only() -> None:
    ledger = folded("2027-01-05 fitted alternator")
    assert ledger.money == {JANUARY: MonthMoney(spent=2800, hours=Fraction(3))}
    part = ledger.parts["alternator"]
    assert (part.state, part.price, part.order_known) == (PartState.FITTED, 0, False)
    assert (part.deposit, ledger.dues) == (None, ())
    assert flags(ledger) == [(1, "alternator was not ordered; enter its order first")]


def test_a_late_entry_falls_on_its_day() -> None:
    ledger = folded(
        "2027-02-05 fitted radiator",
        "2027-01-15 arrived radiator",
        "2027-01-05 ordered radiator",
    )
    assert ledger == folded(
        "2027-01-05 ordered radiator",
        "2027-01-15 arrived radiator",
        "2027-02-05 fitted radiator",
    )


@pytest.mark.parametrize(
    "lines",
    [
        ["2027-01-05 arrived radiator", "2027-01-07 ordered radiator"],
        ["2027-01-05 arrived radiator", "2027-01-05 ordered radiator"],
    ],
)
def test_an_order_after_the_arrival_is_of_the_part_in_hand(lines: list[str]) -> None:
    ledger = folded(*lines)
    part = ledger.parts["radiator"]
    assert (part.state, part.price) == (PartState.IN_HAND, 10001)
    assert part.order_known
    assert [number for number, _ in flags(ledger)][:1] == [1]


def test_an_order_written_last_on_the_day_of_the_fitting_is_of_that_part() -> None:
    ledger = folded(
        "2027-01-05 arrived alternator",
        "2027-01-05 fitted alternator",
        "2027-01-05 ordered alternator",
    )
    part = ledger.parts["alternator"]
    assert (part.state, part.order_known) == (PartState.FITTED, True)
    assert part.deposit is not None
    assert part.deposit.send_by == date(2027, 2, 19)
    assert ledger.dues == (due("alternator", DueKind.RETURN, MARCH, 900),)
    assert ledger.money[JANUARY].spent == 24000 + 8000 + 2800


def test_a_second_arrival_pays_but_keeps_the_first_day() -> None:
    ledger = folded(
        "2027-01-05 ordered radiator",
        "2027-01-10 arrived radiator amount=100",
        "2027-01-20 arrived radiator amount=200",
    )
    assert ledger.parts["radiator"].arrived == date(2027, 1, 10)
    assert ledger.money[JANUARY].spent == 2800
    message = "radiator arrived on 2027-01-10 already; enter a new order first"
    assert flags(ledger) == [(3, message)]


def test_what_arrives_after_a_dud_is_another_part() -> None:
    ledger = folded(
        "2027-01-05 ordered alternator",
        "2027-01-25 arrived alternator",
        "2027-01-26 dud alternator",
        "2027-02-08 arrived alternator",
    )
    part = ledger.parts["alternator"]
    assert (part.state, part.failed) == (PartState.IN_HAND, None)
    assert part.arrived == date(2027, 2, 8)
    assert part.deposit is not None
    message = (
        "alternator was found to be a dud on 2027-01-26; "
        "enter the order of another one first"
    )
    assert flags(ledger) == [(4, message)]


def test_a_dud_of_a_part_never_had_is_a_dud() -> None:
    ledger = folded("2027-01-05 dud bulb")
    assert ledger.parts["bulb"].state is PartState.DUD
    assert ledger.money == {}
    message = "bulb has neither arrived nor is it fitted; enter its arrival first"
    assert flags(ledger) == [(1, message)]


def test_a_dud_found_twice_failed_on_the_first_day() -> None:
    ledger = folded(
        "2027-01-05 ordered bulb",
        "2027-01-06 arrived bulb",
        "2027-01-07 dud bulb",
        "2027-01-08 dud bulb",
    )
    assert ledger.parts["bulb"].failed == date(2027, 1, 7)


def test_an_option_that_is_gone_counts_with_what_its_entries_say() -> None:
    ledger = folded("2027-01-05 ordered belt amount=900", "2027-01-06 fitted belt")
    assert ledger.money == {JANUARY: MonthMoney(spent=900)}
    assert ledger.parts["belt"].state is PartState.FITTED
    assert flags(ledger) == [
        (1, 'there is no option "belt"'),
        (2, 'there is no option "belt"'),
    ]
