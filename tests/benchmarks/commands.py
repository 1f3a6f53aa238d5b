"""Takes time and memory of whole commands, as somebody at a terminal meets them."""

import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path

from tests.benchmarks.measuring import peak_memory

LAUNCHER = """
import os, sys, time
quiet = [(os.POSIX_SPAWN_OPEN, to, os.devnull, os.O_RDWR, 0) for to in (0, 1, 2)]
before = time.perf_counter()
child = os.posix_spawn(sys.argv[1], sys.argv[1:], os.environ, file_actions=quiet)
_, status, usage = os.wait4(child, 0)
print(time.perf_counter() - before, usage.ru_maxrss, os.waitstatus_to_exitcode(status))
"""
"""Starts a command from a process with hardly any memory of its own, since on Linux a
new process begins with the peak of the one that started it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Command:
    """One run of the program. [s], [MB]"""

    name: str
    seconds: float
    peak: float
    exit_code: int


def measure_commands(scenarios: Path, seconds: float) -> list[Command]:
    """``--help``, and ``check`` and ``plan`` of every garage in a folder."""
    garages = sorted(file.parent for file in scenarios.glob("*/garage.toml"))
    found = [_run("--help", ["--help"])]
    for garage in garages:
        found.append(_run(f"check {garage.name}", ["check", str(garage)]))
        limit = ["--seconds", str(seconds)]
        found.append(_run(f"plan {garage.name}", ["plan", str(garage), *limit]))
    return found


def _run(name: str, arguments: list[str]) -> Command:
    program = [sys.executable, "-m", "partsplan", *arguments]
    told = subprocess.run(
        [sys.executable, "-I", "-S", "-c", LAUNCHER, *program],
        check=True,
        capture_output=True,
        text=True,
    )
    seconds, peak, exit_code = told.stdout.split()
    return Command(
        name=name,
        seconds=float(seconds),
        peak=peak_memory(int(peak)),
        exit_code=int(exit_code),
    )
