"""The tables of the catalogue by which signs are found and matched."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from partsplan.catalogue import (
    CodeRange,
    FaultKind,
    KindLink,
    LampSign,
    SignGroup,
    TroubleCode,
    UnitSign,
)
from partsplan.domain import UNNAMED


@dataclass(frozen=True, slots=True, kw_only=True)
class SignTables:
    """What is known of codes, lamps, units and kinds of faults."""

    codes: Mapping[str, TroubleCode]
    range_of: Callable[[str], CodeRange]
    lamps: Mapping[str, LampSign]
    units: Mapping[str, UnitSign]
    groups: tuple[SignGroup, ...]
    kinds: Mapping[str, FaultKind]
    links: tuple[KindLink, ...]

    def kinds_of_code(self, code: str) -> tuple[str, ...]:
        """Kinds that a code may stand for; none where it has no meaning here."""
        return self.codes[code].kinds if code in self.codes else ()

    def silence(self, unit: str) -> str:
        """The sign that a unit does not reply: the code for it, if it has a name."""
        return f"unit:{UNNAMED}" if unit == UNNAMED else self.units[unit].code
