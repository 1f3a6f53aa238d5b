"""A garage in a folder becomes one in a workbook, and the other way round."""

import json
import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import partial
from itertools import chain
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from partsplan.domain import Month
from partsplan.errors import Problem
from partsplan.intake.book import open_book
from partsplan.intake.book_words import WORDS
from partsplan.intake.book_writing import garage_workbook
from partsplan.intake.cells import Sort
from partsplan.intake.columns import TABLES
from partsplan.intake.commas import has_commas, with_commas
from partsplan.intake.document import as_text
from partsplan.intake.reading import garage_in, opened
from partsplan.intake.schema import Table
from partsplan.intake.setting_columns import RATE, SETTINGS
from partsplan.intake.settings import FILE
from partsplan.intake.starter import FIRST_MONTH, write_starter
from partsplan.intake.writing import toml_text
from partsplan.sheets.csv_text import csv_text
from partsplan.sheets.tables import Sheet

_TOML_NUMBER = re.compile(r"-?(0|[1-9][0-9]*)(\.[0-9]+)?")
_KIND_OF = {one.name: one.kind for one in SETTINGS}


def starter_workbook(start: Month = FIRST_MONTH) -> bytes:
    """The starter garage as a workbook; its dates follow from its first month."""
    with TemporaryDirectory() as folder:
        write_starter(Path(folder), start)
        return workbook_of(Path(folder))


def workbook_of(path: Path) -> bytes:
    """The garage in a folder as a workbook.

    Raises
    ------
    InvalidGarage
        If it cannot be read.
    InvalidRequest
        If a text is too long for a cell of a workbook.
    """
    source = opened(path)
    garage_in(source)
    return garage_workbook(source)


@dataclass(frozen=True, slots=True)
class FolderTexts:
    """A garage as the files of a folder.

    Attributes
    ----------
    texts
        By the names of the files.
    left_out
        Sheets of its owner's own, for which a folder has no place.
    """

    texts: Mapping[str, str]
    left_out: tuple[str, ...]


def folder_of(path: Path) -> FolderTexts:
    """The garage in a workbook as a folder, with a file for every table.

    Raises
    ------
    InvalidGarage
        If it cannot be read.
    """
    book = open_book(path)
    garage_in(book)
    settings = book.settings()
    commas = has_commas(settings)
    tables = {table.file: _csv(table, book.sheet(table), commas) for table in TABLES}
    left_out = tuple(title for title in book.notes() if title != WORDS)
    return FolderTexts({FILE: _toml(settings.values), **tables}, left_out)


def _csv(table: Table, sheet: Sheet | Problem | None, commas: bool) -> str:
    separator = ";" if commas else ","
    written = partial(csv_text, separator=separator, line_end="\n")
    if not isinstance(sheet, Sheet):
        return written([[column.name for column in table.columns]])
    kinds = {column.name: column.kind for column in table.columns}
    named = [(place, name) for place, name in enumerate(sheet.header.cells) if name]

    def cell(text: str, name: str) -> str:
        return with_commas(text, kinds[name]) if commas and name in kinds else text

    rows = (
        [cell(record.cells[place], name) for place, name in named]
        for record in sheet.records
    )
    return written(chain([[name for _, name in named]], rows))


def _toml(values: Mapping[str, Any]) -> str:
    top = {key: one for key, one in values.items() if not isinstance(one, dict)}
    sections = {key: one for key, one in values.items() if isinstance(one, dict)}
    return toml_text(
        {
            "": {key: _toml_value(key, value) for key, value in top.items()},
            **{
                section: {
                    key: _toml_value(f"{section}.{key}", value)
                    for key, value in inside.items()
                }
                for section, inside in sections.items()
            },
        }
    )


def _toml_value(key: str, value: Any) -> str:
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, list):
        return f"[{', '.join(_toml_value(key, one) for one in value)}]"
    text = as_text(value) or ""
    sort = _KIND_OF.get(key, RATE.kind).sort
    if sort in (Sort.NUMBER, Sort.MONEY) and _TOML_NUMBER.fullmatch(text):
        return text
    return json.dumps(text, ensure_ascii=False)
