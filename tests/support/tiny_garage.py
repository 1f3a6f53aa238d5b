"""The smallest garage, to change one thing at a time and work it out by hand."""

from fractions import Fraction
from typing import Any

from partsplan.domain import (
    ONE,
    Cure,
    Currency,
    Fault,
    Garage,
    Month,
    Option,
    Route,
    Vehicle,
)

START = Month(2027, 1)


def tiny_garage(**fields: Any) -> Garage:
    """A car with one fault and one option, three months, money and hours to spare."""
    usual: dict[str, Any] = {
        "name": "tiny",
        "currency": Currency("EUR", 2),
        "start": START,
        "months": 3,
        "budget": (1000,),
        "hours": (Fraction(100),),
        "money_per_point": ONE,
        "look_beyond": 0,
        "vehicles": (Vehicle(id="v1", name="v1"),),
        "faults": (tiny_fault(),),
        "options": (tiny_option(),),
    }
    return Garage(**usual | fields)


def tiny_fault(**fields: Any) -> Fault:
    """An open fault of 10 points."""
    usual: dict[str, Any] = {
        "id": "f1",
        "vehicle": "v1",
        "title": "noise",
        "points": Fraction(10),
    }
    return Fault(**usual | fields)


def tiny_option(**fields: Any) -> Option:
    """A new part for 12 that is there at once."""
    usual: dict[str, Any] = {
        "id": "o1",
        "fixes": (Cure(fault="f1"),),
        "route": Route.NEW,
        "price": 12,
        "currency": "EUR",
    }
    return Option(**usual | fields)


def fixes(*faults: str, relief: Fraction = ONE) -> tuple[Cure, ...]:
    """What an option does that gives each of these faults the same relief. [0-1]"""
    return tuple(Cure(fault=fault, relief=relief) for fault in faults)
