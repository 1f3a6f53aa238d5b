"""The commands that make many plans: answers, exit codes, files, Ctrl-C."""

import json
import os
import shutil
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from partsplan.cli.many import PlansBar
from tests.cli.running import Capture, Ran, run, write_garage

HOUSEHOLD = Path(__file__).parents[2] / "scenarios" / "household"


def curve(capsys: Capture, garage: Path, *words: str | Path) -> Ran:
    return run(capsys, "curve", garage, "--jobs", "1", *words)


def test_curve_shows_what_other_sums_buy(garage: Path, capsys: Capture) -> None:
    ran = curve(capsys, garage, "--from", "0", "--to", "60")
    assert ran.code == 0
    assert "What a monthly sum buys: test garage, 2027-01 to 2027-03" in ran.out
    assert "hose-new (new)" in ran.out


def test_curve_takes_budget_months_and_steps(garage: Path, capsys: Capture) -> None:
    ran = curve(capsys, garage, "--budget=40", "--months=2", "--steps=3", "--json")
    found = json.loads(ran.out)
    assert found["months"] == 2
    assert [one["budget"] for one in found["points"]] == [2000, 4000, 5000, 8000]
    assert found["usual"] == 4000


def test_curve_tries_no_more_plans_than_asked(garage: Path, capsys: Capture) -> None:
    ran = curve(capsys, garage, "--from=0", "--to=90", "--plans=13", "--json")
    found = json.loads(ran.out)
    assert len(found["points"]) <= 13


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--from", "x"), "Error: from: expected an amount"),
        (("--from", "50", "--to", "40"), "expected a larger sum"),
        (("--steps", "1"), "--steps"),
        (("--jobs", "0"), "--jobs"),
    ],
)
def test_what_makes_no_sense_is_a_usage_error(
    garage: Path, capsys: Capture, words: tuple[str, ...], said: str
) -> None:
    ran = curve(capsys, garage, *words)
    assert ran.code == 2
    assert ran.out == ""
    assert said in ran.err


def test_a_garage_that_no_sum_helps_is_impossible(
    tmp_path: Path, capsys: Capture
) -> None:
    debt = write_garage(tmp_path / "debt")
    with (debt / "garage.toml").open("a") as file:
        file.write('opening_cash = "-900.00"\n')
    ran = curve(capsys, debt, "--steps", "2")
    assert ran.code == 4
    assert "no plan: " in ran.out
    ran = run(capsys, "steady", debt, "--jobs", "1", "--json")
    assert ran.code == 4
    assert json.loads(ran.out)["needs"] == {"month": "2027-01", "money": 80000}


def test_a_curve_goes_into_a_file_that_is_never_overwritten_unasked(
    garage: Path, tmp_path: Path, capsys: Capture
) -> None:
    there = tmp_path / "curve.json"
    words = ("--steps", "2", "--json", "-o", there)
    assert curve(capsys, garage, *words).code == 0
    assert json.loads(there.read_text())["points"]
    assert curve(capsys, garage, *words).code == 2
    assert curve(capsys, garage, *words, "--force").code == 0


def test_steady_tells_ranges(garage: Path, capsys: Capture) -> None:
    ran = run(capsys, "steady", garage, "--jobs", "1")
    assert ran.code == 0
    assert "To buy in 2027-01: hose-new (new)" in ran.out
    assert "Worth of a point-month" in ran.out
    found = json.loads(run(capsys, "steady", garage, "--jobs", "1", "--json").out)
    assert len(found["settings"]) == 5


NOTHING_YET = b"Stopped before there was anything to tell."


def test_ctrl_c_ends_all_processes_and_keeps_what_is_known(tmp_path: Path) -> None:
    there = tmp_path / "curve.json"
    for wait in (3.5, 10.0, 30.0):  # a busy machine needs longer for its first plans
        process = subprocess.Popen(
            [
                *(sys.executable, "-m", "partsplan", "curve", str(HOUSEHOLD), "--json"),
                *("--steps", "400", "--jobs", "2", "-o", str(there)),
            ],
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            start_new_session=True,
        )
        time.sleep(wait)
        os.killpg(process.pid, signal.SIGINT)  # as a terminal does, to all of them
        # until the last of them has gone; all the plans would take minutes
        out, err = process.communicate(timeout=60)
        if NOTHING_YET not in err:
            break
    assert process.returncode == 130
    assert (out, err) == (b"", b"")
    found = json.loads(there.read_text())
    assert found["interrupted"]
    assert 0 < len(found["points"]) < 400
    assert [one.name for one in tmp_path.iterdir()] == [there.name]


def test_a_garage_from_standard_input_can_be_asked(tmp_path: Path) -> None:
    folder = shutil.copytree(HOUSEHOLD, tmp_path / "household")
    archive = shutil.make_archive(str(tmp_path / "sent"), "tar", folder)
    ran = subprocess.run(
        [
            *(sys.executable, "-m", "partsplan", "curve", "-", "--json"),
            *("--steps", "2", "--jobs", "2"),
        ],
        input=Path(archive).read_bytes(),
        capture_output=True,
        timeout=60,
        check=True,
    )
    assert ran.stderr == b""
    assert len(json.loads(ran.stdout)["points"]) == 3


def test_the_bar_counts_plans() -> None:
    bar = PlansBar(60)
    bar.count(15)
    assert bar.line(4.2, 200) == "[#####...............] 15 of at most 60 plans, 4 s"
    bar.count(99)
    assert bar.line(4.2, 200).startswith("[####################] 99")
    assert len(bar.line(4.2, 20)) == 20
