"""Figures with a decimal comma, in a folder whose garage.toml says that it has them.

A workbook has numbers, not texts of them; there the key only tells how a folder that is
made of it is to be written.
"""

import re
from collections.abc import Callable
from dataclasses import replace
from typing import Any

from partsplan.errors import Problem
from partsplan.intake.cell_texts import Unusable
from partsplan.intake.cells import Kind, Sort
from partsplan.intake.document import Document, Number
from partsplan.intake.lists import FIXES, INSTALMENTS
from partsplan.intake.schema import Table
from partsplan.intake.setting_columns import RATE, RATES, SETTINGS
from partsplan.sheets.quoting import shown
from partsplan.sheets.tables import Sheet

KEY = "decimal_comma"

_WITH_COMMA = re.compile(r"-?[0-9]+,[0-9]+")
_KIND_OF = {one.name: one.kind for one in SETTINGS}


def has_commas(document: Document) -> bool:
    """Whether the settings say so."""
    return document.values.get(KEY) is True


def sheet_with_points(sheet: Sheet, table: Table) -> Sheet:
    """A table whose figures have a point, as everything behind it expects.

    A cell that has one already stays unusable, and says why.
    """
    kinds = {column.name: column.kind for column in table.columns}
    known = [kinds.get(name) for name in sheet.header.cells]

    def cell(text: str, kind: Kind | None) -> str:
        try:
            return text if kind is None else _with_points(text, kind)
        except ValueError as error:
            return Unusable(error)

    records = tuple(
        replace(record, cells=[*map(cell, record.cells, known)])
        for record in sheet.records
    )
    return replace(sheet, records=records)


def settings_with_points(document: Document) -> Document:
    """The same for texts among the settings; numbers of TOML have a point anyway."""
    problems: list[Problem] = []

    def value_of(key: str, value: Any) -> Any:
        if isinstance(value, dict):
            return {name: value_of(f"{key}.{name}", one) for name, one in value.items()}
        if isinstance(value, list):
            return [value_of(key, one) for one in value]
        kind = RATE.kind if key.startswith(f"{RATES}.") else _KIND_OF.get(key)
        if kind is None or not isinstance(value, str) or isinstance(value, Number):
            return value
        try:
            return _with_points(value, kind)
        except ValueError as error:
            message = f"expected {kind.expects}, got {error}"
            line = document.line(*key.split("."))
            problems.append(Problem(document.file, line, key, message))
            return value

    values = {key: value_of(key, value) for key, value in document.values.items()}
    return replace(document, values=values, problems=(*document.problems, *problems))


def with_commas(text: str, kind: Kind) -> str:
    """A text of a table with its figures as such a folder has them."""
    return _changed(text, kind, lambda figure: figure.replace(".", ","))


def comma_hint(text: str, kind: Kind) -> str:
    """How to say that figures have a comma, if that seems to be what a text means."""
    if kind.sort in (Sort.NUMBER, Sort.MONEY) and _WITH_COMMA.fullmatch(text):
        return f"; if figures are written so, say {KEY} = true in garage.toml"
    return ""


def _with_points(text: str, kind: Kind) -> str:
    def change(figure: str) -> str:
        if "." in figure:
            raise ValueError(f"{shown(figure)} with a point, and {KEY} is true")
        return figure.replace(",", ".", 1)

    return _changed(text, kind, change)


def _changed(text: str, kind: Kind, change: Callable[[str], str]) -> str:
    """The text with its figures changed: all of it, or the shares of a list."""
    if kind.sort in (Sort.NUMBER, Sort.MONEY):
        return change(text)
    if kind not in (FIXES, INSTALMENTS):
        return text
    items = (item.partition(":") for item in text.split(";"))
    return ";".join(f"{what}{colon}{change(share)}" for what, colon, share in items)
