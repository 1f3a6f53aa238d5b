"""How an answer is written: for whom, or for which programs, with or without tables."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import partial, wraps
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar

import click

from partsplan.cli.output import STDOUT, json_option, layout, write, write_tables
from partsplan.cli.settings import setting

if TYPE_CHECKING:
    from partsplan.domain import Garage, Needs
    from partsplan.reports import Locale

_Command = TypeVar("_Command", bound=Any)

TEXT, JSON, PLAIN = "text", "json", "plain"


class ReaderLocale(click.ParamType["Locale | None"]):
    """A way to write sums, months and days; None is the plain one."""

    name = "locale"

    def convert(
        self,
        value: Any,
        param: click.Parameter | None,
        ctx: click.Context | None,
    ) -> "Locale | None":
        if not value:
            return None
        from partsplan.reports import LOCALES

        known = {code.lower(): locale for code, locale in LOCALES.items()}
        found = known.get(str(value).lower())
        if found is None:
            self.fail(
                f"expected one of {', '.join(LOCALES)}, got {value!r}", param, ctx
            )
        return found


class NewFolder(click.ParamType[Path]):
    """A folder that is empty, or not there yet, but could be made."""

    name = "folder"

    def convert(
        self,
        value: Any,
        param: click.Parameter | None,
        ctx: click.Context | None,
    ) -> Path:
        path = Path(value)
        try:
            if path.is_dir() and any(path.iterdir()):
                self.fail(f"{path} is not empty; name a new folder", param, ctx)
            if path.exists() and not path.is_dir():
                self.fail(f"{path} is no folder", param, ctx)
            if not path.absolute().parent.is_dir():
                self.fail(f"there is no folder {path.parent}", param, ctx)
        except OSError as error:
            self.fail(f"{path} cannot be read: {error.strerror}", param, ctx)
        return path


@dataclass(frozen=True, slots=True)
class Look:
    """How one answer is written.

    Attributes
    ----------
    shape
        Text, JSON, or one record a line.
    locale
        How sums, months and days of a text are written; None for the plain way.
    tables
        The folder for the tables of a text, if they are wanted in files, too.
    headed
        Whether the text has headings, which may be bold or red.
    """

    shape: str = TEXT
    no_color: bool = False
    locale: "Locale | None" = None
    tables: Path | None = None
    headed: bool = True

    def tell(
        self,
        *,
        text: Callable[..., str],
        json: Callable[[], str],
        plain: Callable[[], str] | None = None,
        tables: Callable[[], Mapping[str, str]] | None = None,
        output: str = STDOUT,
    ) -> None:
        """Write the answer.

        ``text`` takes a ``width`` and, if it has headings, ``colour``; ``tables`` gives
        the tables as CSV by their names where the text does not show them all.
        """
        if self.shape == JSON:
            write(json(), output)
        elif self.shape == PLAIN and plain:
            write(plain(), output)
        else:
            self.show(text, tables=tables, output=output)

    def tell_needs(
        self, garage: "Garage", needs: "Needs", output: str = STDOUT
    ) -> None:
        """Write why no plan is possible; there are no tables."""
        from partsplan import reports

        json = partial(reports.needs_json, garage, needs)
        text = partial(reports.needs_tables, garage, needs)
        plain = partial(reports.needs_plain, garage, needs)
        self.tell(text=text, json=json, plain=plain, output=output)

    def show(
        self,
        text: Callable[..., str],
        *,
        tables: Callable[[], Mapping[str, str]] | None = None,
        output: str = STDOUT,
    ) -> None:
        """Write a text, and its tables into their folder."""
        from partsplan import reports

        look = layout(no_color=self.no_color, to_file=output != STDOUT)
        if not self.headed:
            del look["colour"]
        with reports.written_in(self.locale or reports.PLAIN):
            shown = text(**look)
        write(shown, output)
        if self.tables:
            write_tables(tables() if tables else reports.csv_tables(text), self.tables)


def look_options(
    *, plain: bool = False, headed: bool = True, tables: bool = True
) -> Callable[[_Command], _Command]:
    """Adds the flags for how an answer is written; the command gets a ``look``.

    Always ``--json`` and ``--locale``; ``--plain``, ``--no-color`` if the text is
    ``headed``, and ``--tables`` if it has any.
    """
    flags = [
        json_option,
        *[_PLAIN] * plain,
        _LOCALE,
        *[_TABLES] * tables,
        *[_COLOR] * headed,
    ]

    def dressed(command: _Command) -> _Command:
        @wraps(command)
        def told(*args: Any, **given: Any) -> Any:
            look = Look(
                shape=_shape(given.pop("as_json"), given.pop("as_plain", False)),
                no_color=given.pop("no_color", False),
                locale=given.pop("locale"),
                tables=given.pop("tables", None),
                headed=headed,
            )
            if look.tables and look.shape != TEXT:
                raise click.UsageError(
                    f"--tables and --{look.shape} exclude each other"
                )
            return command(*args, look=look, **given)

        made: Any = told
        for flag in reversed(flags):
            made = flag(made)
        added: _Command = made
        return added

    return dressed


def _shape(as_json: bool, as_plain: bool) -> str:
    if as_json and as_plain:
        raise click.UsageError("--json and --plain exclude each other")
    return JSON if as_json else PLAIN if as_plain else TEXT


_PLAIN = click.option(
    "--plain",
    "as_plain",
    is_flag=True,
    help="Print one record a line, split by tabs.",
)
_TABLES = click.option(
    "--tables",
    type=NewFolder(),
    metavar="FOLDER",
    help="Write its tables as CSV files into a new folder, too.",
)
_COLOR = click.option(
    "--no-color",
    is_flag=True,
    default=lambda: not setting("color")(),
    envvar="PARTSPLAN_NO_COLOR",
    help="Print no colour; so do NO_COLOR, TERM=dumb and a pipe.",
)
_LOCALE = click.option(
    "--locale",
    type=ReaderLocale(),
    metavar="CODE",
    default=setting("locale"),
    envvar="PARTSPLAN_LOCALE",
    help="Write sums and dates as in de, en-GB, en-US, fr and others.",
)
