import json
from dataclasses import replace
from functools import cache
from typing import Any

import pytest

from partsplan.domain import ONE, Garage, Plan, Risk, RiskSettings
from partsplan.reports import risk_json, risk_tables
from partsplan.reports.risk_tables import chance
from partsplan.simulation import simulate
from tests.reports.made import GARAGE, PLAN, STOPPED

SETTINGS = RiskSettings(futures=1000, seed=2)


@cache
def risk(**changes: Any) -> Risk:
    return simulate(GARAGE, PLAN, replace(SETTINGS, **changes))


def told(found: Risk, garage: Garage = GARAGE, plan: Plan = PLAN) -> str:
    """The text on one line."""
    return " ".join(risk_tables(garage, plan, found, width=80).split())


def test_the_answer_comes_first_in_plain_words() -> None:
    found = replace(risk(), solvent=0.834, in_hours=0.999, extra_reserve=4500)
    text = told(found)
    assert text.startswith("Risk of the plan for two old cars, 2027-01 to 2027-03")
    assert (
        "Carried out in 1,000 futures (seed 2). The chance that no month ends below "
        "zero is 83 %, that own hours suffice >99 %. With 45.00 EUR more put aside by "
        "2027-01, 90 % of the futures never go below zero."
    ) in text


def test_a_reserve_has_a_chance_of_its_own() -> None:
    garage = replace(GARAGE, reserve=5000)
    text = told(replace(risk(), holds=0.42, solvent=1.0), garage)
    assert "every month ends with the reserve of 50.00 EUR or more is 42 %" in text
    assert "none ends below zero 100 %" in text
    assert "Reserve: chance that it holds." in text
    assert "Reserve" not in told(risk())


def test_no_more_is_asked_for_where_it_is_enough() -> None:
    text = told(replace(risk(), extra_reserve=0))
    assert "At least 90 % of the futures never go below zero, with no more" in text


def test_money_that_does_not_move_on_is_put_aside_each_month() -> None:
    garage = replace(GARAGE, carry_over=False)
    assert "more put aside in every month" in told(
        replace(risk(), extra_reserve=1), garage
    )


@pytest.mark.parametrize(
    ("share", "shown"),
    [
        (0.0, "0 %"),
        (0.0001, "<1 %"),
        (0.01, "1 %"),
        (0.505, "50 %"),
        (0.99, "99 %"),
        (0.9999, ">99 %"),
        (1.0, "100 %"),
    ],
)
def test_only_what_never_failed_is_certain(share: float, shown: str) -> None:
    assert chance(share) == shown


def test_what_carries_the_risk_says_since_when() -> None:
    text = told(risk())
    assert "old unit refused 10 %, 80.00 at stake" not in text  # past the horizon
    longer = replace(GARAGE, months=4)
    line = replace(PLAN.ledger[-1], month=3, out=1200, back=8000, balance=82720)
    plan = replace(PLAN, ledger=(*PLAN.ledger, line))
    found = simulate(longer, plan, SETTINGS)
    assert found.shares[0].subject == "ecu-exchange"
    text = told(found, longer, plan)
    assert "bad part 5 %, no warranty and old unit refused 10 %, 80.00 at" in text


def test_a_foreign_price_range_names_its_currency() -> None:
    hose = replace(GARAGE.option["hose-new"], price_low=3000, currency="USD")
    garage = replace(GARAGE, options=(hose, *GARAGE.options[1:]), rates={"USD": ONE})
    text = told(simulate(garage, PLAN, SETTINGS), garage)
    assert "price 30.00 to 34.50 USD" in text
    assert "Prices: between the lowest and highest seen" in text


def test_a_range_of_one_price_is_none() -> None:
    hose = replace(GARAGE.option["hose-new"], price_high=3450)
    garage = replace(GARAGE, options=(hose, *GARAGE.options[1:]))
    text = told(simulate(garage, PLAN, SETTINGS), garage)
    assert "Prices:" not in text
    assert "price 34.50" not in text


def test_without_spread_nothing_carries_risk() -> None:
    certain = replace(GARAGE, options=GARAGE.options[:1])
    plan = replace(PLAN, jobs=PLAN.jobs[:1], orders=PLAN.orders[:1])
    found = simulate(certain, plan, replace(SETTINGS, late_chance=0.0))
    text = told(found, certain, plan)
    assert "Nothing: the money is the same in every future." in text
    assert "Late parts" not in text
    assert "Bad parts" not in text
    assert "Old units" not in text


def test_promises_name_what_is_not_even_planned() -> None:
    text = told(risk())
    assert "Deadline: Engine control unit drops out (ecu) 2027-01 0 %, not planned" in (
        text
    )
    assert "Milestone: Coast trip" in text
    assert "Not driven until cured: Front brake hose bulges" in text


def test_a_cure_that_may_fail_asks_for_care() -> None:
    careful = "Until a cure is fitted and checked the vehicle is not driven"
    assert careful not in told(risk())
    cures = tuple(replace(one, chance=0.9) for one in risk().promises)
    assert careful in told(replace(risk(), promises=cures))


def test_new_faults_are_told_or_told_to_be_left_out() -> None:
    assert "New faults: none (--new-faults)" in told(risk())
    text = risk_tables(GARAGE, PLAN, risk(new_faults=0.1), width=160)
    assert "New faults: 0.1 a driven month" in text
    assert "New faults, small hatchback" in text
    assert "10 % a driven month" in text


def test_an_unproven_plan_says_so() -> None:
    assert "Not proven" in told(risk(), plan=STOPPED)


@pytest.mark.parametrize("width", [72, 80, 120])
def test_lines_fit(width: int) -> None:
    text = risk_tables(GARAGE, PLAN, risk(new_faults=0.1), width=width)
    assert max(map(len, text.splitlines())) <= width


def test_json_has_every_chance_and_sum() -> None:
    found = json.loads(risk_json(GARAGE, PLAN, risk()))
    assert list(found)[:4] == ["schema", "garage", "currency", "start"]
    assert found["settings"] == {
        "futures": 1000,
        "seed": 2,
        "late_chance": 0.05,
        "new_faults": 0.0,
    }
    assert [one["month"] for one in found["months"]] == [
        "2027-01",
        "2027-02",
        "2027-03",
    ]
    assert [one["planned"] for one in found["months"]] == [19610, 19920, 45920]
    assert found["quantiles"] == [0.05, 0.25, 0.5, 0.75, 0.95]
    assert all(len(one["quantiles"]) == 5 for one in found["months"])
    assert found["promises"][0] == {
        "promise": "deadline",
        "subject": "ecu",
        "month": "2027-01",
        "planned": False,
        "chance": 0.0,
    }
    assert {one["source"] for one in found["shares"]} == {"option", "shipping"}
