"""``partsplan kinds``"""

import click

from partsplan.cli.command import Command
from partsplan.cli.output import color_option, json_option, layout, write


@click.command(
    cls=Command,
    example="partsplan kinds brake hose",
    short_help="List the kinds of faults in the catalogue.",
)
@click.argument("word", nargs=-1)
@json_option
@color_option
def kinds(word: tuple[str, ...], as_json: bool, no_color: bool) -> None:
    """List the kinds of faults in the catalogue, all or those with every WORD.

    One kind is shown in detail: its figures, what is mended with it or before it, and
    what to check before anything is bought.
    """
    from partsplan import reports, usecases

    found = usecases.kinds(word)
    if as_json:
        write(reports.kinds_json(found))
    else:
        write(reports.kinds_tables(found, **layout(no_color=no_color)))
