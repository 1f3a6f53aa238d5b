"""Exit codes, and what is said on the way out: promise 2 of the command line."""

import os
import signal
import subprocess
import sys
from pathlib import Path

import pytest

from partsplan import usecases
from partsplan.errors import SolverFailed, UnsoundPlan
from partsplan.verification import Violation
from tests.cli.running import Capture, raising, run, write_garage


def test_02_exit_codes_say_what_happened(
    garage: Path, tmp_path: Path, capsys: Capture
) -> None:
    broken = write_garage(
        tmp_path / "broken", faults_csv="id,vehicle,title\nhose,hatchet,Hose\n"
    )
    debt = garage_with_debt(tmp_path / "debt")
    assert run(capsys, "plan", garage).code == 0
    assert run(capsys, "plan", garage, "--months", "0").code == 2
    assert run(capsys, "plan", garage, "--budget", "-1").code == 2
    assert run(capsys, "plan", garage, "--seconds", "nan").code == 2
    assert run(capsys, "plan", garage, "--gap", "-0.1").code == 2
    assert run(capsys, "compare", garage, "nothing-like-it").code == 2
    assert run(capsys, "plan", broken).code == 3
    assert run(capsys, "plan", debt).code == 4


def garage_with_debt(folder: Path) -> Path:
    found = write_garage(folder)
    with (found / "garage.toml").open("a") as file:
        file.write('opening_cash = "-500.00"\n')
    return found


@pytest.mark.parametrize(
    ("error", "code"),
    [
        (SolverFailed("the solver refused the model"), 5),
        (UnsoundPlan(["cash: month 0"]), 1),
        (ZeroDivisionError("oops"), 1),
        (KeyboardInterrupt(), 130),
        (FileNotFoundError(2, "No such file", "faults.csv"), 3),
    ],
    ids=["solver failed", "unsound plan", "bug", "Ctrl-C", "file gone"],
)
def test_02_exit_codes_of_what_is_rare(
    garage: Path,
    capsys: Capture,
    monkeypatch: pytest.MonkeyPatch,
    error: BaseException,
    code: int,
) -> None:
    monkeypatch.setattr(usecases, "plan", raising(error))
    ran = run(capsys, "plan", garage)
    assert ran.code == code
    assert ran.out == ""
    assert "Traceback" not in ran.err
    assert len(ran.err.strip().splitlines()) <= 1


def test_02_a_bug_asks_for_a_report_and_shows_more_only_when_asked(
    garage: Path, capsys: Capture, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(usecases, "plan", raising(ZeroDivisionError("two\nlines")))
    ran = run(capsys, "plan", garage)
    assert ran.err == (
        "This is a bug in partsplan; please report it with this line: "
        "ZeroDivisionError: two lines\n"
    )
    monkeypatch.setenv("PARTSPLAN_DEBUG", "1")
    assert "Traceback" in run(capsys, "plan", garage).err


def test_02_a_plan_that_fails_its_check_is_never_shown(
    garage: Path, capsys: Capture, monkeypatch: pytest.MonkeyPatch
) -> None:
    broken = (Violation("cash", "month 0: expected 100, got 99"),)
    monkeypatch.setattr("partsplan.verification.violations", lambda *_: broken)
    ran = run(capsys, "plan", garage)
    assert ran.code == 1
    assert ran.out == ""
    assert "the plan failed its verification: cash: month 0" in ran.err


@pytest.mark.skipif(os.name == "nt", reason="Windows has no SIGPIPE")
def test_02_a_reader_that_is_gone_is_no_error() -> None:
    reader, writer = os.pipe()
    os.close(reader)
    ran = subprocess.run(
        [sys.executable, "-m", "partsplan", "words"],
        stdout=writer,
        stderr=subprocess.PIPE,
        check=False,
    )
    os.close(writer)
    assert ran.returncode == -signal.SIGPIPE
    assert ran.stderr == b""
