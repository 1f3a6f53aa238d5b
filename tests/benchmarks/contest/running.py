"""Runs one contestant in a process of its own, and ends it if it does not end."""

import os
from collections.abc import Callable
from concurrent.futures import ProcessPoolExecutor
from importlib import import_module
from multiprocessing import get_context
from multiprocessing.connection import Connection
from multiprocessing.process import BaseProcess
from time import monotonic

from tests.benchmarks.contest.cell import Cell, Task
from tests.benchmarks.contest.events import Event
from tests.benchmarks.contest.telling import (
    AnyPlan,
    Ended,
    Peak,
    Shown,
    Started,
    Teller,
)

OWN, RELAXATION = "partsplan", "LP relaxation"
CONTESTANTS = {
    OWN: "own_planner",
    "plain HiGHS": "plain_highs",
    "CP-SAT": "cp_sat",
    RELAXATION: "relaxation",
}
"""By name, the file whose ``compete`` is called. They are only imported in the process
that runs them: on Linux a new process begins with the peak of the one that started it.
"""
GRACE_SECONDS = 30.0
"""Beyond the limit, for a contestant to end by itself."""
SETUP_SECONDS = 300.0
"""For imports and the making of the garage, before the clock starts."""
KILLED = 9


def run(contestant: str, task: Task, *, grace: float = GRACE_SECONDS) -> Cell:
    """One contestant at one garage; what it told is kept however it ends."""
    cell = Cell(task=task, contestant=contestant)
    module = f"{__package__}.{CONTESTANTS[contestant]}"
    shown = _listen(cell, module, grace)
    if shown is not None:
        # In another process, so that this one stays small, too.
        with ProcessPoolExecutor(1, mp_context=get_context("spawn")) as process:
            cell.figures, cell.broken = process.submit(_check, task, shown).result()
    return cell


def _listen(cell: Cell, module: str, grace: float) -> AnyPlan | None:
    """Notes all that the contestant tells; returns the last plan it showed."""
    context = get_context("spawn")
    reader, writer = context.Pipe(duplex=False)
    process = context.Process(target=_compete, args=(writer, module, cell.task))
    process.start()
    writer.close()  # so that the pipe ends with the contestant
    shown: AnyPlan | None = None
    begun, until = monotonic(), monotonic() + SETUP_SECONDS
    try:
        while not cell.ended:
            left = until - monotonic()
            if left <= 0 or not reader.poll(left):
                cell.took = monotonic() - begun
                cell.ended = f"killed after {cell.took:.0f} s"
                break
            match reader.recv():
                case Started():
                    begun = monotonic()
                    until = begun + cell.task.seconds + grace
                case Event() as event:
                    cell.events.append(event)
                case Shown(plan):
                    shown = plan
                case Peak(megabytes):
                    cell.peak = megabytes
                case Ended(how, seconds):
                    cell.ended, cell.took = how, seconds
    except EOFError:
        cell.took = monotonic() - begun
        cell.ended = _crash(process)
    finally:
        process.kill()
        process.join()
        process.close()
        reader.close()
    return shown


def _crash(process: BaseProcess) -> str:
    process.join()
    if process.exitcode == -KILLED:
        return "killed by the system, likely out of memory"
    return f"crashed, exit code {process.exitcode}"


def _compete(writer: Connection, module: str, task: Task) -> None:
    """Lives in the contestant's process."""
    from tests.benchmarks.generator import made_up_garage

    # Solvers print; what they print is no part of the answer.
    os.dup2(os.open(os.devnull, os.O_WRONLY), 1)
    teller = Teller(writer.send)
    try:
        compete: Callable[..., str] = import_module(module).compete
        garage = made_up_garage(task.faults, task.months, task.seed)
        teller.end(compete(garage, task, teller))
    except ModuleNotFoundError as error:
        teller.end(f"left out: {error.name} is not installed")
    except Exception as error:  # told in the table, whatever it is
        teller.end(f"failed: {type(error).__name__}: {error}")


def _check(task: Task, plan: AnyPlan) -> tuple[dict[str, int], int]:
    from tests.benchmarks.contest.checking import check

    return check(task, plan)
