"""How lessons are told."""

import json
from dataclasses import replace
from datetime import date

import pytest

from partsplan.domain import Garage
from partsplan.ledger import fold, lessons
from partsplan.reports import lesson_json, lesson_tables
from tests.support.small_logbook import GARAGE, QUOTES, log

SOLD = replace(
    GARAGE,
    options=tuple(replace(one, supplier="counter") for one in GARAGE.options),
)
TODAY = date(2027, 6, 30)
LATE = [
    line
    for month in (1, 2, 3)
    for line in (
        f"2027-0{month}-01 ordered bulb amount=1320",
        f"2027-0{month}-10 arrived bulb",
        f"2027-0{month}-11 fitted bulb",
    )
]


def told(*lines: str, garage: Garage = SOLD, width: int = 80) -> str:
    ledger = fold(garage, QUOTES, log(*lines))
    found = lessons(garage, QUOTES, ledger, TODAY)
    return lesson_tables(garage, found, width=width)


def joined(*lines: str) -> str:
    return " ".join(told(*lines).split())


def test_nothing_to_learn_from_is_told() -> None:
    assert "No part was ordered yet" in told()


def test_norms_are_offered_with_their_cases() -> None:
    text = joined(*LATE)
    assert (
        "- the counter (counter): arrives 9 days later than it says, 3 cases. Consider "
        "lead_days 9."
    ) in text
    assert (
        "- new: bills 10 % more than it quotes, 3 cases. Consider price x 1.1." in text
    )
    assert "Nothing was changed" in text
    assert "Nothing is offered from fewer" not in text


def test_few_cases_are_named_and_offer_nothing() -> None:
    text = joined(*LATE[:6])
    assert "Nothing that happened speaks against the quotes." in text
    assert "so nothing for counter and new." in text


def test_lead_times_that_differ_are_days_to_add() -> None:
    lines = [line.replace("bulb", "radiator") for line in LATE[:3]]
    assert "Consider 7 more lead_days." in joined(*LATE[3:], *lines)


def test_a_row_has_every_figure() -> None:
    late = "2027-06-01 ordered radiator amount=10001"
    rows = [line.split() for line in told(*LATE, late, width=120).splitlines()]
    (row,) = [row for row in rows if row[:1] == ["counter"]]
    assert row == [
        *("counter", "4", "1", "9", "9", "0", "of", "3", "0", "to", "47", "%"),
        *("x", "1.07"),
    ]


@pytest.mark.parametrize("width", [80, 100])
def test_no_line_is_too_long(width: int) -> None:
    assert max(map(len, told(*LATE, width=width).splitlines())) <= width


def test_json_has_the_same_figures() -> None:
    ledger = fold(SOLD, QUOTES, log(*LATE))
    found = json.loads(lesson_json(SOLD, lessons(SOLD, QUOTES, ledger, TODAY)))
    assert (found["schema"], found["fewest_cases"]) == (1, 3)
    counter, new = found["lessons"]
    assert (counter["grouping"], new["grouping"]) == ("supplier", "route")
    assert counter["delays"] == {
        "cases": 3,
        "mean": 9.0,
        "worst": 9,
        "said": 0.0,
        "same": True,
    }
    assert found["norms"][0]["column"] == "lead_days"
    assert found["norms"][0]["cases"] == 3
