"""``partsplan report``"""

import json
from pathlib import Path

import pytest

from tests.cli.logged import entered, logged_garage
from tests.cli.running import Capture, run, start, write_garage
from tests.support.html_page import Node, read_page

TODAY = ("--today", "2027-01-05")


def page(path: Path) -> Node:
    return read_page(path.read_text(encoding="utf-8"))


def sections(found: Node) -> list[str]:
    return [node.text for node in found.all("h2")]


def test_a_page_is_written_whole(garage: Path, tmp_path: Path, capsys: Capture) -> None:
    path = tmp_path / "my.html"
    ran = run(capsys, "report", garage, "-o", path, *TODAY)
    assert (ran.code, ran.out, ran.err) == (0, "", "")
    found = page(path)
    assert sections(found)[:2] == ["DO NOT DRIVE", "To buy this month, 2027-01 [EUR]"]
    assert "as of 2027-01-05" in found.text
    assert run(capsys, "report", garage, "-o", path, *TODAY).code == 2


def test_without_a_file_it_is_printed(garage: Path) -> None:
    done = start("report", garage, *TODAY)
    assert (done.returncode, done.stderr) == (0, b"")
    assert done.stdout.startswith(b"<!doctype html>")


def test_planning_flags_are_heeded(
    garage: Path, tmp_path: Path, capsys: Capture
) -> None:
    path = tmp_path / "my.html"
    words = ("--months", "2", "--budget", "40", "--from", "2027-02")
    assert run(capsys, "report", garage, "-o", path, *TODAY, *words).code == 0
    (title,) = page(path).all("title")
    assert title.text == "Plan for test garage, 2027-02 to 2027-03"
    assert "40.00 EUR come in" in page(path).text


def test_a_curve_is_drawn_only_where_it_is_asked_for(
    garage: Path, tmp_path: Path, capsys: Capture
) -> None:
    plain, curved = tmp_path / "plain.html", tmp_path / "curved.html"
    run(capsys, "report", garage, "-o", plain, *TODAY)
    assert "What a monthly sum buys" not in page(plain).text
    ran = run(capsys, "report", garage, "-o", curved, *TODAY, "--curve", "--jobs", "1")
    assert ran.code == 0
    found = page(curved)
    assert "Planned for 13 sums from 50.00 to 200.00 EUR a month" in found.text
    rows = [row.text for row in found.all("tr")]
    assert [row.split()[0] for row in rows if row.endswith("now")] == ["100.00"]


def test_the_logbook_tells_of_returns(tmp_path: Path, capsys: Capture) -> None:
    garage, path = logged_garage(tmp_path / "logged"), tmp_path / "my.html"
    for line in (
        "2027-01-05 ordered starter-exchange",
        "2027-01-09 arrived starter-exchange",
        "2027-01-12 fitted starter-exchange",
    ):
        entered(capsys, garage, line)
    words = ("--budget", "400", "--today", "2027-02-01")
    assert run(capsys, "report", garage, "-o", path, *words).code == 0
    found = page(path)
    assert "Deposits and return days [EUR]" in sections(found)
    assert "By 2027-02-11: send the old unit of starter-exchange back" in found.text


def test_what_moved_since_a_kept_plan_is_told(
    garage: Path, tmp_path: Path, capsys: Capture
) -> None:
    assert run(capsys, "plan", garage, "--keep").code == 0
    path = tmp_path / "my.html"
    words = ("--budget", "10", *TODAY)
    assert run(capsys, "report", garage, "-o", path, *words).code == 0
    assert "Since plan 1, kept for 2027-01" in sections(page(path))


def test_without_a_plan_there_is_no_page(tmp_path: Path, capsys: Capture) -> None:
    debt, path = write_garage(tmp_path / "debt"), tmp_path / "my.html"
    with (debt / "garage.toml").open("a") as file:
        file.write('opening_cash = "-150.00"\n')
    ran = run(capsys, "report", debt, "-o", path, *TODAY)
    assert (ran.code, ran.out) == (4, "")
    assert "50.00 EUR" in ran.err
    assert not path.exists()
    ran = run(capsys, "report", debt, "--json", *TODAY)
    assert (ran.code, json.loads(ran.out)["status"]) == (4, "infeasible")


def test_json_is_that_of_the_plan_and_more(garage: Path, capsys: Capture) -> None:
    plan = json.loads(run(capsys, "plan", garage, "--json").out)
    words = ("--json", "--curve", "--jobs", "1", *TODAY)
    told = json.loads(run(capsys, "report", garage, *words).out)
    assert {key: told[key] for key in plan} == plan
    assert told["today"] == "2027-01-05"
    assert [one["code"] for one in told["duties"]] == ["do_not_drive"]
    assert len(told["points_borne"]) == len(told["points_borne_without"]) == 3
    assert [one["fault"] for one in told["comparisons"]] == ["hose", "window"]
    assert told["curve"]["points"][0]["budget"] == 5000


@pytest.mark.parametrize("day", ["2027-13-01", "soon"])
def test_a_day_that_is_none_is_refused(day: str, garage: Path, capsys: Capture) -> None:
    assert run(capsys, "report", garage, "--today", day).code == 2


def test_a_locale_changes_the_page_but_never_the_json(
    garage: Path, capsys: Capture
) -> None:
    ran = run(capsys, "report", garage, "--locale", "de", *TODAY)
    assert "To buy this month, 1/2027 [EUR]" in sections(read_page(ran.out))
    plain, german = (
        run(capsys, "report", garage, "--json", *words, *TODAY).out
        for words in ((), ("--locale", "de"))
    )
    assert plain == german
