"""What ``enter`` takes: the kind of an entry, and what it is about."""

from pathlib import Path
from typing import TYPE_CHECKING, Any

import click
from click.shell_completion import CompletionItem

from partsplan.cli.garages import FaultId

if TYPE_CHECKING:
    from partsplan.domain import EntryKind


class Kind(click.ParamType["EntryKind"]):
    """What an entry says has happened."""

    name = "kind"

    def convert(
        self,
        value: Any,
        param: click.Parameter | None,
        ctx: click.Context | None,
    ) -> "EntryKind":
        from partsplan.domain import EntryKind
        from partsplan.usecases.unknown import unknown

        if value not in tuple(EntryKind):
            self.fail(str(unknown("kind of entry", value, EntryKind)), param, ctx)
        return EntryKind(value)

    def shell_complete(
        self, ctx: click.Context, param: click.Parameter, incomplete: str
    ) -> list[CompletionItem]:
        from partsplan.domain import EntryKind

        return [CompletionItem(one) for one in EntryKind if one.startswith(incomplete)]


class About(FaultId):
    """An id that an entry of the kind named before it may be about."""

    name = "subject"

    def known(self, folder: Path, ctx: click.Context) -> tuple[str, ...]:
        """The ids that may stand here, after what was written before."""
        from partsplan import usecases

        kind = ctx.params["kind"]  # None if it is none
        return usecases.subjects(folder, kind) if kind else ()
