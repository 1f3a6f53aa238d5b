"""Generic trouble codes that a scan tool reads from a vehicle."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType

from partsplan.catalogue.tables import Row, read_table
from partsplan.domain import System


@dataclass(frozen=True, slots=True, kw_only=True)
class TroubleCode:
    """A code of SAE J2012, and the faults it points to.

    Attributes
    ----------
    system
        That of the first kind.
    kinds
        Keys of the fault kinds behind it, most usual first: leads, no proof.
    source
        ``compared`` with lists and manuals of others, or from ``memory`` alone.
    """

    code: str
    meaning: str
    system: System
    kinds: tuple[str, ...]
    source: str


@cache
def trouble_codes() -> Mapping[str, TroubleCode]:
    """Meanings of common generic codes, by code.

    Numbers: SAE J2012 / ISO 15031-6; meanings in our own words.
    """
    codes = read_table("trouble_codes.csv", _trouble_code)
    return MappingProxyType({code.code: code for code in codes})


def codes_for(kind: str) -> tuple[str, ...]:
    """The codes that may stand for a kind of fault."""
    return tuple(one.code for one in trouble_codes().values() if kind in one.kinds)


def _trouble_code(row: Row) -> TroubleCode:
    return TroubleCode(
        code=row.text("code"),
        meaning=row.text("meaning"),
        system=row.member("system", System),
        kinds=row.words("kinds"),
        source=row.text("source"),
    )
