"""From which price, points or budget on a job would be chosen, found by planning."""

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from math import ceil

from partsplan.domain import Fault, Garage, Offer, Option, Plan, Threshold, Turn
from partsplan.domain.numbers import ONE, ZERO
from partsplan.explanation.turning import Dial, Search, turned
from partsplan.planning import Planner
from partsplan.planning.benefits import Benefits
from partsplan.scoring import points

PRICE_STEPS = 200
"""A price is told to one part in this many."""
BUDGET_FACTORS = ("1.1", "1.3", "1.6", "2", "3")
"""Budgets that are tried before the nearest two are halved."""
BUDGET_STEPS = 100
"""A budget is told to one part in this many."""


def price_turn(search: Search, option: Option) -> Threshold | None:
    """The price below which the option is chosen; None if it costs nothing now.

    Raises
    ------
    OutOfTime
    """
    now = Fraction(option.price)
    step = Fraction(max(1, option.price // PRICE_STEPS))
    free = Planner(with_price(search.garage, option.id, 0))
    full = Planner(search.garage)

    def gain(plan: Plan) -> Fraction:
        charges = [
            offer.charge
            for planner in (full, free)
            for offer in _taken(planner, plan, option.id)
        ]
        return step * (charges[0] - charges[1]) / now if len(charges) == 2 else ZERO

    found = None
    for end in _price_ends(search.garage, option):
        found = turned(
            search,
            Dial(
                turn=Turn.PRICE,
                option=option.id,
                now=now,
                end=end,
                step=step,
                change=lambda value: with_price(search.garage, option.id, int(value)),
                gain=gain,
                moves_money=True,
            ),
        )
        if found is not None and found.at is not None:
            break
    return found


def _price_ends(garage: Garage, option: Option) -> list[Fraction]:
    """Where to look first: the last price that is sent for free, then no price."""
    supplier = garage.supplier.get(option.supplier or "")
    if supplier is None or not supplier.shipping or supplier.free_over is None:
        return [ZERO]
    enough = round(supplier.free_over * garage.rate(supplier.currency))
    last = ceil(enough / (option.quantity * garage.rate(option.currency)))
    return [Fraction(last), ZERO] if 0 < last < option.price else [ZERO]


def liking_turn(search: Search, fault: Fault) -> Threshold | None:
    """The enjoyment of a wish, or the points, from which on its job is chosen.

    Points are those that its owner would write, before they grow.

    Raises
    ------
    OutOfTime
    """
    garage = search.garage
    if fault.enjoyment and fault.points is None:
        found = _liked(
            search,
            fault,
            Turn.ENJOYMENT,
            now=fault.enjoyment,
            end=Fraction(10),
            step=Fraction(1, 10),
            change=lambda value: _with_fault(garage, fault, enjoyment=value),
        )
        if found is not None and found.at is not None:
            return found
    return _liked(
        search,
        fault,
        Turn.POINTS,
        now=points(replace(garage, grown=0), fault, 0).points,
        end=Fraction(100),
        step=ONE,
        change=lambda value: _with_fault(garage, fault, points=value),
    )


def _liked(
    search: Search,
    fault: Fault,
    turn: Turn,
    *,
    now: Fraction,
    end: Fraction,
    step: Fraction,
    change: Callable[[Fraction], Garage],
) -> Threshold | None:
    planner = Planner(search.garage)
    before, after = Benefits(change(now)), Benefits(change(min(end, now + step)))

    def gain(plan: Plan) -> Fraction:
        """What the job of a plan that serves the fault best gains by one step."""
        gains = [
            sum(after.of(offer, fault.id)) - sum(before.of(offer, fault.id))
            for job in plan.jobs
            if fault.id in job.faults
            for offer in _taken(planner, plan, job.option)
        ]
        return Fraction(max(gains, default=0))

    dial = Dial(
        turn=turn,
        option=None,
        now=now,
        end=end,
        step=step,
        change=change,
        gain=gain,
        moves_money=False,
    )
    return turned(search, dial)


def budget_turn(search: Search) -> Threshold | None:
    """A monthly budget at which the job is chosen, found by trying larger ones.

    A larger budget can drop a job again, so this need not be the only one.

    Raises
    ------
    OutOfTime
    """
    garage, now = search.garage, search.garage.mean_budget
    if not now:
        return None

    def has(mean: Fraction) -> bool:
        found = search.planned(with_budget(garage, mean))
        return found is not None and search.chosen(found)

    low, high = now, None
    for factor in map(Fraction, BUDGET_FACTORS):
        if has(now * factor):
            high = now * factor
            break
        low = now * factor
    while high is not None and high - low > now / BUDGET_STEPS:
        middle = (low + high) / 2
        if has(middle):
            high = middle
        else:
            low = middle
    return Threshold(turn=Turn.BUDGET, option=None, now=now, at=high, not_at=low)


def with_price(garage: Garage, option: str, price: int) -> Garage:
    """The garage with another price of one option. [minor units of its currency]"""
    options = tuple(
        replace(one, price=price, price_low=None, price_high=None)
        if one.id == option
        else one
        for one in garage.options
    )
    return replace(garage, options=options)


def with_budget(garage: Garage, mean: Fraction) -> Garage:
    """The garage with as much more or less each month as makes that mean."""
    more = round(mean - garage.mean_budget)
    budget = tuple(max(0, one + more) for one in garage.monthly_budget)
    return replace(garage, budget=budget)


def _with_fault(
    garage: Garage,
    fault: Fault,
    *,
    enjoyment: Fraction | None = None,
    points: Fraction | None = None,
) -> Garage:
    changed = replace(
        fault,
        enjoyment=fault.enjoyment if enjoyment is None else enjoyment,
        points=fault.points if points is None else points,
    )
    faults = tuple(changed if one.id == fault.id else one for one in garage.faults)
    return replace(garage, faults=faults)


def _taken(planner: Planner, plan: Plan, option: str) -> list[Offer]:
    """The offer of an option that a plan takes, if it does."""
    month = plan.choices.orders.get(option)
    return [
        offer
        for offer in planner.offers
        if offer.option.id == option and offer.ordered == month
    ]
