"""Where an answer goes, how wide it may be, and whether it may have colour."""

import os
import shutil
import sys
import tempfile
from collections.abc import Mapping
from pathlib import Path
from typing import Any, TypeVar

import click

_Command = TypeVar("_Command", bound=Any)

STDOUT = "-"
WORKBOOK = ".xlsx"
PIPED_WIDTH = 100
NARROWEST = 40


def json_option(command: _Command) -> _Command:
    """Adds ``--json``."""
    added: _Command = click.option(
        "--json", "as_json", is_flag=True, help="Print JSON for other programs."
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


def may_write(target: str, *, force: bool, flag: str = "-o") -> None:
    """Ask before a file is overwritten; without a terminal ``--force`` has to say so.

    ``flag`` is what named the file.

    Raises
    ------
    click.UsageError
        If the file is there already, or its folder is not.
    """
    if target == STDOUT:
        return
    path = Path(target)
    if not path.absolute().parent.is_dir():
        raise click.UsageError(f"{flag}: there is no folder {path.parent}")
    if path.is_dir():
        raise click.UsageError(f"{flag}: {path} is a folder")
    if force or not path.is_file():
        return
    if not (sys.stdin.isatty() and sys.stderr.isatty()):
        message = f"{flag}: {path} is there already; --force overwrites it"
        raise click.UsageError(message)
    if not click.confirm(f"{path} is there already. Overwrite it?", err=True):
        raise click.UsageError(f"{flag}: {path} was left as it is")


def may_write_workbook(target: str, *, force: bool, flag: str) -> None:
    """The same for a workbook, which other programs know by its name's end.

    Raises
    ------
    click.UsageError
    """
    if not target.lower().endswith(WORKBOOK):
        message = f"{flag}: expected a name that ends in {WORKBOOK}, got {target}"
        raise click.UsageError(message)
    may_write(target, force=force, flag=flag)


def write(text: str, target: str = STDOUT) -> None:
    """Print a text, or write it into a file that appears whole or not at all."""
    if target == STDOUT:
        sys.stdout.write(f"{text}\n")
        sys.stdout.flush()
    else:
        lines = f"{text}\n".replace("\n", os.linesep)
        _write_file(lines.encode(), Path(target).resolve())


def write_bytes(content: bytes, target: str = STDOUT) -> None:
    """The same for what is to be written to the byte."""
    if target == STDOUT:
        sys.stdout.buffer.write(content)
        sys.stdout.flush()
    else:
        _write_file(content, Path(target).resolve())


def write_tables(tables: Mapping[str, str], folder: Path) -> None:
    """Write each table, CSV by its name, into a folder, which is made if need be."""
    folder.mkdir(exist_ok=True)
    for name, content in tables.items():
        _write_file(content.encode(), (folder / f"{name}.csv").resolve())


def _write_file(content: bytes, path: Path) -> None:
    if path.exists() and not path.is_file():  # a pipe or a device is written to
        path.write_bytes(content)
        return
    descriptor, made = tempfile.mkstemp(dir=path.parent, prefix=".partsplan-")
    try:
        with os.fdopen(descriptor, "wb") as file:
            file.write(content)
        mask = os.umask(0)
        os.umask(mask)
        os.chmod(made, 0o666 & ~mask)
        os.replace(made, path)
    except BaseException:
        Path(made).unlink(missing_ok=True)
        raise
