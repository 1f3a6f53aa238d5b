"""``partsplan steady``"""

from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from partsplan.cli import exits
from partsplan.cli.command import Command
from partsplan.cli.garages import garage_argument
from partsplan.cli.many import PlansBar, many_flags
from partsplan.cli.output import color_option, json_option, layout, write
from partsplan.cli.planning_flags import from_option, planning_flags

if TYPE_CHECKING:
    from partsplan.usecases import SteadyAnswer

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
@json_option
@color_option
def steady(
    garage: Path,
    jobs: int | None,
    cluster: str,
    as_json: bool,
    no_color: bool,
    **planning: Any,
) -> int:
    """Tell how far settings may move before GARAGE buys other parts next.

    The worth of a point, each weight and the reserve are moved alone, and each time
    everything is planned anew.
    """
    from partsplan import usecases

    bar = PlansBar(most=MOST_PLANS)
    with bar, usecases.executor(jobs, cluster) as executor:
        answer = usecases.steady(garage, executor=executor, tell=bar.count, **planning)
    write(_rendered(answer, as_json=as_json, look=layout(no_color=no_color)))
    found = answer.sensitivity
    if found is None:
        return exits.IMPOSSIBLE
    return exits.INTERRUPTED if found.interrupted else exits.DONE


def _rendered(answer: "SteadyAnswer", *, as_json: bool, look: dict[str, Any]) -> str:
    from partsplan import reports
    from partsplan.domain import Needs

    garage, plan, found = answer.garage, answer.plan, answer.sensitivity
    if found is None:
        assert isinstance(plan, Needs)
        if as_json:
            return reports.needs_json(garage, plan)
        return reports.needs_tables(garage, plan, **look)
    if as_json:
        return reports.steady_json(garage, found)
    return reports.steady_tables(garage, found, **look)
