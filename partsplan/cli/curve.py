"""``partsplan curve``"""

from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from partsplan.cli import exits
from partsplan.cli.command import Command
from partsplan.cli.garages import garage_argument
from partsplan.cli.look import Look, look_options
from partsplan.cli.many import PlansBar, many_flags
from partsplan.cli.output import may_write, output_options
from partsplan.cli.planning_flags import from_option, planning_flags

if TYPE_CHECKING:
    from partsplan.domain import BudgetCurve

MOST_SUMS = 500


@click.command(
    cls=Command,
    example="partsplan curve my-garage --from 100 --to 400",
    short_help="Tell what other monthly sums would buy.",
    no_args_is_help=True,
)
@garage_argument
@click.option(
    "--from",
    "lowest",
    metavar="AMOUNT",
    envvar="PARTSPLAN_FROM",
    help="Smallest monthly sum; half the budget unless set.",
)
@click.option(
    "--to",
    "highest",
    metavar="AMOUNT",
    envvar="PARTSPLAN_TO",
    help="Largest monthly sum; twice the budget unless set.",
)
@click.option(
    "--steps",
    type=click.IntRange(2, MOST_SUMS),
    metavar="N",
    envvar="PARTSPLAN_STEPS",
    help="Try N sums, evenly apart, instead of looking for those where plans change.",
)
@click.option(
    "--plans",
    type=click.IntRange(2, MOST_SUMS),
    metavar="N",
    default=60,
    show_default=True,
    envvar="PARTSPLAN_PLANS",
    help="Most sums to try in that search.",
)
@from_option("--from-month")
@planning_flags
@many_flags
@look_options()
@output_options
def curve(
    garage: Path,
    steps: int | None,
    plans: int,
    jobs: int | None,
    cluster: str,
    look: Look,
    output: str,
    force: bool,
    **planning: Any,
) -> int:
    """Tell what other monthly sums would buy for GARAGE.

    Each sum stands for the money of every month and is planned for. The plan for a
    bigger one is not always that for a smaller one and more.
    """
    may_write(output, force=force)

    from partsplan import reports, usecases

    bar = PlansBar(most=(steps or plans) + 1)  # the garage's own sum comes on top
    with bar, usecases.executor(jobs, cluster) as executor:
        answer = usecases.curve(
            garage,
            executor=executor,
            steps=steps,
            most_plans=plans,
            tell=bar.count,
            **planning,
        )
    told = answer.garage, answer.curve, answer.usual
    look.tell(
        text=partial(reports.curve_tables, *told),
        json=partial(reports.curve_json, *told),
        output=output,
    )
    return _code(answer.curve)


def _code(curve: "BudgetCurve") -> int:
    from partsplan.domain import Needs

    if curve.interrupted:
        return exits.INTERRUPTED
    if all(isinstance(point.found, Needs) for point in curve.points):
        return exits.IMPOSSIBLE
    return exits.DONE
