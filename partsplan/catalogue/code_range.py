"""Ranges of trouble codes: who gives them their meaning, and what they are about."""

from dataclasses import dataclass
from enum import StrEnum
from functools import cache

from partsplan.catalogue.tables import Row, read_table
from partsplan.domain import System


class CodeOwner(StrEnum):
    """Who gives the codes of a range their meaning."""

    GENERIC = "generic"
    MAKER = "maker"
    RESERVED = "reserved"


@dataclass(frozen=True, slots=True, kw_only=True)
class CodeRange:
    """All codes that begin with ``prefix``, where no longer prefix fits.

    Attributes
    ----------
    systems
        Parts of the vehicle whose cautions matter for such a code.
    """

    prefix: str
    owner: CodeOwner
    name: str
    systems: tuple[System, ...]


def code_range(code: str) -> CodeRange:
    """The range of a well-formed code, in capital letters.

    Owners after SAE J2012 / ISO 15031-6; names in our own words.
    """
    fitting = (one for one in code_ranges() if code.startswith(one.prefix))
    return max(fitting, key=lambda one: len(one.prefix))


@cache
def code_ranges() -> tuple[CodeRange, ...]:
    """All ranges in file order."""
    return read_table("code_ranges.csv", _code_range)


def _code_range(row: Row) -> CodeRange:
    return CodeRange(
        prefix=row.text("prefix"),
        owner=row.member("owner", CodeOwner),
        name=row.text("name"),
        systems=row.members("systems", System),
    )
