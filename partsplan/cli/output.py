"""Where an answer goes, how wide it may be, and whether it may have colour."""

import os
import shutil
import sys
import tempfile
from pathlib import Path
from typing import Any, TypeVar

import click

from partsplan.cli.settings import setting

_Command = TypeVar("_Command", bound=Any)

STDOUT = "-"
PIPED_WIDTH = 100
NARROWEST = 40


def json_option(command: _Command) -> _Command:
    """Adds ``--json``."""
    added: _Command = click.option(
        "--json", "as_json", is_flag=True, help="Print JSON for other programs."
    )(command)
    return added


def plain_option(command: _Command) -> _Command:
    """Adds ``--plain``."""
    added: _Command = click.option(
        "--plain", is_flag=True, help="Print one record a line, split by tabs."
    )(command)
    return added


def one_shape(*, as_json: bool, plain: bool) -> None:
    """Raises click.UsageError if both are asked for."""
    if as_json and plain:
        raise click.UsageError("--json and --plain exclude each other")


def color_option(command: _Command) -> _Command:
    """Adds ``--no-color``."""
    added: _Command = click.option(
        "--no-color",
        is_flag=True,
        default=lambda: not setting("color")(),
        envvar="PARTSPLAN_NO_COLOR",
        help="Print no colour; so do NO_COLOR, TERM=dumb and a pipe.",
    )(command)
    return added


def output_options(command: _Command) -> _Command:
    """Adds ``-o`` and ``--force``."""
    for option in (
        click.option(
            "--force", is_flag=True, help="Overwrite that file if it is there."
        ),
        click.option(
            "-o",
            "--output",
            metavar="FILE",
            default=STDOUT,
            help="Write into a file instead of to standard output (-).",
        ),
    ):
        command = option(command)
    return command


def layout(*, no_color: bool = False, to_file: bool = False) -> dict[str, Any]:
    """The ``width`` and ``colour`` that reports take."""
    size = shutil.get_terminal_size((PIPED_WIDTH, 24))
    terminal = sys.stdout.isatty() and not to_file
    width = PIPED_WIDTH if to_file and "COLUMNS" not in os.environ else size.columns
    plain = no_color or os.environ.get("NO_COLOR") or os.environ.get("TERM") == "dumb"
    return {"width": max(NARROWEST, width), "colour": terminal and not plain}


def may_write(target: str, *, force: bool) -> None:
    """Ask before a file is overwritten; without a terminal ``--force`` has to say so.

    Raises
    ------
    click.UsageError
        If the file is there already, or its folder is not.
    """
    if target == STDOUT:
        return
    path = Path(target)
    if not path.absolute().parent.is_dir():
        raise click.UsageError(f"-o: there is no folder {path.parent}")
    if path.is_dir():
        raise click.UsageError(f"-o: {path} is a folder")
    if force or not path.is_file():
        return
    if not (sys.stdin.isatty() and sys.stderr.isatty()):
        raise click.UsageError(f"-o: {path} is there already; --force overwrites it")
    if not click.confirm(f"{path} is there already. Overwrite it?", err=True):
        raise click.UsageError(f"-o: {path} was left as it is")


def write(text: str, target: str = STDOUT) -> None:
    """Print a text, or write it into a file that appears whole or not at all."""
    if target == STDOUT:
        sys.stdout.write(f"{text}\n")
        sys.stdout.flush()
        return
    path = Path(target).resolve()
    if path.exists() and not path.is_file():  # a pipe or a device is written to
        path.write_text(f"{text}\n", encoding="utf-8")
        return
    descriptor, made = tempfile.mkstemp(dir=path.parent, prefix=".partsplan-")
    try:
        with os.fdopen(descriptor, "w", encoding="utf-8") as file:
            file.write(f"{text}\n")
        mask = os.umask(0)
        os.umask(mask)
        os.chmod(made, 0o666 & ~mask)
        os.replace(made, path)
    except BaseException:
        Path(made).unlink(missing_ok=True)
        raise
