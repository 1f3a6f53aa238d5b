"""The last look at a plan before anybody sees it."""

from typing import TypeVar

from partsplan.domain import Garage, Needs, Plan
from partsplan.errors import UnsoundPlan

_Found = TypeVar("_Found", Plan, Needs, Plan | Needs, Plan | Needs | None)


def sound(garage: Garage, found: _Found) -> _Found:
    """What was found, a plan only if it passes its verification.

    Raises
    ------
    UnsoundPlan
    """
    from partsplan.verification import violations

    if isinstance(found, Plan) and (broken := violations(garage, found)):
        raise UnsoundPlan(broken)
    return found
