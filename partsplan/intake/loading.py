"""The tables of a garage folder, every blank filled."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any

from partsplan.domain import Assumed, Currency, Use
from partsplan.errors import InvalidGarage, Problem
from partsplan.intake.columns import FAULTS, SUPPLIERS, TABLES, VEHICLES
from partsplan.intake.currency import currency
from partsplan.intake.draft import Draft
from partsplan.intake.fill import fill
from partsplan.intake.option_columns import OPTIONS
from partsplan.intake.rows import CurrencyOf, Row, Rows, read_rows
from partsplan.intake.schema import Table
from partsplan.intake.settings_file import SettingsFile
from partsplan.intake.suggest import Suggester, hint
from partsplan.sheets.quoting import one_line
from partsplan.sheets.tables import read_sheet


def load(folder: Path, file: SettingsFile) -> tuple[Draft, tuple[Assumed, ...]]:
    """All tables of a folder, and what the catalogue filled in."""
    garage = file.settings.currency

    def named(texts: Mapping[str, str]) -> Currency:
        return _currency(texts) or garage

    def read(table: Table, own: CurrencyOf = named) -> Rows:
        return _read(folder / table.file, table, garage, own)

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
    faults, options, assumed = fill(read(FAULTS), options, file.settings)
    done = (vehicles, faults, options, suppliers)
    tables = {rows.table.name: rows for rows in done}
    tables |= {table.name: read(table) for table in TABLES if table.name not in tables}
    return Draft(file.settings, file.unsure, tables), assumed


def check_folder(folder: Path) -> None:
    """The folder is there and can be listed; raises InvalidGarage."""
    try:
        next(folder.iterdir(), None)
        return
    except FileNotFoundError:
        message = "no such folder"
    except NotADirectoryError:
        message = "expected a folder, got a file"
    except OSError as error:
        message = f"cannot be read: {error.strerror}"
    except ValueError as error:
        message = f"cannot be read: {error}"
    raise InvalidGarage([Problem(one_line(str(folder)), 0, "", message)])


def misnamed_files(folder: Path) -> Iterator[Problem]:
    """CSV files that are no tables, but nearly have the name of one that is absent."""
    absent = Suggester(
        table.file for table in TABLES if not (folder / table.file).exists()
    )
    for path in _strange_files(folder):
        if near := absent.hint(path.name):
            yield Problem(one_line(path.name), 0, "", f"not read{near}")


def _strange_files(folder: Path) -> list[Path]:
    known = {table.file for table in TABLES}
    return sorted(
        path
        for path in folder.iterdir()
        if path.suffix.lower() == ".csv" and path.name not in known
    )


def _read(path: Path, table: Table, garage: Currency, own: CurrencyOf) -> Rows:
    if not path.exists() and not path.is_symlink():
        if not table.needed:
            return Rows(table)
        names = [one.name for one in _strange_files(path.parent)]
        message = f"needed table is missing{hint(path.name, names, 'is it')}"
        return Rows(table, problems=(Problem(path.name, 0, "", message),), whole=False)
    sheet = read_sheet(path, [column.name for column in table.columns])
    if isinstance(sheet, Problem):
        return Rows(table, problems=(sheet,), whole=False)
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
