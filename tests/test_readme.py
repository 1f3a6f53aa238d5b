"""The README's tours are real output: every console block is run and compared."""

import os
import re
import shlex
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from tests.support.kept_plans import enter, keep

ROOT = Path(__file__).parents[1]
BLOCKS = re.findall(
    r"^```console\n\$ (.*?)\n(.*?)^```$",
    (ROOT / "README.md").read_text(encoding="utf-8"),
    re.DOTALL | re.MULTILINE,
)
LEFT_OUT = "..."
IN_MARCH = (
    "2027-01-04 ordered pipes-made-up amount=4480",
    "2027-01-13 arrived pipes-made-up",
    "2027-01-16 fitted pipes-made-up hours=7",
    "2027-01-16 paid - amount=5290 text=shipping_and_the_flaring_tool",
    "2027-02-03 ordered heater-hoses amount=4400",
    "2027-02-15 arrived heater-hoses",
    "2027-02-17 fitted heater-hoses hours=1.5",
    "2027-02-04 ordered starter-exchange amount=10900",
    "2027-02-26 arrived starter-exchange",
    "2027-03-04 fitted starter-exchange hours=1.5",
    "2027-02-20 ordered misfire-plugs amount=2880",
    "2027-02-28 arrived misfire-plugs",
    "2027-03-02 fitted misfire-plugs hours=0.7",
)
"""What happened in the household until March."""


def household_in_march(folder: Path) -> None:
    """The household with a kept plan and a logbook."""
    shutil.copytree(ROOT / "scenarios" / "household", folder)
    keep(folder)
    enter(folder, *IN_MARCH)


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
    if " in-march" in command:
        household_in_march(tmp_path / "in-march")
    check(command, shown, tmp_path)


def test_living_with_it_is_real_output(tmp_path: Path) -> None:
    shutil.copytree(ROOT / "scenarios" / "household", tmp_path / LIVED_IN)
    for command, shown in LIVING:
        check(command, shown, tmp_path)


def test_there_is_a_tour() -> None:
    commands = {shlex.split(command)[1] for command, _ in BLOCKS}
    assert {"plan", "faults", "compare", "start"} <= commands
    assert {"enter", "now", "entries"} <= commands
