"""Colour, the bar, questions and Ctrl-C: promises 5, 6, 10 and 12."""

import io
import json
import sys
import time
from pathlib import Path

import pytest

from partsplan.cli.progress import Bar
from tests.cli.running import ESCAPE, Capture, on_terminal, run, start, write_garage


def test_05_colour_is_for_terminals(garage: Path) -> None:
    assert ESCAPE in on_terminal("faults", garage).out
    assert ESCAPE not in start("faults", garage).stdout.decode()


@pytest.mark.parametrize(
    ("words", "environment"),
    [
        ((), {"NO_COLOR": "1"}),
        ((), {"TERM": "dumb"}),
        ((), {"PARTSPLAN_NO_COLOR": "1"}),
        (("--no-color",), {}),
    ],
)
def test_05_colour_can_be_refused(
    garage: Path, words: tuple[str, ...], environment: dict[str, str]
) -> None:
    ran = on_terminal("faults", garage, *words, **environment)
    assert ran.code == 0
    assert "DO NOT DRIVE" in ran.out
    assert ESCAPE not in ran.out


def test_05_an_empty_no_color_refuses_nothing(garage: Path) -> None:
    assert ESCAPE in on_terminal("faults", garage, NO_COLOR="").out


class Screen(io.StringIO):
    """A stderr that says whether it is a terminal."""

    def __init__(self, terminal: bool) -> None:
        super().__init__()
        self.terminal = terminal

    def isatty(self) -> bool:
        return self.terminal


def drawn(monkeypatch: pytest.MonkeyPatch, *, terminal: bool, patience: float) -> str:
    screen = Screen(terminal)
    monkeypatch.setattr(sys, "stderr", screen)
    monkeypatch.setattr("partsplan.cli.progress.PATIENCE", patience)
    monkeypatch.setattr("partsplan.cli.progress.EACH", 0.01)
    with Bar(30.0) as bar:
        bar("worth", 0.1, 12300.0, 12400.0)
        time.sleep(0.1)
    return screen.getvalue()


def test_06_the_bar_waits_and_is_for_terminals(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    assert drawn(monkeypatch, terminal=False, patience=0.0) == ""
    assert drawn(monkeypatch, terminal=True, patience=2.0) == ""
    shown = drawn(monkeypatch, terminal=True, patience=0.0)
    assert "0 s of 30 s, worth: 12,300, at most 12,400 (0.81 %)" in shown
    assert shown.endswith("\r")


def test_06_the_bar_fits_the_terminal() -> None:
    bar = Bar(30.0)
    bar("mobility", 0.1, 2.0, 1.0)
    assert bar.line(12.0, 200) == (
        "[########............] 12 s of 30 s, mobility, months not drivable: 2, "
        "at least 1"
    )
    assert len(bar.line(12.0, 40)) == 40
    assert bar.line(99.0, 200).startswith("[####################]")


def test_10_without_a_terminal_nobody_is_asked(garage: Path, tmp_path: Path) -> None:
    there = tmp_path / "plan.txt"
    there.write_text("mine")
    ran = start("plan", garage, "-o", there)
    assert ran.returncode == 2
    assert b"--force" in ran.stderr
    assert there.read_text() == "mine"


@pytest.mark.parametrize(("answer", "code"), [("y\n", 0), ("n\n", 2)])
def test_10_on_a_terminal_one_is_asked(
    garage: Path, tmp_path: Path, answer: str, code: int
) -> None:
    there = tmp_path / "plan.txt"
    there.write_text("mine")
    ran = on_terminal("plan", garage, "-o", there, typed=answer)
    assert "Overwrite it?" in ran.out
    assert ran.code == code
    assert (there.read_text() == "mine") is bool(code)


def hard_garage(folder: Path) -> Path:
    """Thirty faults with three options each over a year: the proof takes long."""
    faults = ["id,vehicle,title,points"]
    options = ["id,fixes,route,price,hours,life_months"]
    for fault in range(30):
        faults.append(f"f{fault},hatch,Fault {fault},{20 + fault * 7 % 61}")
        for choice, route in enumerate(("new", "exchange", "economy")):
            price = 40 + (fault * 37 + choice * 53) % 171
            hours = 1 + (fault * 5 + choice) % 4
            options.append(
                f"o{fault}-{choice},f{fault},{route},{price},{hours},{24 - 6 * choice}"
            )
    found = write_garage(
        folder,
        faults_csv="\n".join(faults) + "\n",
        options_csv="\n".join(options) + "\n",
    )
    toml = (found / "garage.toml").read_text().replace("months = 3", "months = 12")
    (found / "garage.toml").write_text(toml)
    return found


def test_12_ctrl_c_ends_a_plan_at_once_and_keeps_the_best(
    tmp_path: Path, capsys: Capture, monkeypatch: pytest.MonkeyPatch
) -> None:
    stopped: list[str] = []

    def stop(self: Bar, stage: str, _: float, best: float | None, __: object) -> None:
        if stage == "worth" and best is not None and not stopped:
            stopped.append(stage)
            raise KeyboardInterrupt

    monkeypatch.setattr(Bar, "__call__", stop)
    garage = hard_garage(tmp_path / "hard")
    ran = run(capsys, "plan", garage, "--json", "--gap", "0", "--seconds", "60")
    assert ran.code == 130
    found = json.loads(ran.out)
    assert found["status"] == "feasible"
    assert found["jobs"]
