"""The sheet of keys and values as settings."""

from collections.abc import Iterator
from typing import Any

from partsplan.errors import Problem
from partsplan.intake.cell_texts import Unusable, any_text, as_text
from partsplan.intake.cells import YES_NO, Kind, Sort
from partsplan.intake.document import Document, unreadable
from partsplan.intake.setting_columns import LISTS, RATE, RATES, SECTIONS, SETTINGS
from partsplan.intake.settings import UNKNOWN
from partsplan.intake.suggest import hint
from partsplan.sheets.contents import Content
from partsplan.sheets.formulas import unprotected
from partsplan.sheets.quoting import plain, shown
from partsplan.sheets.workbooks import Grid, GridRow

SHEET = "garage"
KEY = "key"
VALUE = "value"

_KIND_OF = {one.name: one.kind for one in SETTINGS}


def settings_document(grid: Grid | None) -> Document:
    """What the sheet says; rows without a value say nothing.

    Only the columns ``key`` and ``value`` are read.
    """
    if grid is None:
        return unreadable(Problem(SHEET, 0, "", "needed sheet is missing"))
    if not grid.rows:
        message = f"empty; expected a header like {KEY}, {VALUE}"
        return unreadable(Problem(SHEET, 0, "", message))
    header, *rows = grid.rows
    names = [any_text(one).lower() for one in header.cells]
    for name in (KEY, VALUE):
        if name not in names:
            message = "needed column is missing"
            return unreadable(Problem(SHEET, header.line, name, message))
    reader = _Reader()
    for row in rows:
        key = _cell(row, names.index(KEY))
        reader.take(row.line, any_text(key), _cell(row, names.index(VALUE)))
    return Document(
        SHEET, reader.values, reader.lines, tuple(reader.problems), dotted=True
    )


def _cell(row: GridRow, place: int) -> Content | None:
    return row.cells[place] if place < len(row.cells) else None


class _Reader:
    """Takes row after row."""

    def __init__(self) -> None:
        self.values: dict[str, Any] = {}
        self.lines: dict[str, int] = {}
        self.problems: list[Problem] = []

    def take(self, line: int, key: str, content: Content | None) -> None:
        """One row: its key and what stands beside it."""
        first = self.lines.setdefault(key, line)
        if content is None:
            return
        field = plain(key)
        try:
            kind = _kind(key)
            section, _, inner = key.rpartition(".")
            values = self.values.setdefault(section, {}) if section else self.values
            if inner in values:
                raise ValueError(f"expected each key once (first in line {first})")
            self.lines[key] = line
            values[inner] = _value(key, content, kind)
        except ValueError as error:
            self.problems.append(Problem(SHEET, line, field, str(error)))


def _kind(key: str) -> Kind:
    """What a key may hold; raises ValueError if there is no such key."""
    if key in _KIND_OF:
        return _KIND_OF[key]
    if key.startswith(f"{RATES}."):
        return RATE.kind
    if not key:
        raise ValueError("expected a key beside this value")
    if key in SECTIONS:
        inside = next(name for name in _KIND_OF if name.startswith(f"{key}."))
        raise ValueError(f"expected a key like {shown(inside)}")
    raise ValueError(f"no such key{_hint(key)}")


def _hint(key: str) -> str:
    """The key that was meant: the same one in a section, or one much like it."""
    last = key.rpartition(".")[2]
    for known in _KIND_OF:
        if known.rpartition(".")[2] == last:
            return f"; did you mean {shown(known)}?"
    return hint(key, _KIND_OF)


def _value(key: str, content: Content, kind: Kind) -> Any:
    """The value as garage.toml would have it."""
    text = as_text(content, kind)
    if isinstance(text, Unusable):
        raise ValueError(f"expected {kind.expects}, got {text}")
    text = unprotected(text)
    if kind.sort is Sort.YES_NO:
        return YES_NO.read(text, UNKNOWN)
    if key not in LISTS:
        return text
    items = list(_items(text))
    return items if len(items) > 1 else text


def _items(text: str) -> Iterator[str]:
    return (item for part in text.split(";") if (item := part.strip()))
