"""Past spending comes from a table with columns of its owner's own."""

import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from datetime import date, datetime
from pathlib import Path
from typing import Any

from partsplan.domain import Currency, EntryKind, Happening
from partsplan.errors import InvalidRequest, InvalidSpending, Problem
from partsplan.sheets import (
    Sheet,
    check_characters,
    plain,
    read_sheet,
    shown,
    unprotected,
    wrong,
)

NEEDED = ("day", "amount")
FIELDS = (*NEEDED, "text", "who", "subject")
"""What a column of the table can be."""

_EXAMPLE = date(2027, 1, 31)
_DAY = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")
_WITH_COMMA = re.compile(r"-?[0-9]{1,12}(,[0-9]+)?")

Reader = Callable[[str], date | int | str]
"""The value of a cell; raises ValueError with a message for its owner."""


def _nothing(_: Happening) -> Iterable[str]:
    return ()


def read_spending(
    path: Path,
    columns: Mapping[str, str],
    currency: Currency,
    *,
    day_format: str = "",
    decimal_comma: bool = False,
    objections: Callable[[Happening], Iterable[str]] = _nothing,
) -> tuple[Happening, ...]:
    """The rows of a CSV file as sums that were paid.

    Parameters
    ----------
    columns
        The table's column for each of ``FIELDS``; those needed, and any other. Capitals
        do not matter.
    currency
        Of all amounts.
    day_format
        How days are written, as ``strptime`` has it; YYYY-MM-DD if it is blank.
    decimal_comma
        Whether 12,50 is meant where 12.50 would stand.
    objections
        What else is wrong with a row.

    Raises
    ------
    InvalidSpending
        With everything that is wrong in the file.
    InvalidRequest
        If the columns or the format of days make no sense.
    """
    _check_columns(columns)
    readers: Mapping[str, Reader] = {
        "day": _day_reader(day_format),
        "amount": _amount_reader(currency, decimal_comma),
        "text": _text,
        "who": _text,
        "subject": _text,
    }
    sheet = read_sheet(path, [name.lower() for name in columns.values()])
    if isinstance(sheet, Problem):
        raise InvalidSpending([sheet])
    header = sheet.header.cells
    problems = [*sheet.problems, *_missing(sheet, columns)]
    places = {
        field: header.index(name.lower())
        for field, name in columns.items()
        if name.lower() in header
    }
    rows = []
    for record in sheet.records:
        values: dict[str, Any] = {}
        wrongs = []
        for field, place in places.items():
            try:
                values[field] = readers[field](record.cells[place])
            except ValueError as error:
                wrongs.append((columns[field], str(error)))
        if not wrongs and values.keys() >= {*NEEDED}:
            rows.append(Happening(kind=EntryKind.PAID, **values))
            wrongs = [("", message) for message in objections(rows[-1])]
        problems += (Problem(sheet.file, record.line, *one) for one in wrongs)
    if problems:
        raise InvalidSpending(problems)
    return tuple(rows)


def _check_columns(columns: Mapping[str, str]) -> None:
    for field in columns:
        if field not in FIELDS:
            raise InvalidRequest(
                f"no entry of spending has {shown(field)}; it has {', '.join(FIELDS)}"
            )
    for field in NEEDED:
        if not columns.get(field):
            raise InvalidRequest(f"expected the name of the column with the {field}")


def _missing(sheet: Sheet, columns: Mapping[str, str]) -> Iterator[Problem]:
    header = sheet.header
    for name in columns.values():
        if name.lower() not in header.cells:
            listed = ", ".join(map(plain, header.cells))
            message = f"no such column; there are {listed}"
            yield Problem(sheet.file, header.line, name, message)


def _day_reader(day_format: str) -> Reader:
    if not day_format:
        return _iso_day
    try:
        example = _EXAMPLE.strftime(day_format)
        understood = datetime.strptime(example, day_format).date() == _EXAMPLE
    except ValueError:
        understood = False
    if not understood:
        raise InvalidRequest(
            f"{shown(day_format)} does not say how days are written; expected a format "
            "like %d.%m.%Y"
        )

    def read(text: str) -> date:
        try:
            return datetime.strptime(text, day_format).date()
        except ValueError:
            raise wrong(f"a day like {example}", text) from None

    return read


def _iso_day(text: str) -> date:
    try:
        if _DAY.fullmatch(text):
            return date.fromisoformat(text)
    except ValueError:
        pass
    raise wrong("a day YYYY-MM-DD", text)


def _amount_reader(currency: Currency, decimal_comma: bool) -> Reader:
    def read(text: str) -> int:
        point = text
        if decimal_comma:
            example = currency.format(1250).replace(".", ",")
            if not _WITH_COMMA.fullmatch(text):
                raise wrong(f"an amount like {example}", text)
            point = text.replace(",", ".")
        if plain(text) != text:
            raise wrong(f"an amount like {currency.format(1250)}", text)
        amount = currency.parse(point)
        if amount < 0:
            raise wrong("0 or more", text)
        return amount

    return read


def _text(text: str) -> str:
    text = " ".join(unprotected(text).split())
    check_characters(text)
    return text
