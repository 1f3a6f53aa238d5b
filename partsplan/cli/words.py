"""``partsplan words``"""

import click

from partsplan.cli.command import Command
from partsplan.cli.output import color_option, json_option, layout, write


@click.command(
    cls=Command,
    example="partsplan words severity",
    short_help="Tell which words cells may hold, and what they mean.",
)
@click.argument("scale", required=False)
@json_option
@color_option
def words(scale: str | None, as_json: bool, no_color: bool) -> None:
    """Tell which words cells may hold and what they mean, all or one SCALE."""
    from partsplan import reports, usecases

    found = usecases.words(scale)
    if as_json:
        write(reports.words_json(found))
    else:
        write(reports.words_tables(found, **layout(no_color=no_color)))
