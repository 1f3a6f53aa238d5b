"""The cells of a contest in a file that is whole at any moment."""

import json
import os
from collections.abc import Sequence
from dataclasses import asdict
from pathlib import Path

from tests.benchmarks.contest.cell import Cell, Task, read_cell


def write_cells(file: Path, machine: str, cells: Sequence[Cell]) -> None:
    """Put all cells with all their events into a file, in place of what it held."""
    told = {"machine": machine, "cells": [asdict(one) for one in cells]}
    part = file.with_name(file.name + ".part")
    part.write_text(json.dumps(told, indent=1) + "\n", encoding="utf-8")
    os.replace(part, file)


def read_cells(file: Path, machine: str) -> list[Cell]:
    """The cells that were measured on this machine with these versions.

    Raises
    ------
    ValueError, TypeError, KeyError
        If it is no such file.
    """
    told = json.loads(file.read_text(encoding="utf-8"))
    if told["machine"] != machine:
        return []
    return [read_cell(one) for one in told["cells"]]


def known(cells: Sequence[Cell], contestant: str, task: Task) -> Cell | None:
    """The cell of that contestant at that task, if it is there."""
    return next(
        (one for one in cells if (one.contestant, one.task) == (contestant, task)),
        None,
    )
