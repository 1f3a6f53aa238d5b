"""Rows of text become rows of values, column by column."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from partsplan.domain import Currency
from partsplan.errors import Problem
from partsplan.intake.cell_texts import Unusable
from partsplan.intake.commas import comma_hint
from partsplan.intake.schema import Column, Table
from partsplan.intake.suggest import Suggester
from partsplan.sheets.characters import check_characters
from partsplan.sheets.formulas import is_formula, unprotected
from partsplan.sheets.quoting import shown
from partsplan.sheets.tables import Sheet

CurrencyOf = Callable[[Mapping[str, str]], Currency]
"""The currency of a row's own amounts, from its texts by column."""


@dataclass(frozen=True, slots=True)
class Row:
    """The values of the cells that are neither blank nor wrong, by column.

    Attributes
    ----------
    key
        The texts that tell it apart from other rows, right or wrong.
    wrong
        Columns of cells that hold something, but nothing that can be used.
    """

    line: int
    key: tuple[str, ...]
    values: Mapping[str, Any]
    wrong: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True)
class Rows:
    """One table of values, and what is wrong or odd about it.

    Attributes
    ----------
    file
        The file or sheet that it stands in, or would.
    stray
        Cells of rows that could not be read; some may be ids.
    whole
        Whether all rows and their ids are there, but for the stray ones.
    """

    table: Table
    file: str
    rows: tuple[Row, ...] = ()
    problems: tuple[Problem, ...] = ()
    warnings: tuple[Problem, ...] = ()
    stray: frozenset[str] = frozenset()
    whole: bool = True


def read_rows(
    table: Table, sheet: Sheet, garage_currency: Currency, own_currency: CurrencyOf
) -> Rows:
    """The values of a sheet; amounts in the currency that their column asks for."""
    problems = [*sheet.problems, *_missing_columns(table, sheet)]
    column_of = {column.name: column for column in table.columns}
    places = [
        (place, column_of[name])
        for place, name in enumerate(sheet.header.cells)
        if name in column_of
    ]
    in_folder = sheet.file == table.file
    rows = []
    for record in sheet.records:
        texts = {column.name: record.cells[place] for place, column in places}
        own = own_currency(texts)
        values: dict[str, Any] = {}
        wrong = []
        for place, column in places:
            text = record.cells[place]
            if not text and not column.needed:
                continue
            try:
                currency = own if column.own_money else garage_currency
                values[column.name] = _value(column, text, currency)
            except ValueError as error:
                wrong.append(column.name)
                hint = comma_hint(text, column.kind) if in_folder else ""
                problems.append(
                    Problem(sheet.file, record.line, column.name, f"{error}{hint}")
                )
        key = tuple(values.get(name, texts.get(name, "")) for name in table.key)
        rows.append(Row(record.line, key, values, frozenset(wrong)))
    problems.extend(_repeated(table, sheet.file, rows))
    unused = tuple(_unused_columns(table, sheet))
    whole = sheet.whole and set(table.key) <= set(sheet.header.cells)
    return Rows(
        table,
        sheet.file,
        tuple(rows),
        tuple(problems),
        unused,
        stray=sheet.stray,
        whole=whole,
    )


def _value(column: Column, text: str, currency: Currency) -> Any:
    if not text:
        raise ValueError(f"expected {column.kind.expects}, got a blank cell")
    if isinstance(text, Unusable):
        raise ValueError(f"expected {column.kind.expects}, got {text}")
    if is_formula(text):
        raise ValueError(
            f"expected no formula, got {shown(text)}; put ' before it if it is text"
        )
    text = unprotected(text)
    check_characters(text, many_lines=column.kind.many_lines)
    return column.kind.read(text, currency)


def _missing_columns(table: Table, sheet: Sheet) -> Iterator[Problem]:
    names = {column.name for column in table.columns}
    unknown = Suggester(name for name in sheet.header.cells if name not in names)
    for column in table.columns:
        if column.needed and column.name not in sheet.header.cells:
            message = f"needed column is missing{unknown.hint(column.name, 'is it')}"
            yield Problem(sheet.file, sheet.header.line, column.name, message)


def _unused_columns(table: Table, sheet: Sheet) -> Iterator[Problem]:
    names = Suggester(column.name for column in table.columns)
    known = {column.name for column in table.columns}
    for name in sheet.header.cells:
        if name and name not in known:
            message = f"column {shown(name)} is not used{names.hint(name)}"
            yield Problem(sheet.file, sheet.header.line, "", message)


def _repeated(table: Table, file: str, rows: list[Row]) -> Iterator[Problem]:
    """No two rows have the same key."""
    first: dict[tuple[str, ...], int] = {}
    for row in rows:
        if not all(row.key):
            continue
        line = first.setdefault(row.key, row.line)
        if line != row.line:
            named = " and ".join(table.key)
            shown_key = ", ".join(shown(text) for text in row.key)
            yield Problem(
                file,
                row.line,
                table.key[-1],
                f"expected each {named} once, got {shown_key} again "
                f"(first in line {line})",
            )
