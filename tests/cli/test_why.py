"""``partsplan why``"""

import json
from pathlib import Path
from typing import Any

import pytest

from partsplan import explanation
from tests.cli.running import TABLES, Capture, Ran, raising, run, write_garage

SCENARIOS = Path(__file__).parents[2] / "scenarios"
POOR = TABLES["garage.toml"].replace('"100.00"', '"15.00"')
"""Money for the hose only, and only after three months."""


@pytest.fixture
def poor(tmp_path: Path) -> Path:
    """The window waits, one fault is watched, one is fixed, one has no quote."""
    return write_garage(
        tmp_path / "poor",
        garage_toml=POOR,
        faults_csv="""\
id,vehicle,title,system,severity,likelihood,drivability,status
hose,hatch,Brake hose bulges,brakes,1,B,0,open
window,hatch,Window stays down,body,,,3,open
seep,hatch,Oil seeps,engine,,,1,watch
dent,hatch,Dent in the door,body,,,,fixed
hum,hatch,Hums at speed,other,,,1,open
""",
        options_csv=TABLES["options.csv"] + "seep-new,seep,new,5.00,1\n",
    )


def words(ran: Ran) -> str:
    assert ran.err == ""
    return " ".join(ran.out.split())


def answers(capsys: Capture, *asked: str | Path) -> dict[str, Any]:
    ran = run(capsys, "why", *asked, "--json")
    assert (ran.code, ran.err) == (0, "")
    data: dict[str, Any] = json.loads(ran.out)
    return data


def test_without_a_name_all_that_waits_is_answered(poor: Path, capsys: Capture) -> None:
    ran = run(capsys, "why", poor)
    assert ran.code == 0
    said = words(ran)
    assert "small hatchback: Window stays down (window)" in said
    assert "Hums at speed (hum)" in said
    assert "Nobody has quoted for it yet" in said
    assert "Brake hose bulges" not in said
    assert "Oil seeps" not in said


def test_what_waits_tells_what_it_pushes_out(poor: Path, capsys: Capture) -> None:
    said = words(run(capsys, "why", poor, "window"))
    assert "Forced in, window-used (used) at 20.00 EUR, pushes out hose-new: " in said
    assert "month unsafe" in said or "months unsafe" in said
    assert "a month instead of 15.00 EUR it would be chosen" in said


def test_all_asks_about_the_jobs_too(poor: Path, capsys: Capture) -> None:
    data = answers(capsys, poor, "--all")
    asked = [one["subject"] for one in data["answers"]]
    assert asked == ["hose-new", "window", "hum"]


def test_a_fault_and_its_option_are_defended_alike(poor: Path, capsys: Capture) -> None:
    data = answers(capsys, poor, "hose", "hose-new")
    first, second = data["answers"]
    assert first["why"] == second["why"]
    (defence,) = first["why"]
    assert defence["option"] == "hose-new"
    (reason,) = defence["forced_by"]
    assert (reason["code"], reason["vehicle"]) == ("makes_safe", "hatch")
    said = words(run(capsys, "why", poor, "hose"))
    assert "Without it small hatchback must not be driven" in said


def test_an_option_that_is_not_taken(poor: Path, capsys: Capture) -> None:
    data = answers(capsys, poor, "window-used")
    (answer,) = data["answers"][0]["why"]
    assert answer["subject"] == "window-used"
    assert answer["instead"]["leaves"] == ["hose-new"]


def test_what_is_watched_is_said_to_be(poor: Path, capsys: Capture) -> None:
    ran = run(capsys, "why", poor, "seep")
    assert ran.code == 0
    assert "It is watched, so nothing is planned for it." in words(ran)
    assert "seep-new" not in ran.out


def test_an_option_of_a_watched_fault_gets_a_reason(
    poor: Path, capsys: Capture
) -> None:
    data = answers(capsys, poor, "seep-new")
    (answer,) = data["answers"][0]["why"]
    assert answer["instead"] is None
    said = words(run(capsys, "why", poor, "seep-new"))
    assert "watched" in said


@pytest.mark.parametrize(
    ("name", "meant"),
    [("widow", "window"), ("hose-nwe", "hose-new"), ("zzzz", None)],
)
def test_a_name_that_is_not_there(
    name: str, meant: str | None, poor: Path, capsys: Capture
) -> None:
    ran = run(capsys, "why", poor, name)
    assert ran.code == 2
    assert ran.out == ""
    assert f'There is no fault or option "{name}".' in ran.err
    assert len(ran.err.splitlines()) == 1
    assert (f'Did you mean "{meant}"?' in ran.err) is (meant is not None)


