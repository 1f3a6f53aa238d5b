"""What each command answers."""

import json
from datetime import date
from pathlib import Path

import pytest

from partsplan.domain import Month
from tests.cli.running import Capture, run, write_garage


def test_plan_shows_the_shopping_list_of_the_month(
    garage: Path, capsys: Capture
) -> None:
    ran = run(capsys, "plan", garage)
    assert ran.code == 0
    assert "Plan for test garage, 2027-01 to 2027-03" in ran.out
    assert "Proven: no plan is better." in ran.out
    assert "hose-new" in ran.out


def test_an_impossible_plan_tells_what_it_needs(
    tmp_path: Path, capsys: Capture
) -> None:
    debt = write_garage(tmp_path / "debt")
    with (debt / "garage.toml").open("a") as file:
        file.write('opening_cash = "-150.00"\n')
    ran = run(capsys, "plan", debt, "--json")
    assert ran.code == 4
    assert json.loads(ran.out)["needs"] == {"month": "2027-01", "money": 5000}
    assert "50.00 EUR" in run(capsys, "plan", debt).out
    assert "needs\t2027-01\t50.00" in run(capsys, "plan", debt, "--plain").out


def test_every_problem_of_a_garage_is_listed_at_once(
    tmp_path: Path, capsys: Capture
) -> None:
    broken = write_garage(
        tmp_path / "broken",
        faults_csv="id,vehicle,title,drivability\nhose,hatch,Hose,7\nx,hatch,X,-1\n",
    )
    ran = run(capsys, "check", broken)
    assert ran.code == 3
    assert ran.out == ""
    assert "faults.csv:2: drivability: " in ran.err
    assert "faults.csv:3: drivability: " in ran.err
    assert ran.err.endswith("problems; nothing was written.\n")


@pytest.mark.parametrize("budget", ["much", "1.234", "-5", ""])
def test_a_budget_that_is_no_amount_is_refused(
    budget: str, garage: Path, capsys: Capture
) -> None:
    ran = run(capsys, "plan", garage, f"--budget={budget}")
    assert ran.code == 2
    assert "budget: expected" in ran.err


def test_a_bigger_budget_leaves_the_worth_of_a_point_alone(
    garage: Path, capsys: Capture
) -> None:
    usual, rich = (
        run(capsys, "plan", garage, *words).out for words in ((), ("--budget", "5000"))
    )
    sentence = "One point borne for one month is worth 0.50 EUR."
    assert sentence in usual
    assert sentence in rich


def test_check_counts_what_it_found(garage: Path, capsys: Capture) -> None:
    ran = run(capsys, "check", garage)
    assert ran.code == 0
    assert "Found 1 vehicle, 2 faults (2 open) and 2 options." in ran.out


def test_a_started_garage_can_be_checked(tmp_path: Path, capsys: Capture) -> None:
    this_month = Month(date.today().year, date.today().month)
    folder = tmp_path / "new"
    ran = run(capsys, "start", folder)
    assert ran.code == 0
    assert "garage.toml" in ran.out
    found = json.loads(run(capsys, "check", folder, "--json").out)
    assert Month.parse(found["start"]).since(this_month) in (0, 1)


def test_a_garage_is_never_started_over_another(garage: Path, capsys: Capture) -> None:
    before = {path: path.read_bytes() for path in garage.iterdir()}
    ran = run(capsys, "start", garage)
    assert ran.code == 2
    assert {path: path.read_bytes() for path in garage.iterdir()} == before


def test_faults_are_ranked_with_the_danger_first(garage: Path, capsys: Capture) -> None:
    found = json.loads(run(capsys, "faults", garage, "--json").out)["faults"]
    assert [one["fault"] for one in found] == ["hose", "window"]
    assert found[0]["do_not_drive"]
    assert "The risk to people is high" in run(capsys, "faults", garage, "--why").out


def test_compare_answers_for_one_fault(garage: Path, capsys: Capture) -> None:
    ran = run(capsys, "compare", garage, "hose")
    assert ran.code == 0
    assert "hose-new" in ran.out
    assert "window-used" not in ran.out


def test_kinds_are_found_by_all_their_words(capsys: Capture) -> None:
    found = json.loads(run(capsys, "kinds", "BRAKE", "hose", "--json").out)["kinds"]
    assert found
    assert all("hose" in one["key"] and one["system"] == "brakes" for one in found)
    assert "No kind of fault" in run(capsys, "kinds", "brake", "zeppelin").out


def test_words_tell_one_list_or_all(capsys: Capture) -> None:
    one = json.loads(run(capsys, "words", "route", "--json").out)["words"]
    assert list(one) == ["route"]
    every = json.loads(run(capsys, "words", "--json").out)["words"]
    assert {"severity", "likelihood", "route"} <= set(every)


def test_columns_decide_the_width(
    garage: Path, capsys: Capture, monkeypatch: pytest.MonkeyPatch
) -> None:
    widest = {}
    for columns in ("80", "120"):
        monkeypatch.setenv("COLUMNS", columns)
        lines = run(capsys, "plan", garage).out.splitlines()
        widest[columns] = max(map(len, lines))
    assert widest["80"] <= 80 < widest["120"] <= 120


def test_a_garage_that_is_not_there_is_a_usage_error(
    tmp_path: Path, capsys: Capture
) -> None:
    ran = run(capsys, "check", tmp_path / "nowhere")
    assert ran.code == 2
    assert "does not exist" in ran.err
