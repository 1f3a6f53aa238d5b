"""What is wrong with a new entry, in words, and whether it can be entered anyway."""

from datetime import date

import pytest

from partsplan.domain import EntryKind, Happening
from partsplan.ledger import contradictions, form_objections
from tests.support.small_logbook import GARAGE, folded, happening, log

TODAY = date(2027, 6, 1)
ORDERED = ["2027-01-05 ordered alternator"]
ARRIVED = [*ORDERED, "2027-01-25 arrived alternator"]
FITTED = [*ARRIVED, "2027-02-01 fitted alternator"]
SENT = [*FITTED, "2027-02-10 sent-back alternator"]
DUD = [*ARRIVED, "2027-01-26 dud alternator"]


def objections(before: list[str], line: str) -> list[tuple[str, bool]]:
    ledger = folded(*before)
    found = contradictions(GARAGE, ledger, happening(line), TODAY, log(*before))
    return [(one.message, one.liftable) for one in found]


@pytest.mark.parametrize(
    ("before", "line"),
    [
        ([], "2027-06-01 ordered alternator amount=0 deposit=0"),
        (ORDERED, "2027-01-05 arrived alternator amount=10"),
        (ARRIVED, "2027-01-25 fitted alternator amount=10 hours=1.5"),
        (ARRIVED, "2027-01-25 dud alternator"),
        (FITTED, "2027-02-01 dud alternator"),
        (FITTED, "2027-02-01 sent-back alternator amount=0"),
        (FITTED, "2027-02-01 refused alternator"),
        (FITTED, "2027-02-01 ordered alternator"),
        (SENT, "2027-02-10 credited alternator amount=8000"),
        (SENT, "2027-02-10 refused alternator amount=1"),
        (DUD, "2027-01-26 ordered alternator"),
        ([], "2027-01-05 ordered tracking"),
        (["2027-01-05 ordered tracking"], "2027-01-05 fitted tracking"),
        ([], "2027-01-05 checked charging cause=worn_brushes found=no hours=0"),
        ([], "2027-01-05 paid - amount=5"),
        ([], "2027-01-05 paid puller amount=5"),
        ([], "2027-01-05 money-in counter amount=5"),
        ([], "2027-01-05 odometer van reading=0"),
        ([], "2027-01-05 note - text=x"),
        (ORDERED, "2027-01-05 undone 1"),
        ([*ARRIVED, "2027-01-26 undone 2"], "2027-01-27 undone 3"),
        (["2027-01-05 ordered bulb batch=spring"], "2027-01-06 undone spring"),
    ],
)
def test_what_fits_meets_no_objection(before: list[str], line: str) -> None:
    assert objections(before, line) == []