def test_ruled_out_altogether(tmp_path: Path, capsys: Capture) -> None:
    folder = write_garage(
        tmp_path / "ruled-out",
        options_csv=TABLES["options.csv"].replace("hose,new,34.50", "hose,used,34.50"),
    )
    said = words(run(capsys, "why", folder, "hose"))
    assert "by the route used no parts of the brakes come here" in said
    assert said.endswith("No plan can hold it as things stand.")


def test_a_garage_in_debt_says_what_it_needs(tmp_path: Path, capsys: Capture) -> None:
    toml = TABLES["garage.toml"] + 'opening_cash = "-1000.00"\n'
    folder = write_garage(tmp_path / "debt", garage_toml=toml)
    ran = run(capsys, "why", folder)
    assert (ran.code, ran.err) == (4, "")
    assert "900.00" in ran.out
    ran = run(capsys, "why", folder, "hose", "--json")
    assert ran.code == 4
    assert json.loads(ran.out)["needs"] == {"month": "2027-01", "money": 90000}


def test_a_mistake_in_the_garage_is_told_with_its_place(
    tmp_path: Path, capsys: Capture
) -> None:
    options = TABLES["options.csv"].replace("34.50", "dear")
    ran = run(capsys, "why", write_garage(tmp_path / "wrong", options_csv=options))
    assert (ran.code, ran.out) == (3, "")
    assert "options.csv:2: price" in ran.err


def test_without_time_to_search_it_says_so(poor: Path, capsys: Capture) -> None:
    said = words(run(capsys, "why", poor, "window", "--search", "0"))
    assert "ran out of time; raise --search." in said
    assert "Forced in, window-used" in said
    assert "instead of" not in said
    data = answers(capsys, poor, "window", "--search", "0")
    (answer,) = data["answers"][0]["why"]
    assert answer["cut_short"] is True
    assert answer["thresholds"] == []


def test_another_budget_is_what_the_plan_is_made_for(
    poor: Path, capsys: Capture
) -> None:
    said = words(run(capsys, "why", poor, "window", "--budget", "100"))
    assert "window-used (used) for Window stays down" in said
    said = words(run(capsys, "why", poor, "window", "--months", "1"))
    assert "2027-01 to 2027-01" in said


@pytest.mark.parametrize("width", [60, 80])
def test_no_line_is_too_long(
    width: int, poor: Path, capsys: Capture, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", str(width))
    ran = run(capsys, "why", poor, "--all")
    assert max(map(len, ran.out.splitlines())) <= width


def test_what_is_stopped_tells_what_is_known(
    poor: Path, capsys: Capture, monkeypatch: pytest.MonkeyPatch
) -> None:
    whole = explanation.why

    def once(*facts: Any, **settings: Any) -> Any:
        monkeypatch.setattr(explanation, "why", raising(KeyboardInterrupt()))
        return whole(*facts, **settings)

    monkeypatch.setattr(explanation, "why", once)
    ran = run(capsys, "why", poor, "hose", "window")
    assert ran.code == 130
    assert "hose-new (new)" in ran.out
    assert "Window stays down" not in ran.out


def test_help_begins_with_an_example(capsys: Capture) -> None:
    ran = run(capsys, "why", "--help")
    assert ran.code == 0
    assert ran.out.startswith("Example: partsplan why ")


@pytest.mark.parametrize("words", [["--search", "-1"], ["--search", "nan"]])
def test_a_search_takes_some_time_or_none(
    words: list[str], poor: Path, capsys: Capture
) -> None:
    ran = run(capsys, "why", poor, *words)
    assert ran.code == 2
    assert "--search" in ran.err


@pytest.mark.slow
@pytest.mark.parametrize("scenario", ["household", "project-car", "transport-club"])
def test_every_job_and_all_that_waits_in_a_scenario_is_answered(
    scenario: str, capsys: Capture
) -> None:
    folder = SCENARIOS / scenario
    data = answers(capsys, folder, "--all", "--search", "0")
    plan = json.loads(run(capsys, "plan", folder, "--json").out)
    jobs = [job["option"] for job in plan["jobs"]]
    waiting = [one["fault"] for one in plan["skipped"]]
    assert [one["subject"] for one in data["answers"]] == [*jobs, *waiting]
    assert all(one["why"] for one in data["answers"])
