"""What was undone says nothing any more."""

import pytest

from partsplan.domain import Month, MonthMoney
from partsplan.ledger import holding
from tests.support.small_logbook import flags, folded, log, without_flags

PAID = ("2027-01-05 paid van amount=1", "2027-01-05 paid van amount=20")


@pytest.mark.parametrize(
    ("undoing", "spent"),
    [
        ([], 21),
        (["1"], 20),
        (["1", "2"], 0),
        (["1", "3"], 21),
        (["1", "3", "4"], 20),
        (["1", "3", "1"], 20),
    ],
)
def test_an_undone_can_be_undone(undoing: list[str], spent: int) -> None:
    ledger = folded(*PAID, *(f"2027-02-01 undone {name}" for name in undoing))
    expected = {Month(2027, 1): MonthMoney(spent=spent)} if spent else {}
    assert ledger.money == expected
    assert ledger.flags == ()


def test_a_batch_is_undone_whole_and_may_come_again() -> None:
    lines = [f"{line} batch=spring" for line in PAID]
    undone = folded(*PAID, *lines, "2027-02-01 undone spring")
    assert without_flags(undone) == folded(*PAID)
    again = folded(*lines, "2027-02-01 undone spring", *lines[1:])
    assert again.money == {Month(2027, 1): MonthMoney(spent=20)}
    assert again.flags == ()


def test_what_is_left_holds_by_number() -> None:
    entries = log(*PAID, "2027-01-02 undone 1", "2027-01-01 note - text=x")
    kept, _ = holding(reversed(entries))
    assert [entry.number for entry in kept] == [2, 3, 4]


@pytest.mark.parametrize(
    ("subject", "message"),
    [
        ("9", "there is no entry 9 before it"),
        ("3", "there is no entry 3 before it"),
        ("autumn", 'there is no entry of a batch "autumn" before it'),
        ("-", 'there is no entry of a batch "" before it'),
        ("9" * 30, f'there is no entry of a batch "{"9" * 30}" before it'),
    ],
)
def test_undoing_what_is_not_there_is_flagged(subject: str, message: str) -> None:
    ledger = folded(*PAID, f"2027-02-01 undone {subject}")
    assert flags(ledger) == [(3, message)]
    assert without_flags(ledger) == folded(*PAID)


def test_undoing_twice_is_flagged() -> None:
    ledger = folded(*PAID, "2027-02-01 undone 1", "2027-02-02 undone 1")
    assert flags(ledger) == [(4, "entry 1 is undone already")]


def test_a_corrected_order_falls_where_the_wrong_one_was() -> None:
    ledger = folded(
        "2027-01-05 ordered alternator amount=2400",
        "2027-01-25 arrived alternator",
        "2027-02-01 fitted alternator",
        "2027-02-02 undone 1",
        "2027-01-05 ordered alternator amount=24000",
    )
    assert ledger == folded(
        "2027-01-05 ordered alternator amount=24000",
        "2027-01-25 arrived alternator",
        "2027-02-01 fitted alternator",
    )
