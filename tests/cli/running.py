"""Runs the command line, in this process or in one of its own."""

import os
import subprocess
import sys
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import pytest

from partsplan.cli.exits import guarded
from partsplan.cli.main import NAME, cli

Capture = pytest.CaptureFixture[str]
ESCAPE = "\x1b"

TABLES = {
    "garage.toml": """\
name = "test garage"
currency = "EUR"
start = "2027-01"
months = 3
budget = "100.00"
hours = 8
""",
    "vehicles.csv": "id,name\nhatch,small hatchback\n",
    "faults.csv": """\
id,vehicle,title,system,severity,likelihood,drivability
hose,hatch,Brake hose bulges,brakes,1,B,0
window,hatch,Window stays down,body,,,1
""",
    "options.csv": """\
id,fixes,route,price,hours
hose-new,hose,new,34.50,2
window-used,window,used,20.00,1
""",
}


@dataclass(frozen=True)
class Ran:
    """How a run ended and what it said."""

    code: int
    out: str
    err: str


def write_garage(folder: Path, **tables: str) -> Path:
    """A garage on disk; ``faults_csv="..."`` stands instead of the usual table."""
    folder.mkdir(parents=True)
    changed = {name.replace("_", "."): text for name, text in tables.items()}
    for name, text in {**TABLES, **changed}.items():
        (folder / name).write_text(text, encoding="utf-8")
    return folder


def run(capsys: pytest.CaptureFixture[str], *words: str | Path) -> Ran:
    """A run in this process."""
    arguments = [str(word) for word in words]
    code = guarded(lambda: cli.main(arguments, prog_name=NAME, standalone_mode=False))
    out, err = capsys.readouterr()
    return Ran(code, out, err)


def start(
    *words: str | Path, stdin: bytes = b"", **environment: str
) -> subprocess.CompletedProcess[bytes]:
    """A run in a process of its own, with pipes."""
    return subprocess.run(
        [sys.executable, "-m", "partsplan", *map(str, words)],
        input=stdin,
        capture_output=True,
        env={**os.environ, **environment},
        timeout=60,
        check=False,
    )


def on_terminal(*words: str | Path, typed: str = "", **environment: str) -> Ran:
    """A run in a process of its own, with a terminal."""
    import pty

    screen, terminal = pty.openpty()
    process = subprocess.Popen(
        [sys.executable, "-m", "partsplan", *map(str, words)],
        stdin=terminal,
        stdout=terminal,
        stderr=terminal,
        env={**os.environ, "TERM": "xterm", **environment},
    )
    os.close(terminal)
    os.write(screen, typed.encode())
    shown = b""
    while True:
        try:
            part = os.read(screen, 65536)
        except OSError:  # Linux says so when the other end is closed
            break
        if not part:
            break
        shown += part
    os.close(screen)
    return Ran(process.wait(timeout=60), shown.decode(), "")


def raising(error: BaseException) -> Callable[..., None]:
    """A function that fails in this way, whatever it is given."""

    def raise_it(*_: object, **__: object) -> None:
        raise error

    return raise_it
