"""What to check for a kind of fault before anything is bought."""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from types import MappingProxyType

from partsplan.catalogue.tables import Row, read_table


@dataclass(frozen=True, slots=True, kw_only=True)
class KindCheck:
    """One cause that is usually suspected behind a kind of fault.

    Attributes
    ----------
    chance
        That it is this one. [0-1]
    check
        How to find out, with what somebody has at home.
    hours
        Own work of the check. [hours]
    """

    kind: str
    cause: str
    chance: Fraction
    check: str
    hours: Fraction


@cache
def kind_checks() -> Mapping[str, tuple[KindCheck, ...]]:
    """The usual checks by kind; what their chances leave open is something else.

    Common practice from memory, no source.
    """
    found: dict[str, tuple[KindCheck, ...]] = {}
    for one in read_table("kind_checks.csv", _kind_check):
        found[one.kind] = (*found.get(one.kind, ()), one)
    return MappingProxyType(found)


def _kind_check(row: Row) -> KindCheck:
    return KindCheck(
        kind=row.text("kind"),
        cause=row.text("cause"),
        chance=row.number("chance", most=1),
        check=row.text("check"),
        hours=row.number("hours"),
    )
