"""Help, versions, typos, settings, completion: promises 3, 4, 7, 11, 14, 15."""

import json
import subprocess
import sys
from importlib.metadata import version
from pathlib import Path
from typing import Any

import pytest

from partsplan import usecases
from partsplan.cli.main import cli
from partsplan.errors import SolverFailed
from tests.cli.running import ESCAPE, Capture, on_terminal, run, start

COMMANDS = tuple(cli.commands)


@pytest.mark.parametrize("flag", ["-h", "--help"])
@pytest.mark.parametrize("command", ["", *COMMANDS])
def test_03_help_is_everywhere_and_begins_with_an_example(
    command: str, flag: str, capsys: Capture
) -> None:
    ran = run(capsys, *command.split(), flag)
    assert ran.code == 0
    assert ran.err == ""
    expected = f"Example: partsplan {command}".rstrip()
    assert ran.out.splitlines()[0].startswith(expected)


@pytest.mark.parametrize("command", ["", "plan", "check", "start", "faults", "compare"])
def test_03_no_arguments_show_help_on_stderr(command: str, capsys: Capture) -> None:
    ran = run(capsys, *command.split())
    assert ran.code == 2
    assert ran.out == ""
    assert "Usage: partsplan" in ran.err


def test_04_version_names_the_solver_too(capsys: Capture) -> None:
    ran = run(capsys, "--version")
    assert ran.code == 0
    assert ran.out == f"partsplan {version('partsplan')}, HiGHS {version('highspy')}\n"


SLOW = ("pandas", "numpy", "pulp", "highspy", "pydantic", "tabulate")


def imported(*words: str | Path) -> set[str]:
    """Which slow libraries a command has loaded when it is done."""
    program = (
        "import sys\n"
        "from partsplan.cli.exits import guarded\n"
        "from partsplan.cli.main import cli\n"
        f"guarded(lambda: cli.main({[str(word) for word in words]!r}, "
        "prog_name='partsplan', standalone_mode=False))\n"
        f"print(*[name for name in {SLOW!r} if name in sys.modules], file=sys.stderr)"
    )
    ran = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, check=True, text=True
    )
    return set(ran.stderr.split())


def test_07_help_loads_nothing_slow() -> None:
    assert imported("--help") == set()
    assert imported("plan", "--help") == set()
    assert imported("--version") == set()


def test_07_check_loads_neither_solver_nor_numbers(garage: Path) -> None:
    loaded = imported("check", garage)
    assert "tabulate" in loaded  # the probe can see something
    assert not loaded & {"pandas", "numpy", "pulp", "highspy"}


@pytest.mark.parametrize(
    ("words", "meant"),
    [
        (("pln", "GARAGE"), "plan"),
        (("plan", "--jsn", "GARAGE"), "--json"),
        (("compare", "GARAGE", "hosse"), "hose"),
        (("words", "sevrity"), "severity"),
    ],
)
def test_11_typos_are_answered_with_what_was_meant(
    words: tuple[str, ...], meant: str, garage: Path, capsys: Capture
) -> None:
    ran = run(capsys, *(str(garage) if word == "GARAGE" else word for word in words))
    assert ran.code == 2
    assert "Did you mean" in ran.err
    assert meant in ran.err.split("Did you mean")[1]


def used(
    capsys: Capture, monkeypatch: pytest.MonkeyPatch, garage: Path, *words: str
) -> dict[str, Any]:
    """The settings with which the use-case is called."""
    seen: dict[str, Any] = {}

    def spy(_: Path, **settings: Any) -> None:
        seen.update(settings)
        raise SolverFailed("enough seen")

    monkeypatch.setattr(usecases, "plan", spy)
    assert run(capsys, "plan", garage, *words).code == 5
    return seen


def test_14_a_flag_goes_before_the_environment_before_the_file(
    garage: Path, tmp_path: Path, capsys: Capture, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert used(capsys, monkeypatch, garage)["seconds"] == 30.0
    file = tmp_path / "config" / "partsplan" / "config.toml"
    file.parent.mkdir(parents=True)
    file.write_text("seconds = 5\ngap = 0.01\nthreads = 2\n")
    seen = used(capsys, monkeypatch, garage)
    assert (seen["seconds"], seen["gap"], seen["threads"]) == (5.0, 0.01, 2)
    monkeypatch.setenv("PARTSPLAN_SECONDS", "7")
    assert used(capsys, monkeypatch, garage)["seconds"] == 7.0
    assert used(capsys, monkeypatch, garage, "--seconds", "9")["seconds"] == 9.0


def test_14_the_garage_stands_below_flag_and_environment(
    garage: Path, capsys: Capture, monkeypatch: pytest.MonkeyPatch
) -> None:
    def told(*words: str) -> tuple[int, int]:
        found = json.loads(run(capsys, "plan", garage, "--json", *words).out)
        return found["months"], found["ledger"][0]["budget"]

    assert told() == (3, 10000)
    monkeypatch.setenv("PARTSPLAN_MONTHS", "4")
    monkeypatch.setenv("PARTSPLAN_BUDGET", "120")
    assert told() == (4, 12000)
    assert told("--months", "2", "--budget", "99.5") == (2, 9950)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("secnds = 5", "secnds: unknown setting"),
        ("seconds = 0", "seconds: expected a number above 0, got 0"),
        ('gap = "small"', "gap: expected a number, 0 or more"),
        ("threads = 1.5", "threads: expected a whole number above 0"),
        ("color = 1", "color: expected true or false"),
        ("seconds 5", "config.toml"),
    ],
)
def test_14_a_mistake_in_the_file_is_named_and_help_still_works(
    text: str, said: str, garage: Path, tmp_path: Path, capsys: Capture
) -> None:
    file = tmp_path / "config" / "partsplan" / "config.toml"
    file.parent.mkdir(parents=True)
    file.write_text(text)
    ran = run(capsys, "plan", garage)
    assert ran.code == 3
    assert said in ran.err
    assert run(capsys, "plan", "--help").code == 0


def test_14_colour_can_be_refused_for_good(garage: Path, tmp_path: Path) -> None:
    file = tmp_path / "config" / "partsplan" / "config.toml"
    file.parent.mkdir(parents=True)
    file.write_text("color = false\n")
    assert ESCAPE not in on_terminal("faults", garage).out


@pytest.mark.parametrize("shell", ["bash", "zsh", "fish", "powershell"])
def test_15_shells_get_their_completion(shell: str) -> None:
    ran = start(_PARTSPLAN_COMPLETE=f"{shell}_source")
    assert ran.returncode == 0
    assert b"partsplan" in ran.stdout


def completed(line: str) -> list[str]:
    ran = start(
        _PARTSPLAN_COMPLETE="bash_complete",
        COMP_WORDS=line,
        COMP_CWORD=str(len(line.split(" ")) - 1),
    )
    return [one.split(",")[1] for one in ran.stdout.decode().split()]


def test_15_fault_ids_complete(garage: Path, tmp_path: Path) -> None:
    assert completed(f"partsplan compare {garage} ") == ["hose", "window"]
    assert completed(f"partsplan compare {garage} wi") == ["window"]
    assert completed(f"partsplan compare {tmp_path / 'nowhere'} ") == []
    assert "compare" in completed("partsplan c")
