"""How people name warning lamps and control units."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType

from partsplan.catalogue.tables import Row, read_table


@dataclass(frozen=True, slots=True, kw_only=True)
class LampSign:
    """A lamp of the scale ``lamp``, its names in small letters, and what may light it.

    ``kinds`` are keys of fault kinds, most usual first; none where the lamp alone says
    too little.
    """

    lamp: str
    words: tuple[str, ...]
    kinds: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class UnitSign:
    """A control unit, its names in small letters, and the code for its silence."""

    unit: str
    words: tuple[str, ...]
    code: str


@cache
def lamp_signs() -> Mapping[str, LampSign]:
    """All lamps by name; common practice, no source."""
    lamps = read_table("lamp_signs.csv", _lamp_sign)
    return MappingProxyType({one.lamp: one for one in lamps})


@cache
def unit_signs() -> Mapping[str, UnitSign]:
    """All control units by name; common practice, no source."""
    units = read_table("unit_signs.csv", _unit_sign)
    return MappingProxyType({one.unit: one for one in units})


def _lamp_sign(row: Row) -> LampSign:
    return LampSign(
        lamp=row.text("lamp"), words=row.words("words"), kinds=row.words("kinds")
    )


def _unit_sign(row: Row) -> UnitSign:
    return UnitSign(
        unit=row.text("unit"), words=row.words("words"), code=row.text("code")
    )