@pytest.mark.parametrize(
    ("before", "line", "message"),
    [
        (
            ORDERED,
            "2027-01-06 ordered alternator",
            "alternator is on the way since 2027-01-05; enter its arrival first",
        ),
        (
            ARRIVED,
            "2027-01-26 ordered alternator",
            "alternator is in hand since 2027-01-25; enter its fitting first",
        ),
        (
            FITTED,
            "2027-01-31 ordered alternator",
            "alternator was ordered on 2027-01-05 and under way until 2027-02-01; "
            "expected a day from then on",
        ),
        (
            ["2027-01-05 arrived bulb"],
            "2027-01-06 ordered bulb",
            "bulb arrived on 2027-01-05, before this order",
        ),
        (
            [],
            "2027-01-06 arrived alternator",
            "alternator was not ordered; enter its order first",
        ),
        (
            ["2027-01-05 fitted bulb"],
            "2027-01-06 arrived bulb",
            "bulb was not ordered; enter its order first",
        ),
        (
            ARRIVED,
            "2027-01-26 arrived alternator",
            "alternator arrived on 2027-01-25 already; enter a new order first",
        ),
        (
            ORDERED,
            "2027-01-04 arrived alternator",
            "alternator was ordered on 2027-01-05; expected a day from then on",
        ),
        (
            DUD,
            "2027-01-28 arrived alternator",
            "alternator was found to be a dud on 2027-01-26; "
            "enter the order of another one first",
        ),
        (
            ["2027-01-05 ordered tracking", "2027-01-09 fitted tracking"],
            "2027-01-10 arrived tracking",
            "tracking was fitted on 2027-01-09 already, so it had arrived",
        ),
        (
            [],
            "2027-01-06 fitted alternator",
            "alternator was not ordered; enter its order first",
        ),
        (
            ORDERED,
            "2027-01-06 fitted alternator",
            "alternator has not arrived; enter its arrival first",
        ),
        (
            ARRIVED,
            "2027-01-24 fitted alternator",
            "alternator arrived on 2027-01-25; expected a day from then on",
        ),
        (
            ["2027-01-05 ordered tracking"],
            "2027-01-04 fitted tracking",
            "tracking was ordered on 2027-01-05; expected a day from then on",
        ),
        (
            FITTED,
            "2027-02-02 fitted alternator",
            "alternator was fitted on 2027-02-01 already; enter a new order first",
        ),
        (
            DUD,
            "2027-01-28 fitted alternator",
            "alternator was found to be a dud on 2027-01-26; "
            "enter the order of another one first",
        ),
        (
            ORDERED,
            "2027-01-06 dud alternator",
            "alternator has neither arrived nor is it fitted; enter its arrival first",
        ),
        (
            DUD,
            "2027-01-27 dud alternator",
            "alternator was found to be a dud on 2027-01-26; "
            "enter the order of another one first",
        ),
        (
            ARRIVED,
            "2027-01-24 dud alternator",
            "alternator arrived on 2027-01-25; expected a day from then on",
        ),
        (
            FITTED,
            "2027-01-31 dud alternator",
            "alternator was fitted on 2027-02-01; expected a day from then on",
        ),
        (
            ["2027-01-05 ordered bulb"],
            "2027-01-06 sent-back bulb",
            "no deposit was paid for bulb; enter its order with a deposit first",
        ),
        (
            ARRIVED,
            "2027-01-26 sent-back alternator",
            "alternator is not fitted; enter its fitting first",
        ),
        (
            FITTED,
            "2027-01-31 sent-back alternator",
            "alternator was fitted on 2027-02-01; expected a day from then on",
        ),
        (
            SENT,
            "2027-02-11 sent-back alternator",
            "the old unit of alternator was sent back on 2027-02-10 already",
        ),
        (
            [*FITTED, "2027-02-09 refused alternator"],
            "2027-02-11 sent-back alternator",
            "the deposit of alternator was refused already",
        ),
        (
            [],
            "2027-02-11 credited alternator",
            "no deposit was paid for alternator; enter its order with a deposit first",
        ),
        (
            FITTED,
            "2027-02-11 credited alternator",
            "the old unit of alternator was not sent back; enter that first",
        ),
        (
            SENT,
            "2027-02-09 credited alternator",
            "the old unit of alternator was sent back on 2027-02-10; "
            "expected a day from then on",
        ),
        (
            [*SENT, "2027-02-20 credited alternator"],
            "2027-02-21 credited alternator amount=1",
            "the deposit of alternator was credited already",
        ),
        (
            [*SENT, "2027-02-20 credited alternator amount=7900"],
            "2027-02-21 credited alternator amount=101",
            "1.00 of the deposit of alternator is out; expected no more, got 1.01",
        ),
        (
            SENT,
            "2027-02-20 refused alternator amount=8001",
            "80.00 of the deposit of alternator is out; expected no more, got 80.01",
        ),
        (
            ["2027-01-05 odometer van reading=900"],
            "2027-01-06 odometer van reading=899",
            "expected a reading of van from 900 on, got 899",
        ),
        (
            [],
            "2027-06-02 money-in - amount=1",
            "2027-06-02 is still to come; expected a day up to 2027-06-01",
        ),
        (
            [],
            "2027-01-05 checked charging cause=worn_bushes found=no",
            '"worn bushes" is none of the causes suspected of charging; '
            'did you mean "worn brushes"?',
        ),
        (
            [*ORDERED, "2027-01-06 undone 1"],
            "2027-01-07 undone 1",
            "entry 1 is undone already",
        ),
        (
            ["2027-01-05 ordered bulb batch=spring", "2027-01-06 undone spring"],
            "2027-01-07 undone spring",
            'the batch "spring" is undone already',
        ),
    ],
)
def test_what_contradicts_can_be_entered_anyway(
    before: list[str], line: str, message: str
) -> None:
    assert objections(before, line) == [(message, True)]


