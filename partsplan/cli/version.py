"""Names the program's version and the solver's."""

from typing import Any, TypeVar

import click

from partsplan import __version__

_Command = TypeVar("_Command", bound=Any)


def version_option(command: _Command) -> _Command:
    """Adds ``--version``."""
    added: _Command = click.option(
        "--version",
        is_flag=True,
        is_eager=True,
        expose_value=False,
        callback=_show,
        help="Name the versions of partsplan and of its solver.",
    )(command)
    return added


def _show(context: click.Context, _: click.Parameter, asked: bool) -> None:
    if not asked or context.resilient_parsing:
        return
    from importlib.metadata import version

    click.echo(f"partsplan {__version__}, HiGHS {version('highspy')}")
    context.exit()
