"""What the words of the closed lists mean to a person who fills in a table."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType

from partsplan.catalogue.tables import Row, read_table
from partsplan.errors import InvalidRequest


@dataclass(frozen=True, slots=True, kw_only=True)
class Word:
    """A value that a cell may hold, its name, and its meaning in one line."""

    value: str
    name: str
    meaning: str


def scale(name: str) -> tuple[Word, ...]:
    """The words of one scale, in their own order.

    Raises
    ------
    InvalidRequest
        If there is no scale of that name.
    """
    known = scales()
    if name not in known:
        raise InvalidRequest(f'expected one of {", ".join(known)}, got "{name}"')
    return known[name]


@cache
def scales() -> Mapping[str, tuple[Word, ...]]:
    """All scales by name, in file order.

    Severity and likelihood after MIL-STD-882E, 11 May 2012, tables I and II; inspection
    after Directive 2014/45/EU; all in our own words.
    """
    found: dict[str, tuple[Word, ...]] = {}
    for name, word in read_table("scales.csv", _word):
        found[name] = (*found.get(name, ()), word)
    return MappingProxyType(found)


def _word(row: Row) -> tuple[str, Word]:
    return row.text("scale"), Word(
        value=row.text("value"), name=row.text("name"), meaning=row.text("meaning")
    )
