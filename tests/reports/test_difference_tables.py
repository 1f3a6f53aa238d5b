"""Two plans side by side in words and JSON."""

import json
from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest

from partsplan.domain import (
    Change,
    ChangeBudget,
    ChangeHours,
    ChangeReserve,
    Found,
    Garage,
    Input,
    Inspection,
    Month,
    Needs,
    ParkVehicle,
    Plan,
    RefuseRoute,
    Route,
    TakeFault,
    TwoPlans,
    UseOption,
    Why,
)
from partsplan.explanation import changed, compare_plans, parkings, spared
from partsplan.planning import replan
from partsplan.reports import beside_json, beside_tables, whatif_json, whatif_tables
from tests.reports.made import GARAGE, PLAN
from tests.support.building import fault, garage, option, vehicle


def plans(made: Garage, *changes: Change, other: Garage | None = None) -> TwoPlans:
    """A garage as it is, and changed or another."""
    changed_garage, force = changed(other or made, changes)
    first, second = replan(made), replan(changed_garage, force=force)
    if not isinstance(first, Plan) or not isinstance(second, Plan):
        return TwoPlans(
            garage=made, plan=first, other_garage=changed_garage, other_plan=second
        )
    return TwoPlans(
        garage=made,
        plan=first,
        other_garage=changed_garage,
        other_plan=second,
        difference=compare_plans(made, first, changed_garage, second),
        parking=parkings(made, first),
        other_parking=parkings(changed_garage, second),
        spared=spared(made, changed_garage, second),
    )


def told(made: Garage, *changes: Change, width: int = 80) -> str:
    return whatif_tables(changes, plans(made, *changes), width=width)


def one_line(text: str) -> str:
    return " ".join(text.split())


MADE = garage(
    months=2,
    budget=(10000,),
    vehicles=(vehicle(), vehicle("v2", name="diesel van")),
    faults=(fault(points=60), fault("f2", vehicle="v2")),
    options=(option(), option("o2", "f2")),
)


def test_the_first_sentence_says_what_changes() -> None:
    text = told(
        MADE, ChangeBudget(amount=10000), ChangeBudget(amount=0, month=FEBRUARY)
    )
    assert "1 job leaves; " in text
    assert "less net worth." in text
    assert "Jobs that leave [EUR]" in text
    assert "Jobs that enter" not in text
    assert "o2 (new)" in text
    assert "diesel van, fault f2 (f2): " in text


FEBRUARY = Month(2027, 2)


def test_nothing_changes_is_said_and_nothing_else_shown() -> None:
    text = told(MADE, ChangeReserve(reserve=0))
    assert "Nothing changes: the same jobs" in text
    assert "Money by month" not in text
    assert "Cautions" not in text


def test_jobs_that_stay_while_counts_change() -> None:
    made = garage(
        faults=(fault(inspection=Inspection.DANGEROUS),),
        options=(option(lead_days=20),),
    )
    text = one_line(told(made, ParkVehicle(vehicle="v1", until=FEBRUARY)))
    assert "The jobs stay as they are; 1 fewer month with a vehicle that must" in text
    assert "small hatchback must not be driven in 2027-01 with these jobs" in text
    assert "costs no money" in text
    undriven = one_line(told(made, ChangeHours(hours=Fraction(7))))
    assert 'Parked until 2027-02 ("--park v1=2027-02")' in undriven
    safe = one_line(told(garage(), ParkVehicle(vehicle="v1")))
    assert "parking it makes nobody safer" in safe


def test_a_difference_within_the_gaps_is_never_told_as_a_fact() -> None:
    pair = plans(MADE, ChangeBudget(amount=9999))
    assert isinstance(pair.plan, Plan)
    assert isinstance(pair.other_plan, Plan)
    wide = replace(
        pair.plan,
        bound=10**6,
        stage_bounds=replace(pair.plan.stage_bounds, net_worth=10**6),
    )
    difference = compare_plans(MADE, wide, pair.other_garage, pair.other_plan)
    loose = replace(pair, plan=wide, difference=difference)
    text = one_line(beside_tables(loose, width=80))
    assert "cannot be told apart" in text
    assert "less net worth" not in text
    data = json.loads(beside_json(loose))["difference"]["stages"]
    assert data[-1]["difference"] is None


