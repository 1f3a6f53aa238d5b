"""How people name warning lamps and control units."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType

from partsplan.catalogue.tables import Row, read_table
from partsplan.catalogue.words import scale
from partsplan.domain import System


@dataclass(frozen=True, slots=True, kw_only=True)
class LampSign:
    """A lamp of the scale ``lamp``, and what may light it.

    Attributes
    ----------
    name
        As a heading would say it.
    words
        What people call it, in small letters.
    kinds
        Keys of fault kinds, most usual first; none where the lamp alone says too
        little.
    """

    lamp: str
    name: str
    system: System
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
        lamp=row.text("lamp"),
        name=_name(row.text("lamp")),
        system=row.member("system", System),
        words=row.words("words"),
        kinds=row.words("kinds"),
    )


def _name(lamp: str) -> str:
    return next((word.name for word in scale("lamp") if word.value == lamp), lamp)


def _unit_sign(row: Row) -> UnitSign:
    return UnitSign(
        unit=row.text("unit"), words=row.words("words"), code=row.text("code")
    )
