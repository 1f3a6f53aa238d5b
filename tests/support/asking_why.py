"""Small garages with their plans, and what both say when asked why."""

from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction
from functools import cache

from partsplan.domain import (
    Garage,
    Plan,
    Stage,
    Stages,
    Threshold,
    Turn,
    WhyChosen,
    WhyNot,
)
from partsplan.explanation import why
from partsplan.planning import Force, Limits, Planner
from tests.support.small_garages import small_garage

CLOSE = Limits(seconds=30.0, gap=0.0)
PLENTY = 60.0
"""[s]"""


@cache
def small_plan(seed: int) -> tuple[Planner, Plan] | None:
    """The small garage of that seed with its proven plan; None if it has none."""
    planner = Planner(small_garage(seed))
    found = planner.best(CLOSE)
    return (planner, found) if isinstance(found, Plan) else None


def ask(garage: Garage, subject: str) -> tuple[WhyChosen | WhyNot, ...]:
    """The defence of a fault or an option, with plenty of time."""
    planner = Planner(garage)
    found = planner.best(CLOSE)
    assert isinstance(found, Plan)
    return why(planner, found, subject, limits=CLOSE, left=lambda: PLENTY)


def why_not(garage: Garage, subject: str) -> WhyNot:
    """The only answer for what is left alone."""
    (answer,) = ask(garage, subject)
    assert isinstance(answer, WhyNot)
    return answer


def why_chosen(garage: Garage, option: str) -> WhyChosen:
    """The only answer for the job of an option."""
    (answer,) = ask(garage, option)
    assert isinstance(answer, WhyChosen)
    return answer


def forced_in(garage: Garage, subject: str) -> Force:
    """That some job names the fault, or that the option is used."""
    only = frozenset({subject})
    return Force(take=only) if subject in garage.fault else Force(use=only)


def left_out(garage: Garage, subject: str) -> Force:
    """That no job names the fault, or that the option is not used."""
    only = frozenset({subject})
    return Force(leave=only) if subject in garage.fault else Force(avoid=only)


def order(garage: Garage, stages: Stages) -> tuple[int, ...]:
    """The figures in the garage's order; less is better."""
    return tuple(
        -stages.net_worth if stage is Stage.WORTH else stages.of(stage)
        for stage in garage.priority
    )


def closed(made: Garage, options: Iterable[str]) -> Garage:
    """The garage in which these options are listed, but come too late to be fitted."""
    names = set(options)
    over = made.start.plus(-1)
    return replace(
        made,
        options=tuple(
            replace(one, not_after=over) if one.id in names else one
            for one in made.options
        ),
    )


def turned_to(
    garage: Garage, subject: str, threshold: Threshold, value: Fraction
) -> Garage:
    """The garage with that value of what a threshold turns."""
    match threshold.turn:
        case Turn.PRICE:
            assert value.denominator == 1
            return replace(
                garage,
                options=tuple(
                    replace(one, price=int(value), price_low=None, price_high=None)
                    if one.id == threshold.option
                    else one
                    for one in garage.options
                ),
            )
        case Turn.BUDGET:
            more = round(value - garage.mean_budget)
            return replace(
                garage, budget=tuple(one + more for one in garage.monthly_budget)
            )
        case Turn.ENJOYMENT:
            changed = replace(garage.fault[subject], enjoyment=value)
        case Turn.POINTS:
            changed = replace(garage.fault[subject], points=value)
    return replace(
        garage,
        faults=tuple(changed if one.id == subject else one for one in garage.faults),
    )
