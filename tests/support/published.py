"""Published problems of capital budgeting as garages whose best plan solves them."""

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import lcm
from pathlib import Path
from typing import Any

from partsplan.domain import (
    ONE,
    ZERO,
    Cure,
    Fault,
    Garage,
    Instalment,
    Option,
    Plan,
    Route,
    Vehicle,
)
from tests.support.building import EUR, START

DATA = Path(__file__).parents[1] / "data"
KEPT = 4
"""The vehicle is kept for this many horizons, so a quarter of a cost is charged."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Item:
    """One thing to take or leave: what it is worth and takes of each period."""

    value: Fraction
    outlays: tuple[Fraction, ...]

    @property
    def outlay(self) -> Fraction:
        """What it takes of all periods."""
        return sum(self.outlays, ZERO)


@dataclass(frozen=True, slots=True, kw_only=True)
class Published:
    """A garage, and how many minor units of its money are one of the problem."""

    garage: Garage
    scale: int

    def optimum(self, plan: Plan) -> Fraction:
        """The plan's net worth in the problem's own money."""
        return Fraction(plan.stages.net_worth, self.scale)

    def bound(self, plan: Plan) -> Fraction:
        """The plan's bound in the problem's own money."""
        return Fraction(plan.bound, self.scale)


def published(name: str) -> Any:
    """A file of published numbers, every one an exact fraction."""
    text = (DATA / name).read_text("utf-8")
    return json.loads(text, parse_float=Fraction, parse_int=Fraction)


def projects(
    values: Sequence[Fraction], outlays_by_period: Sequence[Sequence[Fraction]]
) -> list[list[Item]]:
    """Classes of one project each."""
    columns = zip(values, zip(*outlays_by_period, strict=True), strict=True)
    return [[Item(value=value, outlays=outlays)] for value, outlays in columns]


def as_garage(
    classes: Sequence[Sequence[Item]],
    budgets: Sequence[Fraction],
    *,
    carry_over: bool = False,
    after: Mapping[int, int] | None = None,
    crew: Sequence[int] = (),
    hands: int = 0,
) -> Published:
    """A garage in which a month is a period, a class a fault, an item an option.

    Every option can only be ordered in the first month; instalments spread its outlays
    over the periods. A month without the fault is worth the item's value and its
    charge, spread evenly. Classes count from 1: class a is ``after`` class b, and of
    those in the ``crew`` only as many can be taken as there are ``hands``.
    """
    periods = len(budgets)
    scale = KEPT * periods * _denominator(classes, budgets)
    worth = [
        [(item.value + item.outlay / KEPT) * scale / periods for item in items]
        for items in classes
    ]
    points = max(map(max, worth)) / 100
    faults = tuple(
        Fault(
            id=f"f{number}",
            vehicle="v1",
            title=f"class {number}",
            points=max(items) / points,
            after=(f"f{after[number]}",) if after and number in after else (),
        )
        for number, items in enumerate(worth, 1)
    )
    options = tuple(
        Option(
            id=f"o{number}-{place}",
            fixes=(Cure(fault=f"f{number}", relief=gain / max(gains)),),
            route=Route.NEW,
            price=int(item.outlay * scale),
            currency="EUR",
            instalments=_instalments(item),
            valid_until=START,
            hours=Fraction(number in crew),
        )
        for number, (items, gains) in enumerate(zip(classes, worth, strict=True), 1)
        for place, (item, gain) in enumerate(zip(items, gains, strict=True))
    )
    garage = Garage(
        name="published problem",
        currency=EUR,
        start=START,
        months=periods,
        budget=tuple(int(budget * scale) for budget in budgets),
        hours=(Fraction(hands),),
        carry_over=carry_over,
        money_per_point=points,
        look_beyond=0,
        vehicles=(
            Vehicle(id="v1", name="small hatchback", keep_months=KEPT * periods),
        ),
        faults=faults,
        options=options,
    )
    return Published(garage=garage, scale=scale)


def taken(plan: Plan) -> list[int]:
    """Numbers of the classes that a job serves, from 1."""
    return sorted(int(job.faults[0].removeprefix("f")) for job in plan.jobs)


def _denominator(classes: Sequence[Sequence[Item]], budgets: Sequence[Fraction]) -> int:
    numbers = [n for items in classes for i in items for n in (i.value, *i.outlays)]
    return lcm(*(number.denominator for number in (*numbers, *budgets)))


def _instalments(item: Item) -> tuple[Instalment, ...]:
    shares = [
        Instalment(months=month, share=outlay / item.outlay)
        for month, outlay in enumerate(item.outlays)
        if outlay
    ]
    return tuple(shares) or (Instalment(months=0, share=ONE),)
