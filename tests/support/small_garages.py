"""Small garages by seed, so that every feature of a garage occurs in some of them."""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from random import Random

from partsplan.domain import (
    LONG_AGO,
    Access,
    Currency,
    Fault,
    FaultStatus,
    Garage,
    Inspection,
    Likelihood,
    Milestone,
    Month,
    Option,
    Severity,
    Stage,
    Supplier,
    System,
    Tax,
    Tool,
    Use,
    Vehicle,
)
from tests.support.small_bench import Bench
from tests.support.small_options import small_options

# Mean air temperature by month, Nottingham 1920-39 [C], as carried by pydataset (MIT).
NOTTINGHAM = "4.3 4.0 5.7 7.9 11.4 14.5 16.6 15.8 13.6 9.7 5.9 4.2"

# Minor units of the first currency for one of the others; invented.
EURO = (Currency("EUR", 2), {"USD": "0.9137", "JPY": "0.6215", "KWD": "0.3071"})
YEN = (Currency("JPY", 0), {"EUR": "1.609", "USD": "1.47"})


def small_garage(seed: int) -> Garage:
    """A garage of three to five faults, six to eight options, three or four months.

    The same seed gives the same garage.
    """
    dice = Random(seed)
    currency, rates = dice.choices((EURO, YEN), (9, 1))[0]
    bench = Bench(
        dice=dice,
        start=Month(2027, dice.randint(1, 12)),
        months=dice.choice((3, 4)),
        scale=dice.choice((1, 1, 1, 97)),
        currency=currency.code,
        rates={code: Fraction(rate) for code, rate in rates.items()},
    )
    vehicles = tuple(_vehicle(bench, name) for name in ("v1", "v2")[: _count(bench)])
    faults = _linked(bench, _faults(bench, vehicles))
    suppliers = tuple(_supplier(bench, name) for name in ("s1", "s2"))
    access = tuple(
        Access(id=name, hours=bench.fraction("0.5", "1", "2"))
        for name in ("a1", "a2")[: _count(bench)]
    )
    tools = tuple(
        Tool(id=name, name=name, price=bench.money(2, 25), owned=bench.some(0.3))
        for name in ("t1", "t2")[: _count(bench)]
    )
    options = small_options(bench, faults, suppliers, access, tools)
    budget = _budget(bench, options)
    return Garage(
        name=f"small garage {seed}",
        currency=currency,
        start=bench.start,
        months=bench.months,
        budget=budget,
        hours=_hours(bench, options),
        opening_cash=_opening_cash(bench, sum(budget)),
        carry_over=bench.some(0.65),
        reserve=dice.randint(1, 1 + min(budget)) if bench.some(0.3) else 0,
        money_per_point=bench.fraction("0.8", "1.5", "2.5", "4.5") * bench.scale,
        hour_value=bench.money(1, 9) if bench.some(0.3) else 0,
        tax_rate=bench.fraction("0", "0.19", "0.2"),
        look_beyond=dice.randint(0, 6),
        core_trust=bench.fraction("0.8", "0.8", "0.6", "0.95", "0.5"),
        allow_risky_routes=bench.some(0.5),
        rates=bench.rates,
        mean_temperature=(
            tuple(map(Fraction, NOTTINGHAM.split())) if bench.some(0.6) else None
        ),
        coding_tool=bench.some(0.5),
        priority=_priority(bench),
        vehicles=vehicles,
        faults=faults,
        options=options,
        suppliers=suppliers,
        access=access,
        tools=tools,
        milestones=_milestones(bench, faults),
    )


def _count(bench: Bench) -> int:
    return bench.dice.choice((1, 1, 2))


def _vehicle(bench: Bench, name: str) -> Vehicle:
    dice = bench.dice
    driven_from = dice.choices(
        (LONG_AGO, bench.month(1, bench.months), None), (7, 2, 2)
    )[0]
    return Vehicle(
        id=name,
        name=name,
        use=Use.STORED if driven_from is None else dice.choice(list(Use)),
        keep_months=dice.choice(
            (36, 24, 12, 12, 9, 6, bench.months + 1, bench.months, 2)
        ),
        driven_from=driven_from,
    )


def _faults(bench: Bench, vehicles: Sequence[Vehicle]) -> list[Fault]:
    """At least the first one is open."""
    faults = [
        _fault(bench, f"f{number}", bench.dice.choice(vehicles).id)
        for number in range(1, 1 + bench.dice.choice((3, 4, 4, 5)))
    ]
    return [replace(faults[0], status=FaultStatus.OPEN), *faults[1:]]


