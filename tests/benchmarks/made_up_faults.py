"""Faults of made-up garages: harmful, tiresome and cosmetic ones, and their links."""

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from random import Random

from partsplan.domain import (
    Fault,
    FaultStatus,
    Inspection,
    Likelihood,
    Month,
    Severity,
    System,
    Vehicle,
)

WISHES = 0.12
UNSAFE = 0.04
STUCK = 0.03
WATCHED = 0.02
FIXED = 0.02
PAIRED = 0.08
FOLLOWING = 0.08
DUE = 0.08

SYSTEMS = {
    System.ENGINE: 5,
    System.ELECTRICS: 5,
    System.SUSPENSION: 4,
    System.DRIVELINE: 3,
    System.COOLING: 3,
    System.EXHAUST: 3,
    System.BRAKES: 2,
    System.BODY: 2,
    System.OTHER: 2,
    System.STEERING: 1,
    System.TYRES: 1,
    System.FUEL: 1,
    System.RESTRAINT: 1,
}
"""How often a system is in trouble; invented."""
HIGH = ((1, "A"), (1, "B"), (1, "C"), (2, "A"), (2, "B"))
"""The High cells of MIL-STD-882E, 11 May 2012, table III."""


def made_up_faults(
    dice: Random, vehicles: Sequence[Vehicle], count: int, start: Month, months: int
) -> tuple[Fault, ...]:
    """That many faults; those of one vehicle stand together, and links stay on it."""
    order = dice.sample(range(count), count)
    wishes = {order.pop() for _ in range(_number(count, WISHES))}
    unsafe = {order.pop() for _ in range(_number(count, UNSAFE))}
    stuck = {order.pop() for _ in range(round(count * STUCK))}
    watched = {order.pop() for _ in range(round(count * WATCHED))}
    fixed = {order.pop() for _ in range(round(count * FIXED))}
    faults: list[Fault] = []
    for place in range(count):
        make = _wish if place in wishes else _trouble
        fault = make(
            dice, f"f{place + 1:05d}", vehicles[place * len(vehicles) // count].id
        )
        if place in unsafe:
            fault = _made_unsafe(dice, fault)
        elif place in stuck:
            fault = replace(fault, drivability=4)
        elif place in watched:
            fault = replace(fault, status=FaultStatus.WATCH)
        elif place in fixed:
            fault = replace(fault, status=FaultStatus.FIXED)
        faults.append(fault)
    _pair(dice, faults, sorted(order))
    _follow(dice, faults)
    _set_deadlines(dice, faults, start, months)
    return tuple(faults)


def _number(count: int, share: float) -> int:
    return max(1, round(count * share))


def _wish(dice: Random, name: str, vehicle: str) -> Fault:
    """Something that would only please."""
    return Fault(
        id=name,
        vehicle=vehicle,
        title=f"Wish {name}",
        system=dice.choice((System.BODY, System.INTERIOR)),
        enjoyment=Fraction(dice.randint(2, 10)),
    )


def _trouble(dice: Random, name: str, vehicle: str) -> Fault:
    """Something that harms, hampers or costs; the vehicle can still be driven."""
    harmful, damaging, losing = (dice.random() < share for share in (0.6, 0.3, 0.3))
    return Fault(
        id=name,
        vehicle=vehicle,
        title=f"Trouble {name}",
        system=dice.choices(list(SYSTEMS), list(SYSTEMS.values()))[0],
        severity=Severity(dice.choice((2, 3, 3, 4))) if harmful else None,
        likelihood=Likelihood(dice.choice("CDDE" if harmful else "F")),
        inspection=dice.choice(
            (Inspection.NONE, Inspection.NONE, Inspection.MINOR, Inspection.MAJOR)
        ),
        drivability=dice.choices(range(4), (4, 3, 2, 1))[0],
        loss_per_month=dice.randint(200, 2500) if losing else 0,
        damage_chance=Fraction(dice.randint(1, 8) if damaging else 0, 100),
        damage_cost=dice.randint(10_000, 90_000) if damaging else 0,
        growth=Fraction(dice.choice(("0", "0", "0", "0", "0.03", "0.08"))),
    )


def _made_unsafe(dice: Random, fault: Fault) -> Fault:
    """The same fault, but the vehicle must not be driven with it."""
    if dice.random() < 0.5:
        return replace(fault, inspection=Inspection.DANGEROUS)
    severity, likelihood = dice.choice(HIGH)
    return replace(
        fault, severity=Severity(severity), likelihood=Likelihood(likelihood)
    )


def _pair(dice: Random, faults: list[Fault], plain: Sequence[int]) -> None:
    """Some faults become like the one before them, and its pair."""
    free = set(plain)
    couples: list[tuple[int, int]] = []
    for first in plain:
        second = first + 1
        alike = {first, second} <= free
        if alike and faults[first].vehicle == faults[second].vehicle:
            couples.append((first, second))
            free -= {first, second}
    wanted = min(_number(len(faults), PAIRED / 2), len(couples))
    for first, second in dice.sample(couples, wanted):
        faults[second] = replace(
            faults[first], id=faults[second].id, pair_with=(faults[first].id,)
        )


def _follow(dice: Random, faults: list[Fault]) -> None:
    """Some faults wait for an earlier one of their vehicle, never for their pair."""
    before: dict[int, tuple[str, ...]] = {}
    earlier: dict[str, list[str]] = defaultdict(list)
    for place, fault in enumerate(faults):
        if fault.status is FaultStatus.OPEN:
            named = set(earlier[fault.vehicle]) - set(fault.pair_with)
            if named:
                before[place] = tuple(sorted(named))
            earlier[fault.vehicle].append(fault.id)
    wanted = min(_number(len(faults), FOLLOWING), len(before))
    for place in dice.sample(sorted(before), wanted):
        faults[place] = replace(faults[place], after=(dice.choice(before[place]),))


def _set_deadlines(
    dice: Random, faults: list[Fault], start: Month, months: int
) -> None:
    places = [
        place for place, fault in enumerate(faults) if fault.status is FaultStatus.OPEN
    ]
    for place in dice.sample(places, _number(len(faults), DUE)):
        month = start.plus(dice.randrange(months))
        faults[place] = replace(faults[place], fix_by=month)
