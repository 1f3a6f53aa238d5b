"""``partsplan beside``"""

from functools import partial
from pathlib import Path

import click

from partsplan.cli.command import Command
from partsplan.cli.garages import GaragePath, garage_argument
from partsplan.cli.look import Look, look_options
from partsplan.cli.planning_flags import from_option, solver_flags
from partsplan.cli.progress import Bar
from partsplan.cli.whatif import code_of


@click.command(
    cls=Command,
    example="partsplan beside my-garage my-garage-in-march",
    short_help="Set the plans of two garages side by side.",
    no_args_is_help=True,
)
@garage_argument
@click.argument("other", type=GaragePath())
@click.option(
    "--first",
    metavar="KIND=VALUE",
    multiple=True,
    help='A change of the first garage, such as "budget=200".',
)
@click.option(
    "--second",
    metavar="KIND=VALUE",
    multiple=True,
    help="A change of the second.",
)
@from_option()
@solver_flags
@look_options()
def beside(
    garage: Path,
    other: Path,
    first: tuple[str, ...],
    second: tuple[str, ...],
    from_month: str | None,
    seconds: float,
    gap: float,
    threads: int,
    look: Look,
) -> int:
    """Plan GARAGE and OTHER, and tell what differs and which inputs make it so.

    OTHER may be the same garage, planned in another way: --second budget=240. The kinds
    of changes are the flags of "partsplan whatif".
    """
    asked, other_asked = _asked("--first", first), _asked("--second", second)

    from partsplan import reports, usecases

    with Bar(2 * seconds) as progress:
        plans = usecases.beside(
            garage,
            other,
            asked=asked,
            other_asked=other_asked,
            from_month=from_month,
            seconds=seconds,
            gap=gap,
            threads=threads,
            progress=progress,
        )
    look.tell(
        text=partial(reports.beside_tables, plans),
        json=partial(reports.beside_json, plans),
    )
    return code_of(plans)


def _asked(flag: str, texts: tuple[str, ...]) -> list[tuple[str, str]]:
    """Kinds and values of changes."""
    pairs = [text.partition("=") for text in texts]
    for text, (kind, equals, _) in zip(texts, pairs, strict=True):
        if not (kind and equals):
            raise click.UsageError(f'{flag}: expected KIND=VALUE, got "{text}"')
    return [(kind, value) for kind, _, value in pairs]
