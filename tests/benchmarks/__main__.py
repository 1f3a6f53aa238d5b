"""``python -m tests.benchmarks``: how long a plan takes, phase by phase."""

import json
import sys
from collections.abc import Mapping
from concurrent.futures import ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from dataclasses import asdict
from multiprocessing import get_context
from pathlib import Path
from typing import Any, TextIO

import click

from partsplan.errors import PartsplanError
from tests.benchmarks import tables
from tests.benchmarks.arguments import Size, earlier_run, seeds_named, sizes_named
from tests.benchmarks.commands import Command, measure_commands
from tests.benchmarks.machine import load, machine
from tests.benchmarks.measuring import Measured, measure

SCENARIOS = Path(__file__).parents[2] / "scenarios"


@click.command()
@click.option(
    "--sizes",
    default="12x6,30x6,30x12,100x12",
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
    type=click.FloatRange(0),
    default=30.0,
    show_default=True,
    help="Longest solver run.",
)
@click.option(
    "--gap",
    type=click.FloatRange(0),
    default=1e-4,
    show_default=True,
    help="Gap that is proof enough.",
)
@click.option("--plan/--no-plan", default=True, help="Plan, or stop at the model.")
@click.option("--scenarios", is_flag=True, help="Measure whole commands, too.")
@click.option(
    "--json",
    "target",
    type=click.File("w", encoding="utf-8", lazy=False, atomic=True),
    help="Write all figures into a file.",
)
@click.option(
    "--compare",
    type=click.Path(exists=True, dir_okay=False, path_type=Path),
    callback=earlier_run,
    help="A file that --json wrote; print new over old.",
)
def main(
    sizes: tuple[Size, ...],
    seeds: tuple[int, ...],
    seconds: float,
    gap: float,
    plan: bool,
    scenarios: bool,
    target: TextIO | None,
    compare: tuple[str, list[Measured]] | None,
) -> None:
    """Measure planning on made-up garages, each in a process of its own.

    Phases are medians over the seeds: processor time, but for the solver's own clock.
    """
    click.echo(f"{machine()}; load {load()}; {seconds:g} s at most, gap {gap:g}\n")
    limits = {"seconds": seconds, "gap": gap, "plan": plan}
    found = [_alone(*size, seed, limits) for size in sizes for seed in seeds]
    groups = tables.by_size(found)
    shown = [tables.times(groups), tables.models(groups)]
    if plan:
        shown.append(tables.plans(found))
    commands: list[Command] = []
    if scenarios:
        commands = measure_commands(SCENARIOS, seconds)
        shown.append(tables.whole_commands(commands))
    if compare:
        shown += [f"old: {compare[0]}", tables.ratios(found, compare[1])]
    click.echo("\n\n".join(shown))
    if target:
        told = {
            "machine": machine(),
            "limits": limits,
            "garages": [asdict(one) for one in found],
            "commands": [asdict(one) for one in commands],
        }
        target.write(json.dumps(told, indent=1) + "\n")
    if any(one.violations for one in found) or any(one.exit_code for one in commands):
        sys.exit(1)


def _alone(faults: int, months: int, seed: int, limits: Mapping[str, Any]) -> Measured:
    """Measures one garage in a new process, so that its memory is its own."""
    name = f"{faults}x{months} seed {seed}"
    click.echo(f"{name} ...", err=True)
    with ProcessPoolExecutor(1, mp_context=get_context("spawn")) as process:
        try:
            return process.submit(measure, faults, months, seed, **limits).result()
        except PartsplanError as error:
            raise click.ClickException(f"{name}: {error}") from error
        except BrokenProcessPool as error:
            raise click.ClickException(f"{name}: the process was killed") from error


if __name__ == "__main__":
    main(prog_name="python -m tests.benchmarks")
