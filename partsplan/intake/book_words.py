"""The sheet of a workbook that explains its cells, and lists what they may hold."""

from collections.abc import Iterator, Mapping
from itertools import groupby

from partsplan import catalogue
from partsplan.intake.cells import LONGEST_ID
from partsplan.sheets.writing import TEXT, OutColumn, OutSheet

WORDS = "notes words"
"""It begins as sheets do that are not read."""

KINDS = "kind"
CURRENCIES = "currency"

_ADVICE = (
    ("ids", f"names of your own, at most {LONGEST_ID} characters, without ; and :"),
    ("months", "YYYY-MM as text, or a date in that month"),
    ("lists", "items in one cell, with ; between them"),
    ("numbers", "decimal, like 0.25, or as text a fraction, like 1/3; shares are 0-1"),
    ("amounts", "of the garage's currency, or of the row's own where a column says so"),
    ("formulas", "count with the value that the workbook holds for them"),
    ("blank rows", "are left out, and so are columns without a name and content"),
    ("sheets", "of your own begin with notes, like this one, and are not read"),
)


def words_sheet() -> OutSheet:
    """Advice, the words of all closed lists, fault kinds and currencies."""
    columns = tuple(
        OutColumn(title=title, number_format=TEXT)
        for title in ("for", "word", "meaning")
    )
    return OutSheet(title=WORDS, columns=columns, rows=tuple(_rows()))


def places() -> Mapping[str, str]:
    """The cells that hold the words of each list."""
    found = {}
    first = 2
    for name, rows in groupby(_rows(), key=lambda row: row[0]):
        last = first + sum(1 for _ in rows) - 1
        found[name] = f"'{WORDS}'!$B${first}:$B${last}"
        first = last + 1
    return found


def _rows() -> Iterator[tuple[str, str, str]]:
    for about, advice in _ADVICE:
        yield "how to write", about, advice
    for name, words in catalogue.scales().items():
        for word in words:
            named = "" if word.name == word.value else f"{word.name}: "
            yield name, word.value, f"{named}{word.meaning}"
    for kind in catalogue.fault_kinds().values():
        yield KINDS, kind.key, kind.title
    for code in catalogue.currencies():
        yield CURRENCIES, code, ""
