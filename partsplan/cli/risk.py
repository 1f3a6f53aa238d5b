"""``partsplan risk``"""

from functools import partial
from pathlib import Path
from typing import Any

import click

from partsplan.cli import exits
from partsplan.cli.command import Command
from partsplan.cli.garages import garage_argument
from partsplan.cli.look import Look, look_options
from partsplan.cli.planning_flags import Number, from_option, planning_flags
from partsplan.cli.progress import Bar

FEWEST, MOST = 100, 100_000
"""Futures: fewer say little, more take gigabytes."""
MOST_NEW_FAULTS = 5


@click.command(
    cls=Command,
    example="partsplan risk my-garage --new-faults 0.05",
    short_help="Tell how sure the money and the deadlines of a plan are.",
    no_args_is_help=True,
)
@garage_argument
@click.option(
    "--futures",
    type=click.IntRange(FEWEST, MOST),
    metavar="N",
    default=10_000,
    show_default=True,
    envvar="PARTSPLAN_FUTURES",
    help="Futures to draw.",
)
@click.option(
    "--seed",
    type=click.IntRange(0),
    metavar="S",
    default=0,
    show_default=True,
    envvar="PARTSPLAN_SEED",
    help="Start of the random numbers; the same gives the same answer.",
)
@click.option(
    "--new-faults",
    type=Number(0, MOST_NEW_FAULTS),
    metavar="RATE",
    default=0.0,
    show_default=True,
    envvar="PARTSPLAN_NEW_FAULTS",
    help="New faults to expect a month on each vehicle that is driven.",
)
@click.option(
    "--late",
    "late_chance",
    type=Number(0, 1),
    metavar="CHANCE",
    default=0.05,
    show_default=True,
    envvar="PARTSPLAN_LATE",
    help="Chance that a delivery slips by one month.",
)
@from_option()
@planning_flags
@look_options()
def risk(
    garage: Path,
    futures: int,
    seed: int,
    new_faults: float,
    late_chance: float,
    seconds: float,
    look: Look,
    **planning: Any,
) -> int:
    """Tell how sure the money and the deadlines of the plan for GARAGE are.

    The plan is carried out in many futures, each with its own prices, bad parts, late
    parts, refused old units and new faults.
    """
    from partsplan import reports, usecases
    from partsplan.domain import Needs, RiskSettings

    settings = RiskSettings(
        futures=futures, seed=seed, late_chance=late_chance, new_faults=new_faults
    )
    with Bar(seconds) as progress:
        answer = usecases.risk(
            garage, settings, seconds=seconds, progress=progress, **planning
        )
    plan = answer.plan
    if isinstance(plan, Needs):
        look.tell_needs(answer.garage, plan)
        return exits.IMPOSSIBLE
    assert answer.risk is not None  # there is one for every plan
    told = answer.garage, plan, answer.risk
    look.tell(
        text=partial(reports.risk_tables, *told),
        json=partial(reports.risk_json, *told),
    )
    return exits.INTERRUPTED if plan.interrupted else exits.DONE
