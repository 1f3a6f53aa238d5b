"""Larger garages by seed: too many jobs for the money, and none of them alike."""

from fractions import Fraction
from random import Random

from partsplan.domain import (
    Access,
    Fault,
    Garage,
    Option,
    Route,
    Supplier,
    Tool,
    Vehicle,
)
from tests.support.building import EUR, START, cures

ROUTES = (Route.NEW, Route.EXCHANGE, Route.USED, Route.WORKSHOP)


def larger_garage(seed: int, *, faults: int, months: int) -> Garage:
    """Two vehicles, three options a fault, money for about 40 % of all.

    Prices are heavy-tailed; suppliers, access and tools are shared, some faults come
    after others. The same seed gives the same garage.
    """
    dice = Random(seed)
    wishes = tuple(_fault(dice, number) for number in range(faults))
    options = tuple(
        _option(dice, fault, number) for fault in wishes for number in range(3)
    )
    cheapest = sum(
        min(o.price for o in options[3 * n : 3 * n + 3]) for n in range(faults)
    )
    return Garage(
        name=f"larger garage {seed}",
        currency=EUR,
        start=START,
        months=months,
        budget=(round(cheapest * 0.4 / months),),
        hours=(Fraction(faults, 2),),
        money_per_point=Fraction(150),
        hour_value=500,
        vehicles=tuple(Vehicle(id=f"v{n}", name="estate car") for n in range(2)),
        faults=wishes,
        options=options,
        suppliers=tuple(
            Supplier(
                id=f"s{number}",
                name=f"supplier {number}",
                currency="EUR",
                shipping=dice.randint(500, 1500),
                free_over=dice.randint(10000, 40000),
            )
            for number in range(4)
        ),
        access=tuple(Access(id=f"a{n}", hours=Fraction(2)) for n in range(faults // 4)),
        tools=tuple(
            Tool(id=f"t{n}", name=f"tool {n}", price=dice.randint(1000, 8000))
            for n in range(faults // 8)
        ),
    )


def _fault(dice: Random, number: int) -> Fault:
    late = number > 1 and dice.random() < 0.15
    return Fault(
        id=f"f{number}",
        vehicle=f"v{number % 2}",
        title=f"fault {number}",
        points=Fraction(dice.randint(2, 60)),
        growth=Fraction(dice.choice((0, 0, 5)), 100),
        loss_per_month=dice.randint(0, 900),
        after=(f"f{dice.randrange(number)}",) if late else (),
    )


def _option(dice: Random, fault: Fault, number: int) -> Option:
    groups = int(fault.id.removeprefix("f")) // 4
    return Option(
        id=f"{fault.id}-{number}",
        fixes=cures((fault.id,)),
        route=ROUTES[number],
        supplier=f"s{dice.randrange(4)}",
        price=round(4000 * dice.paretovariate(1.3)),
        currency="EUR",
        core_deposit=dice.choice((0, 0, 3000)),
        lead_days=dice.choice((0, 5, 20, 45)),
        life_months=dice.choice((None, 12, 24)),
        hours=Fraction(dice.randint(1, 10), 2),
        access=(f"a{max(0, groups - 1)}",) if dice.random() < 0.4 else (),
        tools=("t0",) if dice.random() < 0.1 else (),
    )