def _fault(bench: Bench, name: str, vehicle: str) -> Fault:
    dice = bench.dice
    harmful = bench.some(0.6)
    return Fault(
        id=name,
        vehicle=vehicle,
        title=name,
        system=dice.choice([*System, *[System.OTHER] * 6]),
        severity=dice.choice(list(Severity)) if harmful else None,
        likelihood=dice.choice(list(Likelihood)) if harmful else Likelihood.ELIMINATED,
        inspection=dice.choices(list(Inspection), (4, 2, 2, 3))[0],
        drivability=dice.choices(range(5), (3, 2, 2, 2, 2))[0],
        loss_per_month=bench.money(1, 30) if bench.some(0.5) else 0,
        damage_chance=bench.fraction("0", "0.05", "0.125"),
        damage_cost=bench.money(20, 300) if bench.some(0.5) else 0,
        enjoyment=Fraction(dice.randint(1, 10)) if bench.some(0.4) else Fraction(0),
        points=Fraction(dice.randint(5, 100)) if bench.some(0.2) else None,
        growth=bench.fraction("0", "0", "0.05", "0.3"),
        fix_by=bench.month(-1, bench.months) if bench.some(0.3) else None,
        status=dice.choices(list(FaultStatus), (14, 3, 3))[0],
    )


def _linked(bench: Bench, faults: Sequence[Fault]) -> tuple[Fault, ...]:
    """The same faults, some of them after an earlier one, two of them a pair."""
    linked = [
        replace(fault, after=(bench.dice.choice(faults[:place]).id,))
        if place and bench.some(0.22)
        else fault
        for place, fault in enumerate(faults)
    ]
    one, other = bench.dice.sample(range(len(faults)), 2)
    if faults[one].vehicle == faults[other].vehicle and bench.some(0.6):
        linked[one] = replace(linked[one], pair_with=(faults[other].id,))
    return tuple(linked)


def _supplier(bench: Bench, name: str) -> Supplier:
    dice = bench.dice
    foreign = bench.some(0.4)
    currency = dice.choice(list(bench.rates)) if foreign else bench.currency
    free_over = bench.abroad(bench.money(40, 220), currency)
    return Supplier(
        id=name,
        name=name,
        currency=currency,
        shipping=bench.abroad(bench.money(2, 18), currency),
        free_over=free_over if bench.some(0.6) else None,
        tax=dice.choice(list(Tax)),
        duty_rate=bench.fraction("0", "0.025", "0.1") if foreign else Fraction(0),
    )


def _budget(bench: Bench, options: Sequence[Option]) -> tuple[int, ...]:
    """Money for about half of all options, even or by month. [minor units]"""
    asked = sum(
        bench.at_home(option.price * option.quantity, option.currency)
        for option in options
    )
    mean = asked * bench.dice.uniform(0.5, 1.3) / bench.months
    if bench.some(0.6):
        return (round(mean),)
    return tuple(
        round(mean * bench.dice.uniform(0.3, 1.7)) for _ in range(bench.months)
    )


def _hours(bench: Bench, options: Sequence[Option]) -> tuple[Fraction, ...]:
    """Plenty, or too few for all. [h]"""
    if bench.some(0.3):
        return (Fraction(40),)
    quarters = round(4 * sum(option.hours for option in options) / bench.months)
    return tuple(
        Fraction(bench.dice.randint(quarters // 2, 4 + 2 * quarters), 4)
        for _ in range(bench.dice.choice((1, bench.months)))
    )


def _opening_cash(bench: Bench, budget: int) -> int:
    """Nothing, something, a debt, or a debt that no budget here can carry."""
    kind = bench.dice.choices(("nothing", "some", "debt", "ruin"), (14, 3, 3, 1))[0]
    if kind == "some":
        return bench.money(10, 90)
    if kind == "debt":
        return -bench.dice.randint(0, 1 + budget // 2)
    return -40 * bench.months * (budget + 1) if kind == "ruin" else 0


def _priority(bench: Bench) -> tuple[Stage, ...]:
    stages = list(Stage)
    if bench.some(0.3):
        bench.dice.shuffle(stages)
    return tuple(stages)


def _milestones(bench: Bench, faults: Sequence[Fault]) -> tuple[Milestone, ...]:
    if bench.some(0.55):
        return ()
    names = [fault.id for fault in faults]
    return (
        Milestone(
            id="m1",
            month=bench.month(-1, bench.months),
            faults=tuple(bench.dice.sample(names, bench.dice.randint(1, 2))),
        ),
    )