@pytest.mark.parametrize(
    ("line", "message"),
    [
        (
            "2027-01-05 ordered alternater",
            'there is no option "alternater"; did you mean "alternator"?',
        ),
        ("2027-01-05 ordered xyz", 'there is no option "xyz"'),
        ("2027-01-05 dud " + "x" * 99, f'there is no option "{"x" * 99}"'),
        ("2027-01-05 ordered van", 'expected an option, got the vehicle "van"'),
        (
            "2027-01-05 checked alternator cause=rust found=no",
            'expected a fault, got the option "alternator"',
        ),
        (
            "2027-01-05 odometer copue reading=1",
            'there is no vehicle "copue"; did you mean "coupe"?',
        ),
        (
            "2027-01-05 paid pullar amount=1",
            'there is no option, tool, vehicle, fault or supplier "pullar"; '
            'did you mean "puller"?',
        ),
        ("2027-01-05 ordered -", '"ordered" needs what it is about'),
        ("2027-01-05 undone -", '"undone" needs what it is about'),
        ("2027-01-05 undone 4", "there is no entry 4 before it"),
        ("2027-01-05 undone may", 'there is no entry of a batch "may" before it'),
        ("2027-01-05 paid van", '"paid" needs an amount'),
        ("2027-01-05 money-in -", '"money-in" needs an amount'),
        ("2027-01-05 odometer van", '"odometer" needs a reading'),
        (
            "2027-01-05 checked charging found=no",
            '"checked" needs the cause that was checked',
        ),
        (
            "2027-01-05 checked charging cause=worn_brushes",
            '"checked" needs whether the cause was found',
        ),
        ("2027-01-05 note van", '"note" needs a text'),
        ("2027-01-05 ordered bulb hours=1", '"ordered" takes no hours'),
        ("2027-01-05 arrived bulb deposit=1", '"arrived" takes no deposit'),
        ("2027-01-05 dud bulb amount=1", '"dud" takes no amount'),
        ("2027-01-05 fitted bulb reading=1", '"fitted" takes no reading'),
        ("2027-01-05 fitted bulb found=no", '"fitted" takes no found'),
        ("2027-01-05 paid - amount=1 cause=x", '"paid" takes no cause'),
        ("2027-01-05 ordered bulb amount=-5", "amount: expected 0 or more, got -0.05"),
        (
            "2027-01-05 ordered bulb deposit=-5",
            "deposit: expected 0 or more, got -0.05",
        ),
        ("2027-01-05 fitted bulb hours=-1/2", "hours: expected 0 or more, got -1/2"),
        ("2027-01-05 odometer van reading=-1", "reading: expected 0 or more, got -1"),
        (
            "3000-01-01 money-in - amount=1",
            "expected a year from 1900 to 2999, got 3000-01-01",
        ),
    ],
)
def test_what_is_malformed_is_never_entered(line: str, message: str) -> None:
    assert objections([], line) == [(message, False)]


def test_all_that_is_malformed_is_told_and_nothing_guessed_from_it() -> None:
    line = "2027-07-05 fitted bulp amount=-1 reading=2"
    assert objections([], line) == [
        ('"fitted" takes no reading', False),
        ("amount: expected 0 or more, got -0.01", False),
        ('there is no option "bulp"; did you mean "bulb"?', False),
        ("2027-07-05 is still to come; expected a day up to 2027-06-01", True),
    ]


def test_two_contradictions_are_both_told() -> None:
    found = objections(ORDERED, "2027-01-04 fitted alternator")
    assert [liftable for _, liftable in found] == [True, True]


@pytest.mark.parametrize("kind", list(EntryKind))
def test_every_kind_has_a_form(kind: EntryKind) -> None:
    what = Happening(kind=kind, day=TODAY)
    found = form_objections(GARAGE, what, TODAY)
    assert found
    assert not any(one.liftable for one in found)
