"""Optima of the small garages, worked out once for all tests."""

from functools import cache

from partsplan.domain import Garage
from tests.support.carried_garages import carried_garage
from tests.support.reference import Best, best
from tests.support.small_garages import small_garage


@cache
def small_optimum(seed: int) -> tuple[Garage, Best | None]:
    """The small garage of that seed and a best choice; None if none is legal."""
    garage = small_garage(seed)
    return garage, best(garage)


@cache
def carried_optimum(seed: int) -> tuple[Garage, Best | None]:
    """The same for the carried garage."""
    garage = carried_garage(seed)
    return garage, best(garage)
