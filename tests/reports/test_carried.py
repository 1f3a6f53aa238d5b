"""Plans that carry something from before, in words and tables."""

import json
from dataclasses import replace
from fractions import Fraction

import pytest

from partsplan.domain import Cause, Fitted, Flow, Garage, Needs, Plan
from partsplan.explanation import skips
from partsplan.planning import plan
from partsplan.reports import fault_tables, faults_json
from partsplan.reports.buying import buying, payments
from partsplan.reports.by_vehicle import PROMISED, TOTAL, outlays
from partsplan.reports.names import relieved_now
from partsplan.reports.page import Page
from partsplan.reports.plan_notes import left_alone
from partsplan.reports.schedule import month_by_month
from partsplan.reports.suspicions import unchecked
from partsplan.reports.why_text import why_text
from partsplan.scoring import ranking
from tests.support.asking_why import ask
from tests.support.building import START, bought, fault, garage, option, vehicle
from tests.support.carried_garages import carried_garage


def planned(made: Garage) -> Plan:
    found = plan(made)
    assert isinstance(found, Plan)
    return found


def test_all_that_is_paid_adds_up_to_the_ledger_of_every_month() -> None:
    checked = promised = 0
    for seed in range(60):
        made = carried_garage(seed)
        found = plan(made)
        if isinstance(found, Needs):
            continue
        out = [line.out for line in found.ledger]
        table = outlays(made, found)
        assert list(table.loc[TOTAL])[:-1] == out, f"carried garage {seed}"
        for month in range(made.months):
            due = [sum_ for _, sum_ in payments(made, found, month)]
            assert sum(due) == out[month], f"carried garage {seed}"
        before = sum(flow.out for flow in made.promised_within)
        assert int(table[TOTAL].get(PROMISED, 0)) == before
        checked += 1
        promised += before > 0
    assert checked > 40
    assert promised > 10


def test_the_shopping_list_leaves_bought_parts_out() -> None:
    made = garage(
        budget=(90000,),
        faults=(fault(), fault("f2")),
        options=(
            bought("there", "f1", core_deposit=5000, consumables=700),
            option("wanted", "f2"),
        ),
        promised=(Flow(month=0, out=4000),),
    )
    found = planned(made)
    page = Page()
    buying(page, made, found, 0)
    listed, paid = str(page).split("To pay")
    assert "wanted" in listed
    assert "there" not in listed
    sums = {
        line.rsplit(maxsplit=1)[0].strip(): line.split()[-1]
        for line in paid.splitlines()
        if line.strip()
    }
    assert sums["Promised for what was bought before"] == "40.00"
    assert sums["Coding and consumables at fitting"] == "7.00"
    assert "Core deposits" not in sums
    assert sums["Total"] == "147.00"


def test_a_bought_part_is_only_fitted_month_by_month() -> None:
    made = garage(options=(bought(not_before=START.plus(1)),))
    page = Page()
    month_by_month(page, made, planned(made))
    (row,) = (line for line in str(page).splitlines() if "o1" in line)
    assert row.split()[:3] == ["2027-02", "fit", "o1"]


@pytest.mark.parametrize(
    ("relief", "months", "words"),
    [
        ("1", 0, ""),
        ("1", 2, "cured until 2027-02"),
        ("0.8", 1, "cured until 2027-01"),
        ("0.75", 3, "relieved by 75 % until 2027-03"),
        ("0.5", 36, "relieved by 50 %"),
    ],
)
def test_what_relieves_a_fault_and_until_when(
    relief: str, months: int, words: str
) -> None:
    old = Fitted(option="old", relief=Fraction(relief), until=START.plus(months))
    made = garage(faults=(fault(fitted=(old,)),), options=(), look_beyond=6)
    assert relieved_now(made, made.faults[0]) == words
    page = Page()
    left_alone(page, made, skips(made, planned(made)))
    aside = f", {words} by what was fitted before" if words else ""
    assert f"fault f1 (f1){aside}: Nobody has quoted" in " ".join(str(page).split())
    said = why_text(made, planned(made), [("f1", ask(made, "f1"))])
    assert (f"It is {words}, by what was fitted before." in said) == bool(words)


def test_faults_are_told_with_what_relieves_them() -> None:
    old = Fitted(option="old", relief=Fraction("0.9"), until=START.plus(2))
    made = garage(faults=(fault(fitted=(old,)), fault("f2")))
    text = fault_tables(made, ranking(made), width=120)
    assert "f1: fault f1 (cured until 2027-02), small hatchback" in text
    first, second = json.loads(faults_json(made, ranking(made)))["faults"]
    assert "relieved" not in first
    assert second["relieved"] == 0.9


def test_of_what_is_bought_nothing_is_to_be_checked_before_buying() -> None:
    suspected = (Cause(fault="f1", cause="worn", chance=Fraction(1, 2)),)
    made = garage(options=(bought(),), causes=suspected)
    assert list(unchecked(made, planned(made))) == []
    unpaid = replace(made, options=(option(),))
    assert len(list(unchecked(unpaid, planned(unpaid)))) == 1


def test_a_bought_part_that_comes_in_instead_has_no_price() -> None:
    made = garage(
        vehicles=(vehicle(keep_months=3),),
        options=(bought("one", consumables=500), bought("other")),
    )
    said = why_text(made, planned(made), [("one", ask(made, "one"))])
    assert "Forced in, one (new), which is bought, pushes out other" in said
