"""Options of made-up garages: two to four ways to mend each fault, and more."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import pairwise
from random import Random

from partsplan.domain import (
    Coding,
    Cure,
    Fault,
    Instalment,
    Month,
    Option,
    Route,
    System,
)

MEDIAN_PRICE = 8000
"""Of a new part. [minor units]"""
SPREAD = 1.0
"""Standard deviation of the logarithm of its price: one in twenty costs five times
as much and more."""

BEHIND_PANEL = 0.36
WITH_TOOL = 0.2
WITH_STAND_IN = 0.1
WITH_ANOTHER = 0.08
AGAINST_RULES = 0.05
"""Share of faults whose routes are drawn from all."""

PRICE_FACTOR = {
    Route.NEW: 1.0,
    Route.OEM_SPEC: 0.8,
    Route.EXCHANGE: 0.65,
    Route.SEND_IN: 0.7,
    Route.USED: 0.3,
    Route.UPRATED: 1.3,
    Route.ECONOMY: 0.45,
    Route.STAND_IN: 0.12,
    Route.REFINISH: 0.25,
    Route.WORKSHOP: 2.0,
}
"""Price of a route as a share of the new part's; invented."""
SOUND = (
    Route.NEW,
    Route.OEM_SPEC,
    Route.EXCHANGE,
    Route.SEND_IN,
    Route.UPRATED,
    Route.WORKSHOP,
)
ROUGH = (Route.USED, Route.ECONOMY)
COSMETIC = (Route.NEW, Route.USED, Route.UPRATED, Route.REFINISH, Route.WORKSHOP)
STRICT = frozenset(
    {System.BRAKES, System.STEERING, System.TYRES, System.FUEL, System.RESTRAINT}
)
"""Systems whose parts never come by rough routes here."""
AT_ONCE = (Instalment(months=0, share=Fraction(1)),)
HALVES = (
    Instalment(months=0, share=Fraction(1, 2)),
    Instalment(months=1, share=Fraction(1, 2)),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Shelf:
    """What the options draw on.

    Attributes
    ----------
    panels
        Access groups of each vehicle.
    """

    suppliers: Sequence[str]
    panels: Mapping[str, Sequence[str]]
    tools: Sequence[str]
    start: Month
    months: int


@dataclass(frozen=True, slots=True, kw_only=True)
class _Work:
    """What the options of one fault have in common. [minor units], [h]"""

    price: float
    hours: Fraction
    access: tuple[str, ...]
    tools: tuple[str, ...]


def made_up_options(
    dice: Random, faults: Sequence[Fault], shelf: Shelf
) -> tuple[Option, ...]:
    """Two to four lasting options a fault, alike for a pair, and some besides."""
    works: dict[str, _Work] = {}
    routes: dict[str, tuple[Route, ...]] = {}
    found: list[Option] = []
    for fault in faults:
        like = fault.pair_with[0] if fault.pair_with else None
        works[fault.id] = works[like] if like else _work(dice, shelf, fault)
        routes[fault.id] = routes[like] if like else _routes(dice, fault)
        cures = (Cure(fault=fault.id),)
        found += [
            _option(dice, shelf, cures, route, works[fault.id])
            for route in routes[fault.id]
        ]
    found += _stand_ins(dice, shelf, faults, works)
    found += _for_two(dice, shelf, faults, works)
    return tuple(
        replace(option, id=f"o{number:06d}")
        for number, option in enumerate(found, start=1)
    )


def _work(dice: Random, shelf: Shelf, fault: Fault) -> _Work:
    behind = dice.random() < BEHIND_PANEL
    fiddly = dice.random() < WITH_TOOL
    return _Work(
        price=MEDIAN_PRICE * dice.lognormvariate(0, SPREAD),
        hours=Fraction(dice.choice((1, 2, 2, 3, 4, 4, 6, 8, 12, 20)), 4),
        access=(dice.choice(shelf.panels[fault.vehicle]),) if behind else (),
        tools=(dice.choice(shelf.tools),) if fiddly else (),
    )


def _routes(dice: Random, fault: Fault) -> tuple[Route, ...]:
    """Two to four different routes; the route rules allow nearly all of them."""
    allowed: list[Route]
    if dice.random() < AGAINST_RULES:
        allowed = [route for route in Route if route is not Route.STAND_IN]
    elif fault.enjoyment:
        allowed = list(COSMETIC)
    else:
        allowed = [*SOUND, *(() if fault.system in STRICT else ROUGH)]
    return tuple(dice.sample(allowed, dice.choice((2, 3, 3, 4))))


def _option(
    dice: Random, shelf: Shelf, cures: tuple[Cure, ...], route: Route, work: _Work
) -> Option:
    """One option without an id."""
    by_others = route is Route.WORKSHOP
    price = max(100, round(work.price * PRICE_FACTOR[route] * dice.uniform(0.8, 1.25)))
    quantity = dice.choices((1, 2, 4), (8, 1, 1))[0]
    deposit = round(price * dice.uniform(0.15, 0.6)) if route is Route.EXCHANGE else 0
    coding = dice.choices((Coding.NONE, Coding.PAID, Coding.SELF), (0.93, 0.05, 0.02))[
        0
    ]
    return Option(
        id="",
        fixes=cures,
        route=route,
        supplier=None if by_others else dice.choice(shelf.suppliers),
        price=-(-price // quantity),
        currency="EUR",
        quantity=Fraction(quantity),
        core_deposit=deposit // quantity,
        core_chance=Fraction(dice.choice(("1", "0.95", "0.9", "0.8", "0.6"))),
        core_days=dice.choice((14, 30, 30, 60)),
        core_return_cost=dice.randint(0, 1500) if deposit else 0,
        coding=coding,
        coding_cost=dice.randint(3000, 9000) if coding is Coding.PAID else 0,
        consumables=dice.randint(200, 2500) if dice.random() < 0.3 else 0,
        life_months=dice.randint(12, 36) if route in ROUGH else None,
        dud_chance=Fraction(dice.randint(5, 15) if route in ROUGH else 1, 100),
        warranty_months=0 if route is Route.USED else 24,
        lead_days=dice.choice((2, 3, 5, 7, 10, 14, 14, 21, 35, 50)),
        hours=Fraction(0) if by_others else work.hours,
        access=() if by_others else work.access,
        tools=() if by_others else work.tools,
        min_temp=_least_warmth(dice, route),
        instalments=HALVES if by_others and dice.random() < 0.3 else AT_ONCE,
        valid_until=_later(dice, shelf) if dice.random() < 0.06 else None,
        not_before=_later(dice, shelf) if dice.random() < 0.03 else None,
    )


def _least_warmth(dice: Random, route: Route) -> Fraction | None:
    """Paint and glue want a warm workshop, and a few other jobs do. [C]"""
    if route is Route.REFINISH:
        return Fraction(15)
    return Fraction(10) if dice.random() < 0.05 else None


def _later(dice: Random, shelf: Shelf) -> Month:
    return shelf.start.plus(dice.randrange(shelf.months))


def _stand_ins(
    dice: Random, shelf: Shelf, faults: Sequence[Fault], works: Mapping[str, _Work]
) -> list[Option]:
    """Temporary parts for some of the faults that may have one."""
    allowed = [
        fault
        for fault in faults
        if fault.system not in STRICT and not fault.enjoyment and not fault.pair_with
    ]
    wanted = min(len(allowed), max(1, round(WITH_STAND_IN * len(faults))))
    return [
        replace(
            _option(
                dice,
                shelf,
                (Cure(fault=fault.id, relief=Fraction(dice.randint(5, 9), 10)),),
                Route.STAND_IN,
                works[fault.id],
            ),
            followup_within=dice.randint(2, 4),
        )
        for fault in dice.sample(allowed, wanted)
    ]


def _for_two(
    dice: Random, shelf: Shelf, faults: Sequence[Fault], works: Mapping[str, _Work]
) -> list[Option]:
    """Options that mend two neighbours on one vehicle for less than one by one."""
    couples = [
        (one, other) for one, other in pairwise(faults) if one.vehicle == other.vehicle
    ]
    wanted = min(len(couples), max(1, round(WITH_ANOTHER * len(faults))))
    found = []
    for one, other in dice.sample(couples, wanted):
        both = works[one.id], works[other.id]
        work = _Work(
            price=0.85 * sum(each.price for each in both),
            hours=Fraction(3, 4) * sum(each.hours for each in both),
            access=tuple(dict.fromkeys(both[0].access + both[1].access)),
            tools=tuple(dict.fromkeys(both[0].tools + both[1].tools)),
        )
        relief = Fraction(dice.choice(("1", "0.9", "0.6")))
        cures = Cure(fault=one.id), Cure(fault=other.id, relief=relief)
        route = dice.choice((Route.NEW, Route.OEM_SPEC, Route.WORKSHOP))
        found.append(_option(dice, shelf, cures, route, work))
    return found
