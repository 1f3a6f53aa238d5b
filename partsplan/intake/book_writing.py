"""A garage becomes a workbook that reads back as the same one."""

import re
from collections.abc import Iterator, Mapping
from decimal import Decimal
from typing import Any

from partsplan.domain import Currency
from partsplan.errors import Problem
from partsplan.intake.book_settings import KEY, SHEET, VALUE
from partsplan.intake.book_words import CURRENCIES, KINDS, places, words_sheet
from partsplan.intake.cell_texts import yes_no
from partsplan.intake.cells import IDENT, Kind, Sort
from partsplan.intake.columns import TABLES
from partsplan.intake.currency import CODE, currency
from partsplan.intake.document import Document, as_text
from partsplan.intake.explained import blank, expected, meaning
from partsplan.intake.schema import Column, Table
from partsplan.intake.setting_columns import LISTS, RATE, RATES, SETTINGS
from partsplan.intake.source import Source
from partsplan.sheets.contents import DIGITS
from partsplan.sheets.formulas import unprotected
from partsplan.sheets.tables import Record, Sheet
from partsplan.sheets.writing import (
    GENERAL,
    TEXT,
    Choices,
    Filled,
    OutColumn,
    OutSheet,
    Value,
    workbook_bytes,
)

MORE = 500
"""Blank rows below each table that offer choices, too."""

_PLAIN = re.compile(r"-?[0-9]+(\.[0-9]+)?")


def garage_workbook(source: Source) -> bytes:
    """The workbook of a garage that can be read.

    Every cell keeps what it says, blank ones stay blank, and columns that nobody reads
    stand behind the others.

    Raises
    ------
    InvalidRequest
        If a text is too long for a cell.
    """
    document, lists = source.settings(), places()
    own = currency(str(document.values["currency"]))
    tables = (_table(table, source.sheet(table), own, lists) for table in TABLES)
    return workbook_bytes([_settings(document, own, lists), *tables, words_sheet()])


def _settings(document: Document, own: Currency, lists: Mapping[str, str]) -> OutSheet:
    titles = (KEY, VALUE, "meaning", "expected", "blank means")
    texts = dict(_texts(document.values))
    rates = [key for key in texts if key.startswith(f"{RATES}.")] or [RATE.name]
    rows = []
    for setting in SETTINGS:
        for key in rates if setting is RATE else [setting.name]:
            value = _typed(texts.get(key, ""), setting.kind)
            shape = TEXT if isinstance(value, str) else _format(setting.kind, own)
            choices = None if key in LISTS else _choices(setting, lists)
            several = "; or several, with ; between them" if key in LISTS else ""
            rows.append(
                (
                    key,
                    Filled(value, shape, choices),
                    meaning(setting),
                    expected(setting) + several,
                    blank(setting),
                )
            )
    columns = tuple(
        OutColumn(title=title, number_format=GENERAL if title == VALUE else TEXT)
        for title in titles
    )
    return OutSheet(title=SHEET, columns=columns, rows=rows)


def _texts(values: Mapping[str, Any], section: str = "") -> Iterator[tuple[str, str]]:
    """All settings by key, as cells have them."""
    for key, value in values.items():
        if isinstance(value, dict):
            yield from _texts(value, f"{key}.")
        elif isinstance(value, bool):
            yield section + key, yes_no(value)
        else:
            items = value if isinstance(value, list) else [value]
            yield section + key, ";".join(as_text(one) or "" for one in items)


def _table(
    table: Table,
    sheet: Sheet | Problem | None,
    own: Currency,
    lists: Mapping[str, str],
) -> OutSheet:
    known = {column.name: column for column in table.columns}
    header: list[str] = []
    records: tuple[Record, ...] = ()
    if isinstance(sheet, Sheet):
        header, records = sheet.header.cells, sheet.records
    extra = [name for name in header if name and name not in known]
    columns = [_column(column, own, lists) for column in table.columns]
    columns += [OutColumn(title=name, number_format=TEXT) for name in extra]
    rows = []
    for record in records:
        texts = dict(zip(header, record.cells, strict=True))
        code = texts.get("currency", "")
        rows.append(
            [
                *(_cell(texts.get(name, ""), known[name], own, code) for name in known),
                *(unprotected(texts[name]) for name in extra),
            ]
        )
    return OutSheet(title=table.name, columns=tuple(columns), rows=rows, more=MORE)


def _column(column: Column, own: Currency, lists: Mapping[str, str]) -> OutColumn:
    explained = [meaning(column), f"Expected: {expected(column)}"]
    if blank(column):
        explained.append(f"Blank: {blank(column)}")
    return OutColumn(
        title=column.name,
        comment="\n".join(explained),
        number_format=_format(column.kind, own),
        choices=_choices(column, lists),
    )


def _cell(text: str, column: Column, own: Currency, code: str) -> Value:
    value = _typed(unprotected(text), column.kind)
    if not isinstance(value, Decimal) or column.kind.sort is not Sort.MONEY:
        return value
    used = currency(code) if code and column.own_money else own
    digits = max(used.digits, len(text.partition(".")[2]))
    return value if digits == own.digits else Filled(value, _decimals(digits))


def _typed(text: str, kind: Kind) -> str | Decimal | None:
    """A number where the column has numbers and a cell holds it exactly, else text."""
    if kind.sort in (Sort.NUMBER, Sort.MONEY) and _PLAIN.fullmatch(text):
        number = Decimal(text)
        if len(number.as_tuple().digits) <= DIGITS:
            return number
    return text or None


def _format(kind: Kind, own: Currency) -> str:
    if kind.sort is Sort.MONEY:
        return _decimals(own.digits)
    return GENERAL if kind.sort is Sort.NUMBER else TEXT


def _decimals(digits: int) -> str:
    return f"0.{'0' * digits}" if digits else "0"


def _choices(column: Column, lists: Mapping[str, str]) -> Choices | None:
    if column.kind.words:
        return Choices(words=column.kind.words)
    if column.name == KINDS:
        return Choices(place=lists[KINDS])
    if column.kind is CODE:
        return Choices(place=lists[CURRENCIES])
    if column.refers and column.kind is IDENT:
        return Choices(place=f"{column.refers}!$A$2:$A$9999", only=False)
    return None
