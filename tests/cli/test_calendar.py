"""``partsplan calendar``"""

import json
from pathlib import Path

import pytest

from tests.cli.running import Capture, run, start, write_garage
from tests.support.icalendar_rules import events

TODAY = ("--today", "2027-01-01")
NOTHING = {
    "faults.csv": "id,vehicle,title\n",
    "options.csv": "id,fixes,route,price\n",
}


def test_a_calendar_file_is_written_to_the_byte(garage: Path, tmp_path: Path) -> None:
    path = tmp_path / "my.ics"
    assert start("calendar", garage, "-o", path, *TODAY).returncode == 0
    titles = [event.text("SUMMARY") for event in events(path.read_bytes())]
    assert "Fit hose-new: Brake hose bulges, small hatchback" in titles
    printed = start("calendar", garage, *TODAY)
    assert len(events(printed.stdout)) == len(titles)


def test_a_file_is_overwritten_only_by_force(
    garage: Path, tmp_path: Path, capsys: Capture
) -> None:
    path = tmp_path / "my.ics"
    path.write_text("mine")
    assert run(capsys, "calendar", garage, "-o", path, *TODAY).code == 2
    assert path.read_text() == "mine"
    assert run(capsys, "calendar", garage, "-o", path, "--force", *TODAY).code == 0
    assert events(path.read_bytes())


def test_two_exports_name_the_same_things(garage: Path, capsys: Capture) -> None:
    first, second = (
        {one["uid"] for one in json.loads(run(capsys, *words).out)["days"]}
        for words in (
            ("calendar", garage, "--json", *TODAY),
            ("calendar", garage, "--json", "--today", "2027-01-20"),
        )
    )
    assert first
    assert first == second


def test_nothing_to_do_is_no_calendar(tmp_path: Path, capsys: Capture) -> None:
    idle = write_garage(tmp_path / "idle", **NOTHING)
    path = tmp_path / "idle.ics"
    ran = run(capsys, "calendar", idle, "-o", path, *TODAY)
    assert (ran.code, ran.out) == (0, "")
    assert ran.err == "There is nothing to put into a calendar.\n"
    assert not path.exists()


def test_without_a_plan_there_is_no_calendar(tmp_path: Path, capsys: Capture) -> None:
    debt = write_garage(tmp_path / "debt")
    with (debt / "garage.toml").open("a") as file:
        file.write('opening_cash = "-150.00"\n')
    ran = run(capsys, "calendar", debt, *TODAY)
    assert (ran.code, ran.out) == (4, "")
    assert "50.00 EUR" in ran.err
    ran = run(capsys, "calendar", debt, "--json", *TODAY)
    assert (ran.code, json.loads(ran.out)["status"]) == (4, "infeasible")


@pytest.mark.parametrize("day", ["2027-13-01", "soon", "2027-01"])
def test_a_day_that_is_none_is_refused(day: str, garage: Path, capsys: Capture) -> None:
    ran = run(capsys, "calendar", garage, "--today", day)
    assert (ran.code, ran.out) == (2, "")
    assert "--today" in ran.err
