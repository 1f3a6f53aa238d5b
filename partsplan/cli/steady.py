"""``partsplan steady``"""

from functools import partial
from pathlib import Path
from typing import Any

import click

from partsplan.cli import exits
from partsplan.cli.command import Command
from partsplan.cli.garages import garage_argument
from partsplan.cli.look import Look, look_options
from partsplan.cli.many import PlansBar, many_flags
from partsplan.cli.planning_flags import from_option, planning_flags

MOST_PLANS = 200
"""Five settings, two ends each, some twenty plans an end at the very most."""


@click.command(
    cls=Command,
    example="partsplan steady my-garage",
    short_help="Tell how sure the next purchases are if settings move.",
    no_args_is_help=True,
)
@garage_argument
@from_option()
@planning_flags
@many_flags
@look_options()
def steady(
    garage: Path,
    jobs: int | None,
    cluster: str,
    look: Look,
    **planning: Any,
) -> int:
    """Tell how far settings may move before GARAGE buys other parts next.

    The worth of a point, each weight and the reserve are moved alone, and each time
    everything is planned anew.
    """
    from partsplan import reports, usecases
    from partsplan.domain import Needs

    bar = PlansBar(most=MOST_PLANS)
    with bar, usecases.executor(jobs, cluster) as executor:
        answer = usecases.steady(garage, executor=executor, tell=bar.count, **planning)
    found = answer.sensitivity
    if found is None:
        assert isinstance(answer.plan, Needs)
        look.tell_needs(answer.garage, answer.plan)
        return exits.IMPOSSIBLE
    look.tell(
        text=partial(reports.steady_tables, answer.garage, found),
        json=partial(reports.steady_json, answer.garage, found),
    )
    return exits.INTERRUPTED if found.interrupted else exits.DONE
