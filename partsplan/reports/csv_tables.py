"""The tables of a text as CSV files, by RFC 4180.

A text is made once more with bare figures, and each table that is put on its page is
kept; so programs get what is shown, and nothing else.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from contextvars import ContextVar

from partsplan.reports.locales import BARE, written_in
from partsplan.reports.tables import Column
from partsplan.sheets import csv_text, protected

Rows = list[list[str]]
"""The titles of the columns, then the cells."""

WIDE = 1000
"""A page so wide leaves nothing out. [characters]"""

_KEPT: ContextVar[dict[str, Rows] | None] = ContextVar("tables", default=None)


def csv_tables(text: Callable[..., str]) -> Mapping[str, str]:
    """All tables of a text as CSV, by their names; ``text`` takes a ``width``."""
    with written_in(BARE), _kept() as tables:
        text(width=WIDE)
    return {name: safe_csv(rows) for name, rows in tables.items()}


def safe_csv(rows: Sequence[Sequence[str]]) -> str:
    """The rows as CSV, none of whose cells a spreadsheet takes for a formula."""
    return csv_text(map(protected, row) for row in rows)


def keep(
    name: str,
    columns: Sequence[Column],
    rows: Sequence[Sequence[str]],
    of: tuple[str, str] | None = None,
) -> None:
    """Keep a table, if somebody wants it; see ``Page.table``."""
    tables = _KEPT.get()
    if tables is None:
        return
    titles, values = ([of[0]], [of[1]]) if of else ([], [])
    titles += [_title(column) for column in columns]
    known = tables.setdefault(name, [titles])
    if known[0] != titles:
        raise ValueError(f"two tables named {name} have other columns")
    known += [[*values, *row] for row in rows]


def _title(column: Column) -> str:
    return f"{column.title} [{column.unit}]" if column.unit else column.title


@contextmanager
def _kept() -> Iterator[dict[str, Rows]]:
    tables: dict[str, Rows] = {}
    before = _KEPT.set(tables)
    try:
        yield tables
    finally:
        _KEPT.reset(before)
