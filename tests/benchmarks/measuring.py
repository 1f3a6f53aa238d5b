"""Takes the time of every phase of one made-up garage, from files to a checked plan."""

import gc
import resource
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from tempfile import TemporaryDirectory
from time import thread_time

from partsplan.domain import Garage, Needs
from tests.benchmarks.generator import made_up_garage

PHASES = ("write", "read", "price", "build", "solve", "rest", "verify")
"""Solve is by the solver's own clock. The others are processor time of the thread that
does them, which is the same however busy the machine is; the solver has another thread.
Rest is all that planning does besides: handing the model over, working out figures."""


@dataclass(slots=True, kw_only=True)
class Measured:
    """One garage, measured.

    Attributes
    ----------
    phases
        By phase. [s]
    peak
        Most memory the process held, the libraries too. [MB]
    offers, reachable
        How many offers there are, and how many of them the model has.
    status, gap, net_worth, bound, violations
        Of the plan; None without one. [minor units]
    """

    faults: int
    months: int
    seed: int
    phases: dict[str, float] = field(default_factory=dict)
    peak: float = 0.0
    offers: int = 0
    reachable: int = 0
    columns: int = 0
    rows: int = 0
    status: str | None = None
    gap: float | None = None
    net_worth: int | None = None
    bound: int | None = None
    violations: int | None = None

    @property
    def size(self) -> str:
        """Faults and months."""
        return f"{self.faults}x{self.months}"

    @contextmanager
    def timed(self, phase: str) -> Iterator[None]:
        """Notes the processor time of its block."""
        gc.collect()  # else a phase may pay for what those before it left behind
        before = thread_time()
        yield
        self.phases[phase] = thread_time() - before


def measure(
    faults: int, months: int, seed: int, *, seconds: float, gap: float, plan: bool
) -> Measured:
    """Every phase of one garage; without ``plan`` only those up to the built model.

    Its peak of memory is that of the process it runs in.
    """
    from partsplan.cli.garbage import collect_seldom

    collect_seldom()  # as the command line does
    found = Measured(faults=faults, months=months, seed=seed)
    garage = made_up_garage(faults, months, seed)
    _through_files(found, garage)
    _build(found, garage)
    if plan:
        _plan(found, garage, seconds, gap)
    found.peak = peak_memory(resource.getrusage(resource.RUSAGE_SELF).ru_maxrss)
    return found


def peak_memory(told: int) -> float:
    """What the system tells as ``ru_maxrss``. [MB]"""
    return told / (1e6 if sys.platform == "darwin" else 1e6 / 1024)


# Imports stand inside, so that the process that starts the measured ones stays small:
# on Linux a new process begins with the peak of the one that started it.


def _through_files(found: Measured, garage: Garage) -> None:
    from partsplan.intake import read_garage, write_garage

    with TemporaryDirectory() as name:
        with found.timed("write"):
            write_garage(garage, Path(name))
        with found.timed("read"):
            read = read_garage(Path(name))
    if read != garage:
        raise AssertionError(f"{garage.name} does not read back as it was written")


def _build(found: Measured, garage: Garage) -> None:
    from partsplan.planning import model, reach
    from partsplan.planning.demands import demands
    from partsplan.pricing import offers

    with found.timed("price"):
        every = offers(garage)
    with found.timed("build"):
        kept = reach.reachable(garage, every)
        program = model.build(garage, kept, demands(garage)).program
    found.offers, found.reachable = len(every), len(kept)
    found.columns, found.rows = len(program.columns), len(program.rows)


def _plan(found: Measured, garage: Garage, seconds: float, gap: float) -> None:
    from partsplan.planning import plan
    from partsplan.verification import violations

    with found.timed("rest"):
        answer = plan(garage, seconds=seconds, gap=gap)
    if isinstance(answer, Needs):
        raise AssertionError(f"{garage.name} has no debt, but is told to be impossible")
    found.phases["rest"] -= found.phases["price"] + found.phases["build"]
    found.phases["solve"] = answer.seconds
    with found.timed("verify"):
        found.violations = len(violations(garage, answer))
    found.status, found.gap = answer.status.value, answer.gap
    found.net_worth, found.bound = answer.stages.net_worth, answer.bound
