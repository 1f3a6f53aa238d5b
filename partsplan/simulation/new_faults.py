"""Faults that nobody has written down yet."""

import numpy as np

from partsplan.domain import (
    NEW_FAULT_MEDIAN,
    NEW_FAULT_SPREAD,
    Garage,
    RiskSettings,
    Vehicle,
)
from partsplan.simulation.arrays import Counts, whole
from partsplan.simulation.streams import stream


def new_faults(garage: Garage, vehicle: Vehicle, settings: RiskSettings) -> Counts:
    """What new faults of a vehicle cost, a row a future and a column a month.

    Their number is Poisson in each month in which the vehicle is driven, their cost
    log-normal; each is paid at once and takes no own hours. [minor units]
    """
    shape = settings.futures, garage.months
    driven = [garage.driven(vehicle, month) for month in range(garage.months)]
    if not settings.new_faults or not any(driven):
        return np.zeros(shape, np.int64)
    dice = stream(settings.seed, "new faults", vehicle.id)
    number = dice.poisson(settings.new_faults, shape) * np.array(driven)
    costs = dice.lognormal(0.0, float(NEW_FAULT_SPREAD), int(number.sum()))
    costs *= float(NEW_FAULT_MEDIAN * garage.mean_budget)
    cell = np.repeat(np.arange(number.size), number.ravel())
    return whole(np.bincount(cell, costs, number.size).reshape(shape))
