"""The garage that a command is about: a folder, a workbook, or standard input."""

import io
import os
import sys
import tarfile
import tempfile
from collections.abc import Iterator
from pathlib import Path, PurePosixPath
from typing import Any

import click
from click.shell_completion import CompletionItem

from partsplan.errors import InvalidGarage, PartsplanError, Problem

KEPT = (".toml", ".csv")
STDIN = "standard input"
WORKBOOK = "garage.xlsx"
ZIP = b"PK"
_UNPACKED = f"{__name__}.unpacked"


class GaragePath(click.Path):
    """A folder or a workbook that is there.

    Or ``-`` for a tar archive of a folder, or a workbook, on standard input.
    """

    name = "garage"

    def __init__(self) -> None:
        super().__init__(exists=True, allow_dash=True)

    def convert(
        self,
        value: Any,
        param: click.Parameter | None,
        ctx: click.Context | None,
    ) -> Any:
        found = super().convert(value, param, ctx)
        if found != "-" or ctx is None:
            return Path(os.fsdecode(found))
        if ctx.resilient_parsing or sys.stdin.isatty():
            message = "expected a tar archive or a workbook on standard input"
            self.fail(message, param, ctx)
        folder = ctx.with_resource(tempfile.TemporaryDirectory(prefix="garage-"))
        ctx.meta[_UNPACKED] = True
        return _received(sys.stdin.buffer.read(), Path(folder))


def from_archive() -> bool:
    """Whether the garage of this command came as an archive, which keeps nothing."""
    return bool(click.get_current_context().meta.get(_UNPACKED))


class GarageFolder(GaragePath):
    """A folder or a workbook that is there; what comes by a pipe keeps no logbook."""

    def convert(
        self,
        value: Any,
        param: click.Parameter | None,
        ctx: click.Context | None,
    ) -> Any:
        if value == "-":
            message = "expected a folder or a workbook; an archive keeps nothing"
            self.fail(message, param, ctx)
        return super().convert(value, param, ctx)


class FaultId(click.ParamType[str]):
    """The id of a fault; the shell completes those of the garage named before it."""

    name = "fault"

    def shell_complete(
        self, ctx: click.Context, param: click.Parameter, incomplete: str
    ) -> list[CompletionItem]:
        # an option that still lacks its value leaves the arguments unread
        folder = ctx.params.get("garage") or next(iter(ctx.args), None)
        try:
            known = self.known(Path(folder), ctx) if folder else ()
        except PartsplanError:
            return []  # a garage with mistakes completes nothing; "check" names them
        return [CompletionItem(one) for one in known if one.startswith(incomplete)]

    def known(self, folder: Path, ctx: click.Context) -> tuple[str, ...]:
        """The ids that may stand here, after what was written before."""
        from partsplan import usecases

        return usecases.fault_ids(folder)


class Subject(FaultId):
    """The id of a fault or of an option."""

    name = "fault or option"

    def known(self, folder: Path, ctx: click.Context) -> tuple[str, ...]:
        """The ids that may stand here, after what was written before."""
        from partsplan import usecases

        return (*usecases.fault_ids(folder), *usecases.option_ids(folder))


def _received(content: bytes, folder: Path) -> Path:
    """What came on standard input, put into a folder; the garage's path."""
    if content.startswith(ZIP):
        (folder / WORKBOOK).write_bytes(content)
        return folder / WORKBOOK
    unpack(content, folder)
    return folder


def unpack(archive: bytes, folder: Path) -> None:
    """Write the tables of a tar archive into a folder, whatever folder they were in.

    Raises
    ------
    InvalidGarage
        If it is no tar archive.
    """
    try:
        for name, content in _tables(archive):
            (folder / name).write_bytes(content)
    except tarfile.TarError as error:
        message = "expected a tar archive of a garage folder, or an .xlsx workbook"
        raise InvalidGarage([Problem(STDIN, 0, "", message)]) from error


def _tables(archive: bytes) -> Iterator[tuple[str, bytes]]:
    with tarfile.open(fileobj=io.BytesIO(archive)) as members:
        for member in members:
            content = members.extractfile(member) if member.isfile() else None
            name = PurePosixPath(member.name).name
            if content is not None and name.endswith(KEPT):
                yield name, content.read()


garage_argument = click.argument("garage", type=GaragePath())
garage_folder_argument = click.argument("garage", type=GarageFolder())
