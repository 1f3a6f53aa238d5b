"""``partsplan words``"""

from functools import partial

import click

from partsplan.cli.command import Command
from partsplan.cli.look import Look, look_options


@click.command(
    cls=Command,
    example="partsplan words severity",
    short_help="Tell which words cells may hold, and what they mean.",
)
@click.argument("scale", required=False)
@look_options()
def words(scale: str | None, look: Look) -> None:
    """Tell which words cells may hold and what they mean, all or one SCALE."""
    from partsplan import reports, usecases

    found = usecases.words(scale)
    look.tell(
        text=partial(reports.words_tables, found),
        json=partial(reports.words_json, found),
    )
