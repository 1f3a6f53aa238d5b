"""``partsplan kinds``"""

from functools import partial

import click

from partsplan.cli.command import Command
from partsplan.cli.look import Look, look_options


@click.command(
    cls=Command,
    example="partsplan kinds brake hose",
    short_help="List the kinds of faults in the catalogue.",
)
@click.argument("word", nargs=-1)
@look_options()
def kinds(word: tuple[str, ...], look: Look) -> None:
    """List the kinds of faults in the catalogue, all or those with every WORD.

    One kind is shown in detail: its figures, what is mended with it or before it, and
    what to check before anything is bought.
    """
    from partsplan import reports, usecases

    found = usecases.kinds(word)
    look.tell(
        text=partial(reports.kinds_tables, found),
        json=partial(reports.kinds_json, found),
    )
