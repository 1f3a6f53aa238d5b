"""The garage that a command is about: a folder, or an archive on standard input."""

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


class GaragePath(click.Path):
    """A folder that is there, or ``-`` for a tar archive of one on standard input."""

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
            self.fail("expected a tar archive on standard input", param, ctx)
        folder = ctx.with_resource(tempfile.TemporaryDirectory(prefix="garage-"))
        unpack(sys.stdin.buffer.read(), Path(folder))
        return Path(folder)


class GarageFolder(GaragePath):
    """A folder that is there; it keeps a logbook, which no archive does."""

    def convert(
        self,
        value: Any,
        param: click.Parameter | None,
        ctx: click.Context | None,
    ) -> Any:
        if value == "-":
            self.fail(
                "expected a folder; nothing can be kept in an archive", param, ctx
            )
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
        message = "expected a tar archive of a garage folder"
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
