"""Old units and what comes back for them."""

from datetime import date

import pytest

from partsplan.domain import DepositState, Month, MonthMoney, PartDeposit
from tests.support.small_logbook import flags, folded

FITTED = (
    "2027-01-05 ordered alternator",
    "2027-01-25 arrived alternator",
    "2027-02-01 fitted alternator amount=0 hours=0",
)
MARCH = Month(2027, 3)


def deposit_after(*lines: str) -> PartDeposit:
    deposit = folded(*FITTED, *lines).parts["alternator"].deposit
    assert deposit is not None
    return deposit


def test_sending_back_pays_the_freight() -> None:
    ledger = folded(*FITTED, "2027-03-02 sent-back alternator")
    assert ledger.money[MARCH] == MonthMoney(spent=900)
    assert (ledger.dues, flags(ledger)) == ((), [])
    assert ledger.parts["alternator"].deposit == PartDeposit(
        amount=8000,
        state=DepositState.SENT_BACK,
        send_by=date(2027, 3, 18),
        return_cost=0,
        sent=date(2027, 3, 2),
    )


@pytest.mark.parametrize(
    ("lines", "state", "credited", "received"),
    [
        (["credited alternator"], DepositState.CREDITED, 8000, 8000),
        (["credited alternator amount=5000"], DepositState.SENT_BACK, 5000, 5000),
        (
            ["credited alternator amount=5000", "credited alternator"],
            DepositState.CREDITED,
            8000,
            8000,
        ),
        (["refused alternator"], DepositState.REFUSED, 0, 0),
        (["refused alternator amount=2000"], DepositState.REFUSED, 2000, 2000),
    ],
)
def test_deposits_come_back_whole_in_part_or_not_at_all(
    lines: list[str], state: DepositState, credited: int, received: int
) -> None:
    sent = "2027-03-02 sent-back alternator amount=0"
    ledger = folded(*FITTED, sent, *(f"2027-03-20 {line}" for line in lines))
    deposit = ledger.parts["alternator"].deposit
    assert deposit is not None
    assert (deposit.state, deposit.credited) == (state, credited)
    assert sum(one.received for one in ledger.money.values()) == received
    assert flags(ledger) == []


def test_a_supplier_may_relent() -> None:
    lines = (
        "2027-03-02 refused alternator amount=3000",
        "2027-03-03 credited alternator",
    )
    ledger = folded(*FITTED, *lines)
    assert ledger.money[MARCH] == MonthMoney(received=8000)
    assert deposit_after(*lines).state is DepositState.CREDITED
    assert flags(ledger) == [(5, "the deposit of alternator was refused already")]


def test_after_a_credit_in_whole_no_freight_is_owed() -> None:
    ledger = folded(*FITTED, "2027-02-02 credited alternator")
    assert (
        ledger.dues,
        deposit_after("2027-02-02 credited alternator").return_cost,
    ) == (
        (),
        0,
    )


def test_after_a_credit_in_part_the_freight_is_still_owed() -> None:
    ledger = folded(*FITTED, "2027-02-02 credited alternator amount=7999")
    assert [due.amount for due in ledger.dues] == [900]


def test_an_old_unit_sent_back_twice_went_on_the_first_day() -> None:
    lines = [f"2027-03-0{day} sent-back alternator" for day in (2, 3)]
    assert deposit_after(*lines).sent == date(2027, 3, 2)
    assert folded(*FITTED, *lines).money[MARCH] == MonthMoney(spent=1800)


def test_more_than_the_deposit_is_money_nevertheless() -> None:
    ledger = folded(
        *FITTED,
        "2027-03-02 sent-back alternator",
        "2027-03-20 credited alternator amount=8100",
    )
    assert ledger.money[MARCH].received == 8100
    assert flags(ledger) == [
        (
            5,
            "80.00 of the deposit of alternator is out; expected no more, got 81.00",
        )
    ]


def test_a_credit_without_a_deposit_is_money_if_it_names_a_sum() -> None:
    ledger = folded(
        "2027-03-01 credited bulb", "2027-03-02 credited alternator amount=500"
    )
    assert ledger.money == {MARCH: MonthMoney(received=500)}
    assert ledger.parts == {}
    assert [number for number, _ in flags(ledger)] == [1, 2]


def test_sent_back_before_it_was_fitted_is_sent_back() -> None:
    ledger = folded(
        "2027-01-05 ordered alternator",
        "2027-01-25 sent-back alternator",
        "2027-01-26 arrived alternator",
        "2027-02-01 fitted alternator",
    )
    deposit = ledger.parts["alternator"].deposit
    assert deposit is not None
    assert (deposit.state, deposit.sent) == (DepositState.SENT_BACK, date(2027, 1, 25))
    assert ledger.dues == ()
    assert flags(ledger) == [(2, "alternator is not fitted; enter its fitting first")]


def test_the_old_unit_of_a_replaced_dud_may_be_sent_back() -> None:
    ledger = folded(
        *FITTED,
        "2027-02-05 dud alternator",
        "2027-02-06 ordered alternator",
        "2027-02-07 sent-back alternator",
        "2027-02-20 credited alternator",
    )
    assert flags(ledger) == []
    assert ledger.money[Month(2027, 2)] == MonthMoney(spent=900, received=8000)
