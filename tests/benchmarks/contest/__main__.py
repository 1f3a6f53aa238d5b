"""``python -m tests.benchmarks.contest``: partsplan against plain solvers."""

import os
from collections.abc import Iterator, Sequence
from dataclasses import replace
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path
from typing import TextIO

import click

from tests.benchmarks.arguments import Size, seeds_named, sizes_named
from tests.benchmarks.contest.cell import EARLY_STAGES, Cell, Task
from tests.benchmarks.contest.contest_tables import report
from tests.benchmarks.contest.record import known, read_cells, write_cells
from tests.benchmarks.contest.running import CONTESTANTS, GRACE_SECONDS, RELAXATION, run
from tests.benchmarks.contest.summary import LONG_FROM, Heat
from tests.benchmarks.machine import load, machine

SECONDS, LONG_SECONDS = 60.0, 300.0


def contestants_named(
    _: click.Context, __: click.Parameter, value: str
) -> tuple[str, ...]:
    """Names of contestants; the relaxation comes last, since it needs the others."""
    names = [text.strip() for text in value.split(",")]
    if unknown := [one for one in names if one not in CONTESTANTS]:
        message = f'expected some of {", ".join(CONTESTANTS)}, got "{unknown[0]}"'
        raise click.BadParameter(message)
    return tuple(one for one in CONTESTANTS if one in names)


@click.command()
@click.option(
    "--sizes",
    default="12x6,30x6,30x12,100x12,1000x12,10000x12",
    show_default=True,
    callback=sizes_named,
    help="Faults x months.",
)
@click.option(
    "--seeds",
    default="1,2,3",
    show_default=True,
    callback=seeds_named,
    help="One garage of each size for each.",
)
@click.option(
    "--seconds",
    type=click.FloatRange(0, min_open=True),
    help=f"For each contestant.  [default: {SECONDS:g}; {LONG_SECONDS:g} from "
    f"{LONG_FROM:,} faults on]",
)
@click.option(
    "--grace",
    type=click.FloatRange(0),
    default=GRACE_SECONDS,
    show_default=True,
    help="Seconds beyond that before a contestant is killed.",
)
@click.option(
    "--gap",
    type=click.FloatRange(0),
    default=1e-4,
    show_default=True,
    help="Gap that is proof enough.",
)
@click.option(
    "--threads",
    type=click.IntRange(1),
    default=os.cpu_count() or 1,
    show_default=True,
    help="For each contestant.",
)
@click.option(
    "--contestants",
    default=",".join(CONTESTANTS),
    show_default=True,
    callback=contestants_named,
    help="Who takes part.",
)
@click.option(
    "--json",
    "record",
    type=click.Path(dir_okay=False, path_type=Path),
    help="Keep all events in a file, rewritten after every run.",
)
@click.option("--resume", is_flag=True, help="Skip runs that the --json file has.")
@click.option(
    "--table",
    "target",
    type=click.File("w", encoding="utf-8", lazy=True),
    default="-",
    help="Write the Markdown tables into a file.",
)
def main(
    sizes: tuple[Size, ...],
    seeds: tuple[int, ...],
    seconds: float | None,
    grace: float,
    gap: float,
    threads: int,
    contestants: tuple[str, ...],
    record: Path | None,
    resume: bool,
    target: TextIO,
) -> None:
    """Let contestants plan the same made-up garages, each in a process of its own."""
    here = f"{machine()}, {_or_tools()}"
    before = _before(record, here) if resume else []
    cells: list[Cell] = []
    for faults, months in sizes:
        usual = LONG_SECONDS if faults >= LONG_FROM else SECONDS
        for seed in seeds:
            task = Task(
                faults=faults,
                months=months,
                seed=seed,
                seconds=seconds or usual,
                gap=gap,
                threads=threads,
            )
            for cell in _heat(task, contestants, before, grace):
                cells.append(cell)
                if record:
                    rest = [
                        one
                        for one in before
                        if not known(cells, one.contestant, one.task)
                    ]
                    write_cells(record, here, [*cells, *rest])
    target.write(f"{here}; {threads} threads, gap {gap:g}\n\n{report(cells)}\n")


def _heat(
    task: Task, contestants: Sequence[str], before: Sequence[Cell], grace: float
) -> Iterator[Cell]:
    """All contestants at one garage, one after the other."""
    cells: list[Cell] = []
    for contestant in contestants:
        asked = task
        if contestant == RELAXATION:
            best = Heat(tuple(cells)).best_early
            if best is None:
                click.echo(f"{contestant}: no early stages to hold", err=True)
                continue
            held = dict(zip(EARLY_STAGES, best, strict=True))
            asked = replace(task, held=held)
        cell = known(before, contestant, asked)
        if cell is None:
            name = f"{task.size} seed {task.seed} {contestant}"
            click.echo(f"{name} (load {load()}) ...", err=True)
            cell = run(contestant, asked, grace=grace)
            click.echo(f"{name}: {cell.ended}, {cell.took:.1f} s", err=True)
        cells.append(cell)
        yield cell


def _before(record: Path | None, here: str) -> list[Cell]:
    if record is None:
        raise click.UsageError("--resume: which file? name it with --json")
    if not record.exists():
        return []
    try:
        return read_cells(record, here)
    except (ValueError, TypeError, KeyError) as error:
        message = f"{record}: expected a file that --json wrote"
        raise click.UsageError(message) from error


def _or_tools() -> str:
    try:
        return f"OR-Tools {version('ortools')}"
    except PackageNotFoundError:
        return "no OR-Tools"


if __name__ == "__main__":
    main(prog_name="python -m tests.benchmarks.contest")
