"""A Garage becomes a folder that reads back as the same Garage."""

import json
import os
import shutil
from collections.abc import Iterable, Iterator, Mapping
from contextlib import suppress
from fractions import Fraction
from pathlib import Path
from typing import Any

from partsplan.domain import Garage
from partsplan.errors import InvalidRequest
from partsplan.intake.columns import FAULTS, TABLES, VEHICLES
from partsplan.intake.currency import currency
from partsplan.intake.option_columns import OPTIONS
from partsplan.intake.schema import Table
from partsplan.intake.settings import FILE
from partsplan.sheets.csv_text import csv_text
from partsplan.sheets.decimals import decimal
from partsplan.sheets.formulas import protected


def write_garage(garage: Garage, folder: Path) -> None:
    """Write a garage with explicit values for everything; old files are replaced.

    Raises
    ------
    InvalidRequest
        If the folder or a file in it cannot be written.
    """
    texts = {table.file: _csv(table, garage) for table in TABLES}
    write_texts(folder, {FILE: _toml(garage), **texts})


def write_texts(folder: Path, texts: Mapping[str, str]) -> None:
    """Write files by name; each appears whole or not at all.

    Raises
    ------
    InvalidRequest
        If the folder or a file in it cannot be written.
    """
    path = folder
    try:
        folder.mkdir(parents=True, exist_ok=True)
        for name, text in texts.items():
            path = folder / name
            _write(path, text)
    except OSError as error:
        raise InvalidRequest(f"{path}: cannot be written: {error.strerror}") from error


def _write(path: Path, text: str) -> None:
    beside = path.with_name(f".{path.name}.{os.getpid()}.part")
    try:
        beside.write_text(text, encoding="utf-8", newline="")
        if path.exists():  # who may read it stays as it was
            shutil.copymode(path, beside)
        os.replace(beside, path)
    finally:
        with suppress(OSError):
            beside.unlink()


def _csv(table: Table, garage: Garage) -> str:
    header = (column.name for column in table.columns)
    facts = getattr(garage, table.name)
    rows = [header, *(_cells(table, garage, fact) for fact in facts)]
    return csv_text(rows, line_end="\n")


def _cells(table: Table, garage: Garage, fact: Any) -> Iterator[str]:
    """The cells of one row; none is blank that would be filled when it is read."""
    own = currency(getattr(fact, "currency", garage.currency.code))
    filled = _may_be_filled(table, garage, fact)
    for column in table.columns:
        value = getattr(fact, column.name)
        used = own if column.own_money else garage.currency
        text = "" if value is None else column.kind.write(value, used)
        yield protected(text or (column.kind.nothing if filled else ""))


def _may_be_filled(table: Table, garage: Garage, fact: Any) -> bool:
    """Whether blanks may be filled: by a vehicle's use, or by the kind of a fault."""
    if table is FAULTS:
        return bool(fact.kind)
    if table is OPTIONS:
        return any(garage.fault[cure.fault].kind for cure in fact.fixes)
    return table is VEHICLES


def _toml(garage: Garage) -> str:
    own = garage.currency
    rates = {
        code: _number(rate * currency(code).unit / own.unit)
        for code, rate in garage.rates.items()
        if code != own.code
    }
    temperatures = garage.mean_temperature
    sections = {
        "": {
            "name": json.dumps(garage.name, ensure_ascii=False),
            "currency": f'"{own.code}"',
            "start": f'"{garage.start}"',
            "months": str(garage.months),
            "budget": _list(map(own.format, garage.budget)),
            "hours": _list(map(_number, garage.hours)),
            "opening_cash": own.format(garage.opening_cash),
            "carry_over": _flag(garage.carry_over),
            "reserve": own.format(garage.reserve),
            "money_per_point": _number(garage.money_per_point / own.unit),
            "hour_value": own.format(garage.hour_value),
            "tax_rate": _number(garage.tax_rate),
            "look_beyond": str(garage.look_beyond),
            "core_trust": _number(garage.core_trust),
            "allow_risky_routes": _flag(garage.allow_risky_routes),
            "discount_rate": _number(garage.discount_rate),
            "priority": _list(f'"{stage}"' for stage in garage.priority),
        },
        "weights": {
            "safety": _number(garage.weights.safety),
            "drivability": _number(garage.weights.drivability),
            "enjoyment": _number(garage.weights.enjoyment),
        },
        "rates": rates,
        "workshop": {
            **(
                {"mean_temperature": _list(map(_number, temperatures))}
                if temperatures
                else {"heated": "true"}
            ),
            "coding_tool": _flag(garage.coding_tool),
        },
    }
    return toml_text(sections)


def toml_text(sections: Mapping[str, Mapping[str, str]]) -> str:
    """A TOML file of values as they are written there; the first section is ""."""
    return "\n".join(_toml_lines(sections))


def _toml_lines(sections: Mapping[str, Mapping[str, str]]) -> Iterator[str]:
    for section, values in sections.items():
        if section:
            yield ""
            yield f"[{section}]"
        for key, value in values.items():
            yield f"{key} = {value}"
    yield ""


def _list(items: Iterable[str]) -> str:
    return f"[{', '.join(items)}]"


def _flag(value: bool) -> str:
    return "true" if value else "false"


def _number(value: Fraction) -> str:
    """Decimal text, or a quoted fraction where decimals do not end."""
    text = decimal(value)
    return f'"{text}"' if "/" in text else text
