"""A tiny garage to change at will: one vehicle, one fault, one option."""

from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction
from typing import Any

from partsplan.domain import (
    Cure,
    Currency,
    Fault,
    Garage,
    Instalment,
    Month,
    Option,
    Purchase,
    Route,
    Vehicle,
)

EUR = Currency("EUR", 2)
START = Month(2027, 1)


def garage(**changes: Any) -> Garage:
    """Three months with money and hours for the only option, unless changed.

    Doing without ``f1`` is worth 50.00 a month, ``o1`` costs 100.00.
    """
    facts: dict[str, Any] = {
        "name": "one car",
        "currency": EUR,
        "start": START,
        "months": 3,
        "budget": (20000,),
        "hours": (Fraction(8),),
        "money_per_point": Fraction(100),
        "look_beyond": 0,
        "vehicles": (vehicle(),),
        "faults": (fault(),),
        "options": (option(),),
    }
    return Garage(**facts | changes)


def vehicle(name: str = "v1", /, **changes: Any) -> Vehicle:
    """A small hatchback that is driven every day."""
    facts: dict[str, Any] = {"id": name, "name": "small hatchback"}
    return Vehicle(**facts | changes)


def fault(name: str = "f1", /, **changes: Any) -> Fault:
    """A fault of 50 points that harms nobody."""
    facts: dict[str, Any] = {
        "id": name,
        "vehicle": "v1",
        "title": f"fault {name}",
        "points": Fraction(50),
    }
    return Fault(**facts | changes)


def option(name: str = "o1", /, *fixes: str, **changes: Any) -> Option:
    """A new part for 100.00; each of ``fixes`` is a fault or ``fault:relief``."""
    facts: dict[str, Any] = {
        "id": name,
        "fixes": cures(fixes or ("f1",)),
        "route": Route.NEW,
        "price": 10000,
        "currency": "EUR",
    }
    return Option(**facts | changes)


def bought(name: str = "o1", /, *fixes: str, **changes: Any) -> Option:
    """A part that was bought in the month before the first and waits to be fitted."""
    facts = {"price": 0, "bought": Purchase(month=START.plus(-1))}
    return option(name, *fixes, **facts | changes)


def cures(texts: Iterable[str]) -> tuple[Cure, ...]:
    """Cures written as in an option's cell, such as ``f1`` or ``f1:0.5``."""
    parts = (text.partition(":") for text in texts)
    return tuple(
        Cure(fault=name, relief=Fraction(relief or 1)) for name, _, relief in parts
    )


def instalments(text: str) -> tuple[Instalment, ...]:
    """Instalments written as in an option's cell, such as ``0:0.25;1:0.75``."""
    parts = (part.split(":") for part in text.split(";"))
    return tuple(
        Instalment(months=int(months), share=Fraction(share)) for months, share in parts
    )


def richer(made: Garage, money: int) -> Garage:
    """With that much more in the first month."""
    return replace(made, opening_cash=made.opening_cash + money)


def longer(made: Garage, hours: Fraction) -> Garage:
    """With that many more own hours in every month."""
    return replace(made, hours=tuple(one + hours for one in made.hours))
