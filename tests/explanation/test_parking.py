"""Vehicles that had better be parked until a plan has made them safe."""

from dataclasses import replace
from typing import Any

import pytest

from partsplan.domain import Garage, Inspection, Month, Parking, ParkVehicle, Plan
from partsplan.explanation import changed, parkings, spared
from partsplan.planning import plan
from tests.support.building import fault, garage, option
from tests.support.small_garages import small_garage

FEBRUARY = Month(2027, 2)


def dangerous(**changes: Any) -> Garage:
    """A car that must not be driven until it is repaired, in February at best."""
    return garage(
        faults=(fault(inspection=Inspection.DANGEROUS),),
        options=(option(lead_days=20),),
        **changes,
    )


def test_a_vehicle_is_better_parked_until_it_is_safe() -> None:
    made = dangerous()
    found = plan(made)
    assert isinstance(found, Plan)
    assert parkings(made, found) == (
        Parking(vehicle="v1", months=(0,), until=FEBRUARY),
    )
    parked, _ = changed(made, [ParkVehicle(vehicle="v1", until=FEBRUARY)])
    other = plan(parked)
    assert isinstance(other, Plan)
    assert parkings(parked, other) == ()
    assert other.stages.unsafe_vehicle_months == 0
    assert spared(made, parked, other)[0].months == (0,)


def test_a_vehicle_that_nothing_makes_safe_is_better_parked_for_good() -> None:
    made = replace(dangerous(), options=())
    found = plan(made)
    assert isinstance(found, Plan)
    assert parkings(made, found) == (
        Parking(vehicle="v1", months=(0, 1, 2), until=None),
    )


@pytest.mark.parametrize("seed", range(12))
def test_parked_as_told_the_same_jobs_leave_no_unsafe_month(seed: int) -> None:
    made = small_garage(seed)
    found = plan(made)
    if not isinstance(found, Plan):
        return
    parked, _ = changed(
        made,
        [
            ParkVehicle(vehicle=one.vehicle, until=one.until)
            for one in parkings(made, found)
        ],
    )
    assert parkings(parked, found) == ()
