"""``partsplan against``"""

import json
from pathlib import Path

from partsplan.domain import Month
from partsplan.logbook import FILE, keep_plan
from tests.cli.running import Capture, run
from tests.support.kept_plans import NOW, enter, keep

TODAY = ("--today", "2027-03-20")


def test_a_kept_plan_against_what_happened(garage: Path, capsys: Capture) -> None:
    keep(garage)
    enter(
        garage,
        "2027-01-05 ordered hose-new amount=4000",
        "2027-01-06 arrived hose-new",
        "2027-01-07 fitted hose-new hours=2.5",
    )
    found = json.loads(run(capsys, "against", garage, "--json", *TODAY).out)
    hose, window = found["jobs"]
    assert (hose["more_money"], hose["more_hours"]) == (550, 0.5)
    assert (window["planned"]["option"], window["done"]) == ("window-used", None)
    assert window["late_months"] == 2
    ran = run(capsys, "against", garage, *TODAY)
    assert ran.code == 0
    assert "Plan 1 of test garage, 2027-01 to 2027-03" in ran.out


def test_the_last_plan_holds_unless_another_is_named(
    garage: Path, capsys: Capture
) -> None:
    keep(garage)
    keep(garage)
    assert "Plan 2 of" in run(capsys, "against", garage, *TODAY).out
    assert "Plan 1 of" in run(capsys, "against", garage, "--plan", "1", *TODAY).out
    ran = run(capsys, "against", garage, "--plan", "3", *TODAY)
    assert (ran.code, ran.out) == (2, "")
    assert ran.err == "Error: There is no kept plan 3; the last is 2.\n"


def test_without_a_kept_plan_it_says_how_to_keep_one(
    garage: Path, capsys: Capture
) -> None:
    ran = run(capsys, "against", garage, *TODAY)
    assert (ran.code, ran.out) == (3, "")
    assert ran.err.count("\n") == 1
    assert '"partsplan plan --keep"' in ran.err


def test_a_kept_plan_that_cannot_be_read_is_told(garage: Path, capsys: Capture) -> None:
    keep_plan(garage / FILE, "not a plan", start=Month(2027, 1), now=NOW)
    ran = run(capsys, "against", garage, *TODAY)
    assert (ran.code, ran.out) == (3, "")
    assert ran.err.startswith("Error: kept plan 1 cannot be read")


def test_a_damaged_logbook_is_told(garage: Path, capsys: Capture) -> None:
    (garage / FILE).write_bytes(b"")
    ran = run(capsys, "against", garage, *TODAY)
    assert (ran.code, ran.out) == (3, "")
    assert "This is a bug" not in ran.err