def test_net_worths_from_different_starts_are_not_subtracted() -> None:
    worse = replace(MADE, faults=(fault(points=70), fault("f2", vehicle="v2")))
    pair = plans(MADE, other=worse)
    text = one_line(beside_tables(pair, width=80))
    assert "see below" in text
    assert "neither a gain nor a loss" in text
    assert "more net worth" not in text


def reason(found: Found, *parts: Change | Input, among: int = 3) -> str:
    pair = plans(MADE, ChangeBudget(amount=20000))
    why = Why(found=found, parts=parts, among=among, tries=5)
    return one_line(beside_tables(replace(pair, why=why), width=80))


def test_what_it_is_due_to() -> None:
    budget = ChangeBudget(amount=20000)
    one = reason(Found.EXPLAINED, budget)
    assert "One change alone already leads to these jobs, of the 3 inputs" in one
    assert "- 200.00 EUR a month instead of 100.00." in one
    two = reason(Found.EXPLAINED, budget, ChangeReserve(reserve=0))
    assert "No single change explains it. These 2 together" in two
    assert "No single change explains it: each" in reason(Found.UNEXPLAINED)
    assert "Not all of the 3 inputs that differ" in reason(Found.CUT_SHORT)
    assert "would be as good for the first" in reason(Found.ALIKE)
    assert "There is one input that differs:" in reason(
        Found.EXPLAINED, budget, among=1
    )


def test_a_garage_without_a_plan_is_told_beside_one_that_has() -> None:
    debt = replace(MADE, opening_cash=-30000)
    pair = plans(debt, ChangeBudget(amount=50000))
    text = one_line(whatif_tables([ChangeBudget(amount=50000)], pair, width=80))
    assert "As it is: there is no plan. The least that would do: 200.00 EUR" in text
    assert "Then: there is a plan." in text
    assert isinstance(pair.plan, Needs)
    data = json.loads(whatif_json([], pair))
    assert data["before"]["needs"] == {"month": "2027-01", "money": 20000}
    assert data["difference"] is None


@pytest.mark.parametrize(
    ("made", "change", "words"),
    [
        (
            garage(options=(option(valid_until=Month(2026, 12)),)),
            UseOption(option="o1"),
            "2026-12",
        ),
        (garage(options=()), TakeFault(fault="f1"), "nobody has quoted for it"),
        (
            garage(budget=(0,)),
            TakeFault(fault="f1"),
            "money, own hours or links between jobs do not allow it",
        ),
    ],
)
def test_what_stands_in_the_way_of_what_is_forced(
    made: Garage, change: Change, words: str
) -> None:
    text = one_line(told(made, change))
    assert "Then: no plan does all that is asked." in text
    assert words in text


@pytest.mark.parametrize("width", [80, 120])
def test_no_line_is_too_long(width: int) -> None:
    changes = (RefuseRoute(route=Route.EXCHANGE), ChangeBudget(amount=90000))
    pair = plans(GARAGE, *changes)
    for text in (
        whatif_tables(changes, pair, width=width),
        beside_tables(pair, width=width),
    ):
        assert max(map(len, text.splitlines())) <= width


def test_json_holds_both_plans_and_their_difference() -> None:
    changes = (ChangeBudget(amount=20000), UseOption(option="o2"))
    data: dict[str, Any] = json.loads(whatif_json(changes, plans(MADE, *changes)))
    assert [one["change"] for one in data["changes"]] == ["budget", "use"]
    assert data["schema"] == 1
    difference = data["difference"]
    assert {one["option"] for one in data["after"]["jobs"]} == {"o1", "o2"}
    assert difference["sentence"].startswith("1 job moves; ")
    (shift,) = difference["shifts"]
    assert shift["facts"] == ["ordered", "fitted", "charge"]
    assert [one["month"] for one in difference["money"]] == ["2027-01", "2027-02"]
    assert difference["stages"][-1]["stage"] == "worth"
    assert difference["net_worths_comparable"]


def test_a_plan_beside_itself_is_told_in_one_sentence() -> None:
    pair = TwoPlans(
        garage=GARAGE,
        plan=PLAN,
        other_garage=GARAGE,
        other_plan=PLAN,
        difference=compare_plans(GARAGE, PLAN, GARAGE, PLAN),
    )
    assert "Nothing changes" in beside_tables(pair)
