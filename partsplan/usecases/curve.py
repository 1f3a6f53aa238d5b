"""Plans a garage for one monthly sum after another."""

from concurrent.futures import Executor
from dataclasses import dataclass
from fractions import Fraction
from math import ceil, floor
from pathlib import Path

from partsplan.domain import BudgetCurve, Garage
from partsplan.errors import InvalidRequest
from partsplan.usecases.many import Tell, asker
from partsplan.usecases.opening import opening_garage
from partsplan.usecases.plan import asked

MOST_PLANS = 60
"""Plans after which changes are not placed more closely."""
GRID = 10
"""Sums tried at first where nobody says how many."""
FINENESS = 100
"""A change is placed to a round sum of at most a hundredth of the budget."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CurveAnswer:
    """A garage and what each monthly sum would buy for it.

    Attributes
    ----------
    usual
        The garage's own sum, if it is the same every month. [minor units]
    """

    garage: Garage
    usual: int | None
    curve: BudgetCurve


def curve(
    folder: Path,
    *,
    executor: Executor,
    lowest: str | None = None,
    highest: str | None = None,
    steps: int | None = None,
    most_plans: int = MOST_PLANS,
    from_month: str | None = None,
    months: int | None = None,
    budget: str | None = None,
    seconds: float = 30.0,
    gap: float = 1e-4,
    threads: int = 1,
    tell: Tell | None = None,
) -> CurveAnswer:
    """The best plans for monthly sums from ``lowest`` to ``highest``, decimal text.

    Without these, from half to twice the budget. ``steps`` sums are tried, evenly
    apart; without it those at which the plan changes are looked for, by trying sums
    between neighbours whose plans differ. The garage's own sum is tried too.

    Raises
    ------
    InvalidGarage, InvalidRequest, SolverFailed, UnsoundPlan
    KeyboardInterrupt
        If it came before anything was known.
    """
    from partsplan.explanation import curve as best_curve
    from partsplan.explanation.steps import round_step
    from partsplan.planning import Limits

    garage = asked(opening_garage(folder, from_month), months=months, budget=budget)
    low, high = _span(garage, lowest, highest)
    resolution = max(
        1, int(round_step(Fraction(garage.mean_budget or high) / FINENESS))
    )
    usual = _usual(garage)
    grid = _grid(low, high, steps or GRID, 1 if steps else resolution)
    if usual is not None and low <= usual <= high:
        grid.append(usual)
    found = best_curve(
        garage,
        grid,
        asker(executor, tell),
        limits=Limits(seconds=seconds, gap=gap, threads=threads),
        resolution=None if steps else resolution,
        most_plans=most_plans,
    )
    if not found.points:
        raise KeyboardInterrupt
    return CurveAnswer(garage=garage, usual=usual, curve=found)


def _span(garage: Garage, lowest: str | None, highest: str | None) -> tuple[int, int]:
    mean = garage.mean_budget
    low = floor(mean / 2) if lowest is None else _sum(garage, "from", lowest)
    high = ceil(mean * 2) if highest is None else _sum(garage, "to", highest)
    if low >= high:
        first, last = garage.currency.format(low), garage.currency.format(high)
        raise InvalidRequest(f"expected a larger sum to go to, got {first} to {last}")
    return low, high


def _sum(garage: Garage, name: str, text: str) -> int:
    try:
        found = garage.currency.parse(text)
    except ValueError as error:
        raise InvalidRequest(f"{name}: {error}") from error
    if found < 0:
        raise InvalidRequest(f'{name}: expected 0 or more, got "{text}"')
    return found


def _grid(low: int, high: int, steps: int, unit: int) -> list[int]:
    """Sums evenly apart, as near as can be; those between the ends in whole units."""
    even = (low + Fraction((high - low) * step, steps - 1) for step in range(steps))
    between = {round(one / unit) * unit for one in even}
    return sorted({low, high, *(one for one in between if low < one < high)})


def _usual(garage: Garage) -> int | None:
    sums = set(garage.monthly_budget)
    return sums.pop() if len(sums) == 1 else None
