"""Which faults keep a warning lamp lit."""

from collections.abc import Collection

from partsplan.diagnosis.present import present
from partsplan.domain import Garage, Lamp


def lamps(garage: Garage, cured: Collection[str] = ()) -> tuple[Lamp, ...]:
    """The lamps of all faults that are not fixed, and what keeps each lit.

    A lamp is out only when every fault that lights it is cured; ``cured`` are ids of
    faults that are taken as cured. A watched fault keeps its lamp lit.
    """
    lit: dict[tuple[str, str], list[str]] = {}
    for fault in present(garage):
        for name in fault.lamps:
            by = lit.setdefault((fault.vehicle, name), [])
            if fault.id not in cured:
                by.append(fault.id)
    return tuple(
        Lamp(vehicle=vehicle, name=name, lit_by=tuple(by))
        for (vehicle, name), by in lit.items()
    )
