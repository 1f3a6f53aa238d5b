"""Which signs a garage has written down already."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from partsplan.domain import Fault, FaultStatus, Garage, Signs
from partsplan.signs.found_codes import find_codes
from partsplan.signs.groups import present
from partsplan.signs.names import Names
from partsplan.signs.tables import SignTables


@dataclass(frozen=True, slots=True)
class Known:
    """What is new, what is known from which fault, and what came back.

    Attributes
    ----------
    known
        Codes and lamps (as ``lamp:abs``) of faults that are not fixed, with the fault.
    fixed
        Faults that are marked as fixed, by the codes they showed.
    """

    new: Signs
    known: tuple[tuple[str, str], ...]
    fixed: dict[str, list[str]]


def against_garage(
    garage: Garage, vehicle: str, signs: Signs, tables: SignTables
) -> Known:
    """The signs of a text against the faults of a vehicle, watched ones too.

    A code counts as written down in ``codes`` or in a title.
    """
    faults = [one for one in garage.faults if one.vehicle == vehicle]
    lamps = Names(
        {word: one.lamp for one in tables.lamps.values() for word in one.words}
    )
    shown: dict[str, str] = {}
    fixed: dict[str, list[str]] = {}
    for fault in faults:
        for sign in _signs(fault, lamps):
            if fault.status is FaultStatus.FIXED:
                fixed.setdefault(sign, []).append(fault.id)
            else:
                shown.setdefault(sign, fault.id)
    there = present(signs, tables)
    return Known(
        new=replace(
            signs,
            codes=tuple(one for one in signs.codes if one.code not in shown),
            units=tuple(one for one in signs.units if tables.silence(one) not in shown),
            lamps=tuple(one for one in signs.lamps if f"lamp:{one}" not in shown),
        ),
        known=tuple((one, shown[one]) for one in there if one in shown),
        fixed=fixed,
    )


def _signs(fault: Fault, lamps: Names) -> Iterator[str]:
    yield from (code.upper() for code in fault.codes)
    yield from (one.code for one in find_codes(fault.title))
    for lamp in fault.lamps:
        yield f"lamp:{lamp}"
        yield from (f"lamp:{one}" for one in lamps.signs(lamp))
