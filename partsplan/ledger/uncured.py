"""Which faults are still there."""

from collections.abc import Iterator

from partsplan.domain import Fault, FaultStatus, Garage, Ledger, Month, Part, PartState


def uncured(garage: Garage, ledger: Ledger, month: Month) -> tuple[Fault, ...]:
    """Faults that are not fixed and that no part on a car cures, by the garage's order.

    A part cures from its fitting until its life is over; those of vehicles that are
    gone by that month are left out.
    """
    cured = frozenset(cures_of(garage, ledger, month, PartState.FITTED))
    return tuple(
        fault
        for fault in garage.faults
        if fault.status is not FaultStatus.FIXED
        and fault.id not in cured
        and garage.index(month) < garage.vehicle[fault.vehicle].keep_months
    )


def cures_of(
    garage: Garage, ledger: Ledger, month: Month, *states: PartState
) -> Iterator[str]:
    """Faults that parts in those states cure, if not now then once they are fitted."""
    for part in ledger.parts.values():
        option = garage.option.get(part.option)
        if option and part.state in states and not _worn(part, option.life, month):
            yield from (cure.fault for cure in option.fixes if cure.cures)


def _worn(part: Part, life: int | None, month: Month) -> bool:
    if part.fitted is None or life is None:
        return False
    return month >= Month.of(part.fitted).plus(life)
