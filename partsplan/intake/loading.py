"""The tables of a garage, every blank filled."""

from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Any

from partsplan.domain import Assumed, Currency, Use
from partsplan.errors import Problem
from partsplan.intake.columns import FAULTS, SUPPLIERS, TABLES, VEHICLES
from partsplan.intake.currency import currency
from partsplan.intake.draft import Draft
from partsplan.intake.fill import fill
from partsplan.intake.option_columns import OPTIONS
from partsplan.intake.rows import CurrencyOf, Row, Rows, read_rows
from partsplan.intake.schema import Table
from partsplan.intake.settings_file import SettingsFile
from partsplan.intake.source import Source
from partsplan.intake.suggest import hint


def load(source: Source, file: SettingsFile) -> tuple[Draft, tuple[Assumed, ...]]:
    """All tables of a garage, and what the catalogue filled in."""
    garage = file.settings.currency

    def named(texts: Mapping[str, str]) -> Currency:
        return _currency(texts) or garage

    def read(table: Table, own: CurrencyOf = named) -> Rows:
        return _read(source, table, garage, own)

    suppliers = _defaulted(read(SUPPLIERS), lambda _: {"currency": garage.code})
    code_of = {row.key[0]: row.values["currency"] for row in reversed(suppliers.rows)}

    def option_currency(texts: Mapping[str, str]) -> Currency:
        code = code_of.get(texts.get("supplier", ""), garage.code)
        return _currency(texts) or (garage if code == garage.code else currency(code))

    options = _defaulted(
        read(OPTIONS, option_currency),
        lambda row: {
            "currency": code_of.get(row.values.get("supplier", ""), garage.code)
        },
    )
    vehicles = _defaulted(read(VEHICLES), _not_driven_if_stored)
    faults, options, assumed = fill(read(FAULTS), options, file)
    done = (vehicles, faults, options, suppliers)
    tables = {rows.table.name: rows for rows in done}
    tables |= {table.name: read(table) for table in TABLES if table.name not in tables}
    return Draft(file, tables), assumed


def _read(source: Source, table: Table, garage: Currency, own: CurrencyOf) -> Rows:
    file, sheet = source.file(table), source.sheet(table)
    if sheet is None:
        if not table.needed:
            return Rows(table, file)
        near = hint(file, source.strange(), "is it")
        sheet = Problem(file, 0, "", f"needed table is missing{near}")
    if isinstance(sheet, Problem):
        return Rows(table, file, problems=(sheet,), whole=False)
    return read_rows(table, sheet, garage, own)


def _currency(texts: Mapping[str, str]) -> Currency | None:
    """The currency that a row itself names, if it is one."""
    try:
        return currency(texts["currency"]) if texts.get("currency") else None
    except ValueError:
        return None


def _defaulted(rows: Rows, defaults: Callable[[Row], Mapping[str, Any]]) -> Rows:
    """The rows, with values for blanks that depend on other cells."""
    filled = (replace(row, values={**defaults(row), **row.values}) for row in rows.rows)
    return replace(rows, rows=tuple(filled))


def _not_driven_if_stored(row: Row) -> Mapping[str, Any]:
    return {"driven_from": None} if row.values.get("use") is Use.STORED else {}
