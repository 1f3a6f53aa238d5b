"""How a plan against life is told."""

import json
from datetime import date
from fractions import Fraction

import pytest

from partsplan.domain import Garage, PlanAgainst, PlanOnPaper
from partsplan.errors import NoKeptPlan
from partsplan.intake import read_kept_plan
from partsplan.ledger import against, fold
from partsplan.reports import against_json, against_tables, plan_json
from tests.reports.made import GARAGE, PLAN, SHORTFALLS, SKIPS
from tests.support.small_logbook import log

TEXT = plan_json(GARAGE, PLAN, SKIPS, SHORTFALLS)
KEPT = date(2027, 1, 2)
LINES = (
    "2027-01-04 ordered hose-new amount=7150",
    "2027-02-06 fitted hose-new amount=900 hours=2.5",
    "2027-01-09 ordered roof-film amount=9000",
)


def paper(text: str = TEXT) -> PlanOnPaper:
    return read_kept_plan(text, number=3, kept=KEPT, currency="EUR")


def held(*lines: str, today: date = date(2027, 2, 20)) -> PlanAgainst:
    return against(GARAGE, fold(GARAGE, {}, log(*lines)), paper(), today)


def told(found: PlanAgainst, garage: Garage = GARAGE, width: int = 80) -> str:
    return against_tables(garage, found, width=width)


def cells(text: str, first: str) -> list[list[str]]:
    """Rows of tables that begin so."""
    return [line.split() for line in text.splitlines() if line.startswith(first)]


def test_a_kept_plan_is_read_as_it_was_written() -> None:
    found = paper()
    assert (found.number, found.kept) == (3, KEPT)
    assert (found.start, found.end) == (GARAGE.start, GARAGE.start.plus(2))
    hose, ecu = found.jobs
    assert (hose.option, hose.faults, hose.landed) == ("hose-new", ("hose",), 6900)
    assert hose.hours == Fraction(3, 2)
    assert (ecu.ordered, ecu.fitted) == (GARAGE.month(1), GARAGE.month(2))
    assert (ecu.deposit, found.months[1].out) == (8000, 29690)


@pytest.mark.parametrize(
    ("old", "new", "what"),
    [
        ('"schema": 1', '"schema": 2', "schema"),
        ('"currency": "EUR"', '"currency": "USD"', "expected EUR, got USD"),
        ('"landed": 6900', '"landed": "6900"', "jobs.0.landed"),
        ('"ordered": "2027-01"', '"ordered": "2027"', 'got "2027"'),
        ('"ledger"', '"diary"', "ledger"),
        ("{", "", "JSON"),
    ],
)
def test_a_text_that_is_no_plan_is_refused(old: str, new: str, what: str) -> None:
    assert old in TEXT
    with pytest.raises(NoKeptPlan, match="kept plan 3 cannot be read") as error:
        paper(TEXT.replace(old, new, 1))
    assert what in str(error.value)


def test_a_plan_that_was_impossible_is_refused() -> None:
    with pytest.raises(NoKeptPlan, match="jobs: Field required"):
        paper('{"schema": 1, "currency": "EUR", "status": "infeasible"}')


def test_thirds_of_hours_are_found_again() -> None:
    text = TEXT.replace('"hours": 1.5', f'"hours": {1 / 3}')
    assert paper(text).jobs[0].hours == Fraction(1, 3)


def test_jobs_are_told_with_their_differences() -> None:
    text = told(held(*LINES))
    when, price, hours = cells(text, "hose-new")
    assert when == [
        "hose-new",
        "2027-01",
        "2027-01",
        "2027-01",
        "2027-02",
        "1",
        "fitted",
    ]
    assert price == ["hose-new", "69.00", "71.50", "2.50"]
    assert hours == ["hose-new", "1.5", "2.5", "1"]
    assert cells(text, "roof-film") == [
        ["roof-film", "2027-01", "90.00", "on", "the", "way"]
    ]
    assert cells(text, "So far") == [
        ["So", "far", "400.80", "170.50", "-230.30", "0.00", "0.00", "1.5", "2.5"]
    ]
    joined = " ".join(text.split())
    assert (
        "2 jobs planned: 1 done, 0 under way, 1 not begun, 1 late. Begun without being "
        "planned: 1. Up to 2027-02 400.80 EUR were to be spent and 170.50 EUR were: "
        "230.30 less. Own hours: 1.5 planned, 2.5 spent."
    ) in joined


def test_months_to_come_are_left_blank() -> None:
    text = told(held(today=date(2026, 12, 30)))
    assert cells(text, "2027-01") == [["2027-01", "103.90", "0.00", "1.5"]]
    assert "The plan begins in 2027-01." in text
    assert "So far" not in text


def test_what_was_done_instead_is_told() -> None:
    line = "2027-01-09 ordered ecu-new amount=60000"
    assert "- ecu-exchange: ecu-new instead, which was not planned." in told(held(line))


def test_a_part_ordered_twice_is_told() -> None:
    twice = ("2027-01-05 ordered hose-new", "2027-01-06 fitted hose-new")
    again = (*twice, "2027-01-07 dud hose-new", "2027-01-07 ordered hose-new")
    assert "ordered 2 times" not in told(held(*twice))
    assert "- hose-new was ordered 2 times." in told(held(*again))


@pytest.mark.parametrize("width", [80, 100])
def test_no_line_is_too_long(width: int) -> None:
    lines = told(held(*LINES), width=width).splitlines()
    assert max(map(len, lines)) <= width


def test_json_has_every_figure() -> None:
    found = json.loads(against_json(GARAGE, held(*LINES)))
    assert (found["schema"], found["plan"], found["kept"]) == (1, 3, "2027-01-02")
    hose, ecu = found["jobs"]
    assert (hose["more_money"], hose["more_hours"], hose["late_months"]) == (250, 1, 1)
    assert hose["planned"]["ordered"] == "2027-01"
    assert hose["done"]["fitted"] == "2027-02-06"
    assert (ecu["done"], ecu["more_money"]) == (None, None)
    assert [one["option"] for one in found["not_planned"]] == ["roof-film"]
    assert [one["begun"] for one in found["months"]] == [True, True, False]
    assert found["so_far"] == {
        "planned_out": 40080,
        "spent": 17050,
        "planned_hours": 1.5,
        "hours": 2.5,
    }
