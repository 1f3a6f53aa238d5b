"""The README's tours are real output: every console block is run and compared."""

import os
import re
import shlex
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
BLOCKS = re.findall(
    r"^```console\n\$ (.*?)\n(.*?)^```$",
    (ROOT / "README.md").read_text(encoding="utf-8"),
    re.DOTALL | re.MULTILINE,
)
LEFT_OUT = "..."
LIVED_IN = "my-cars"
"""A copy of a scenario in which the blocks that name it follow each other."""
TOUR = [(command, shown) for command, shown in BLOCKS if LIVED_IN not in command]
LIVING = [(command, shown) for command, shown in BLOCKS if LIVED_IN in command]


def output(command: str, folder: Path) -> list[str]:
    program, *arguments = shlex.split(command)
    assert program == "partsplan"
    done = subprocess.run(
        [sys.executable, "-m", "partsplan", *arguments],
        cwd=folder,
        capture_output=True,
        text=True,
        env={**os.environ, "COLUMNS": "80", "PYTHONPATH": str(ROOT)},
    )
    assert done.returncode == 0, done.stderr
    return done.stdout.splitlines()


def check(command: str, shown: str, folder: Path) -> None:
    """What a block shows is told by its command, in that order."""
    told = output(command, folder)
    at = 0
    for part in shown.rstrip("\n").split(f"{LEFT_OUT}\n"):
        lines = part.removesuffix(LEFT_OUT).splitlines()
        places = [
            place
            for place in range(at, len(told) - len(lines) + 1)
            if told[place : place + len(lines)] == lines
        ]
        assert places, "\n".join(lines)
        at = places[0] + len(lines)


@pytest.mark.parametrize(("command", "shown"), TOUR, ids=[c for c, _ in TOUR])
def test_the_tour_is_real_output(command: str, shown: str, tmp_path: Path) -> None:
    (tmp_path / "scenarios").symlink_to(ROOT / "scenarios")
    check(command, shown, tmp_path)


def test_living_with_it_is_real_output(tmp_path: Path) -> None:
    shutil.copytree(ROOT / "scenarios" / "household", tmp_path / LIVED_IN)
    for command, shown in LIVING:
        check(command, shown, tmp_path)


def test_there_is_a_tour() -> None:
    commands = {shlex.split(command)[1] for command, _ in BLOCKS}
    assert {"plan", "faults", "compare", "start"} <= commands
    assert {"enter", "now", "entries"} <= commands
