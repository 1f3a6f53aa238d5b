"""Made-up garages of any size, for measuring; nothing in them is real."""

from collections.abc import Sequence
from fractions import Fraction
from random import Random

from partsplan.domain import (
    LONG_AGO,
    Access,
    Currency,
    Fault,
    FaultStatus,
    Garage,
    Milestone,
    Month,
    Option,
    Supplier,
    Tax,
    Tool,
    Use,
    Vehicle,
)
from tests.benchmarks.made_up_faults import made_up_faults
from tests.benchmarks.made_up_options import Shelf, made_up_options

EURO = Currency("EUR", 2)
START = Month(2027, 1)
FEWEST_FAULTS, MOST_FAULTS = 3, 10_000
MOST_MONTHS = 36

AFFORDABLE = 0.4
"""Share of the price of all work that the horizon's money pays for."""
WORKABLE = 1.0
"""Hours of the horizon for an hour of all work. Since access takes hours too, and much
of the work is never paid for, they bind a little."""
FEWEST_HOURS = 3
"""Of a month, so that most jobs fit into one. [h]"""
POINT_WORTH = Fraction(75)
"""A point-month, alike at every size so that sizes compare. [minor units]"""
SHED = tuple(map(Fraction, (3, 4, 7, 10, 14, 17, 19, 19, 15, 11, 7, 4)))
"""Mean temperature of an unheated workshop by month, invented. [C]"""


def made_up_garage(faults: int, months: int, seed: int) -> Garage:
    """A garage with all that planning knows; the same seed gives the same garage.

    Prices have a heavy tail; suppliers, tools and access are shared; the money pays
    for about 40 % of the work, and the hours bind a little.

    Raises
    ------
    ValueError
        If the size is out of range.
    """
    if not FEWEST_FAULTS <= faults <= MOST_FAULTS:
        raise ValueError(f"expected {FEWEST_FAULTS}-{MOST_FAULTS} faults, got {faults}")
    if not 1 <= months <= MOST_MONTHS:
        raise ValueError(f"expected 1-{MOST_MONTHS} months, got {months}")
    dice = Random(seed)
    vehicles = [
        _vehicle(dice, number, months) for number in range(max(1, round(faults / 6)))
    ]
    suppliers = [_supplier(dice, number) for number in range(max(3, round(faults / 8)))]
    access = [
        Access(id=f"{vehicle.id}-{panel}", hours=Fraction(dice.randint(2, 10), 4))
        for vehicle in vehicles
        for panel in ("dashboard", "intake")
    ]
    tools = [_tool(dice, number) for number in range(max(3, faults // 15))]
    troubles = made_up_faults(dice, vehicles, faults, START, months)
    shelf = Shelf(
        suppliers=[supplier.id for supplier in suppliers],
        panels={
            vehicle.id: [group.id for group in access[2 * place : 2 * place + 2]]
            for place, vehicle in enumerate(vehicles)
        },
        tools=[tool.id for tool in tools],
        start=START,
        months=months,
    )
    options = made_up_options(dice, troubles, shelf)
    price, hours = work_of_all(troubles, options)
    return Garage(
        name=f"Made up: {faults} faults, {months} months, seed {seed}",
        currency=EURO,
        start=START,
        months=months,
        budget=(round(AFFORDABLE * price / months),),
        hours=_by_month(dice, WORKABLE * hours / months, months),
        money_per_point=POINT_WORTH,
        hour_value=dice.choice((0, 300)),
        tax_rate=Fraction("0.2"),
        rates={EURO.code: Fraction(1)},
        mean_temperature=SHED,
        coding_tool=dice.random() < 0.5,
        vehicles=tuple(vehicles),
        faults=troubles,
        options=options,
        suppliers=tuple(suppliers),
        access=tuple(access),
        tools=tuple(tools),
        milestones=_milestones(dice, troubles, months),
    )


def work_of_all(
    faults: Sequence[Fault], options: Sequence[Option]
) -> tuple[float, float]:
    """What mending every open fault takes, by the mean of what cures it alone.

    Two figures: money before tax [minor units], own hours without access [h].
    """
    prices: dict[str, list[float]] = {}
    hours: dict[str, list[float]] = {}
    for option in options:
        if option.lasting and option.alone:
            cost = float(option.price * option.quantity)
            prices.setdefault(option.alone, []).append(cost)
            hours.setdefault(option.alone, []).append(float(option.hours))
    open_faults = [one.id for one in faults if one.status is FaultStatus.OPEN]
    return (
        sum(_mean(prices[fault]) for fault in open_faults),
        sum(_mean(hours[fault]) for fault in open_faults),
    )


def _mean(figures: Sequence[float]) -> float:
    return sum(figures) / len(figures)


def _vehicle(dice: Random, number: int, months: int) -> Vehicle:
    """Most are driven and kept; a few come onto the road later, or stay off it."""
    state = dice.choices(("driven", "later", "stored"), (8, 1, 1))[0]
    return Vehicle(
        id=f"v{number + 1:04d}",
        name=f"Vehicle {number + 1}",
        use=(
            Use.STORED
            if state == "stored"
            else dice.choice((Use.DAILY, Use.DAILY, Use.WEEKEND, Use.PROJECT))
        ),
        keep_months=dice.choice((10, 18, 24, 36, 36, 48)),
        driven_from={
            "driven": LONG_AGO,
            "later": START.plus(dice.randint(1, months)),
            "stored": None,
        }[state],
    )


def _supplier(dice: Random, number: int) -> Supplier:
    return Supplier(
        id=f"s{number + 1:04d}",
        name=f"Supplier {number + 1}",
        currency=EURO.code,
        shipping=dice.randint(390, 1490),
        free_over=dice.randint(6000, 25_000) if dice.random() < 0.6 else None,
        tax=Tax.ADDED if dice.random() < 0.2 else Tax.INCLUDED,
    )


def _tool(dice: Random, number: int) -> Tool:
    return Tool(
        id=f"t{number + 1:04d}",
        name=f"Special tool {number + 1}",
        price=dice.randint(900, 9000),
        owned=number > 0 and dice.random() < 0.4,
    )


def _by_month(dice: Random, mean: float, months: int) -> tuple[Fraction, ...]:
    """Quarters of an hour that vary by month. [h]"""
    return tuple(
        max(
            Fraction(FEWEST_HOURS),
            Fraction(round(4 * mean * dice.uniform(0.7, 1.3)), 4),
        )
        for _ in range(months)
    )


def _milestones(
    dice: Random, faults: Sequence[Fault], months: int
) -> tuple[Milestone, ...]:
    """One for every 25 faults or so; each is for two neighbours."""
    open_faults = [one for one in faults if one.status is FaultStatus.OPEN]
    return tuple(
        Milestone(
            id=f"m{number + 1:04d}",
            month=START.plus(dice.randrange(months)),
            faults=(open_faults[place].id, open_faults[place + 1].id),
        )
        for number, place in enumerate(
            sorted(
                dice.sample(
                    range(len(open_faults) - 1), max(1, round(len(faults) / 25))
                )
            )
        )
    )
