import json
from dataclasses import replace
from fractions import Fraction
from typing import Any

from partsplan.domain import Month, Needs, OutsideWindow, RouteRule, Skip
from partsplan.domain.scales import Route, System
from partsplan.reports import needs_json, plan_json
from tests.reports.made import GARAGE, PLAN, SKIPS


def told() -> dict[str, Any]:
    found: dict[str, Any] = json.loads(plan_json(GARAGE, PLAN, SKIPS))
    return found


def test_keys_stand_in_their_order() -> None:
    assert list(told()) == [
        "schema",
        "garage",
        "currency",
        "start",
        "months",
        "status",
        "gap",
        "bound",
        "stages",
        "stage_bounds",
        "jobs",
        "tools",
        "orders",
        "ledger",
        "skipped",
        "assumed",
        "warnings",
    ]
    assert list(told()["jobs"][0]) == [
        "option",
        "faults",
        "route",
        "supplier",
        "ordered",
        "fitted",
        "landed",
        "deposit",
        "charge",
        "hours",
    ]
    assert list(told()["ledger"][0]) == [
        "month",
        "budget",
        "out",
        "in",
        "balance",
        "hours",
    ]


def test_money_is_whole_minor_units_and_months_are_written_out() -> None:
    found = told()
    assert found["status"] == "proven"
    assert found["stages"] == {
        "missed_deadlines": 2,
        "unsafe_vehicle_months": 0,
        "undrivable_vehicle_months": 2,
        "net_worth": 123450,
    }
    assert found["jobs"][1] == {
        "option": "ecu-exchange",
        "faults": ["ecu"],
        "route": "exchange",
        "supplier": "mill",
        "ordered": "2027-02",
        "fitted": "2027-03",
        "landed": 21000,
        "deposit": 8000,
        "charge": 8247,
        "hours": 1.0,
    }
    assert found["tools"] == [{"tool": "spanner", "month": "2027-01", "price": 1900}]
    assert found["orders"][1] == {
        "supplier": "mill",
        "month": "2027-02",
        "goods": 21000,
        "shipping": 690,
    }
    assert found["ledger"][1] == {
        "month": "2027-02",
        "budget": 30000,
        "out": 29690,
        "in": 0,
        "balance": 19920,
        "hours": 0.0,
    }


def test_a_reason_carries_its_code_and_its_fields() -> None:
    assert told()["skipped"] == [
        {
            "fault": "paint",
            "reason": {
                "code": "crowded_out",
                "option": "roof-film",
                "worth": 12000,
                "cost": 9000,
            },
        },
        {"fault": "hum", "reason": {"code": "no_option"}},
    ]


def test_words_and_months_within_a_reason_are_text() -> None:
    skips = (
        Skip(
            fault="paint",
            reason=RouteRule(option="o", route=Route.USED, system=System.BRAKES),
        ),
        Skip(
            fault="hum",
            reason=OutsideWindow(
                option="o", earliest=Month(2027, 4), not_before=None, not_after=None
            ),
        ),
    )
    found = json.loads(plan_json(GARAGE, PLAN, skips))["skipped"]
    assert found[0]["reason"]["system"] == "brakes"
    assert found[1]["reason"]["earliest"] == "2027-04"
    assert found[1]["reason"]["not_before"] is None


def test_assumed_and_warnings_are_lines() -> None:
    found = told()
    assert found["assumed"] == [
        "options, roof-film: life_months = 24 (route norm, refinish x body)"
    ]
    assert found["warnings"] == ["faults.csv:6: seep: watched only"]


def test_a_job_without_supplier_has_null_for_it() -> None:
    plan = replace(
        PLAN, jobs=(replace(PLAN.jobs[0], supplier=None, hours=Fraction(1, 3)),)
    )
    job = json.loads(plan_json(GARAGE, plan, ()))["jobs"][0]
    assert job["supplier"] is None
    assert abs(job["hours"] - 1 / 3) < 1e-12


def test_an_impossible_plan_tells_what_it_needs() -> None:
    needs = Needs(month=Month(2027, 2), money=12300)
    assert json.loads(needs_json(GARAGE, needs)) == {
        "schema": 1,
        "garage": "two old cars",
        "currency": "EUR",
        "start": "2027-01",
        "status": "infeasible",
        "needs": {"month": "2027-02", "money": 12300},
    }
