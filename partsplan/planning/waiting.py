"""Parts that are bought and wait to be fitted: a plan fits as many as any plan can."""

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass

from partsplan.domain import Choices, Garage, Offer
from partsplan.planning.decode import decode, encode
from partsplan.planning.force import Held
from partsplan.planning.limits import COUNT_GAP
from partsplan.planning.links import pairs
from partsplan.planning.model import Model
from partsplan.planning.solver import Solver, Tuning


@dataclass(frozen=True, slots=True, kw_only=True)
class Fitting:
    """How many of the waiting parts can be fitted, and choices that fit so many."""

    parts: int
    choices: Choices


def waiting(model: Model) -> frozenset[str]:
    """The options that are bought and have an offer in reach."""
    return frozenset(one.option.id for one in model.offers if one.option.bought)


def at_least(model: Model, parts: int) -> Held:
    """That so many of the waiting parts are fitted."""
    return _terms(model), float(parts), None


def most_fitted(
    model: Model,
    rows: Iterable[Held] = (),
    *,
    seconds: float,
    start: Choices | None = None,
) -> Fitting | None:
    """As many of the waiting parts as these rows and the time allow.

    None if no plan keeps the rows, or none was found in time. [s]

    Raises
    ------
    SolverFailed
    KeyboardInterrupt
        If the search was stopped.
    """
    solver = Solver(model.program)
    for terms, low, high in rows:
        solver.hold(terms, low=low, high=high)
    run = solver.maximise(
        _terms(model),
        Tuning(seconds=seconds, gap=0.0, absolute_gap=COUNT_GAP),
        start=encode(model, start) if start else None,
    )
    if run.interrupted:
        raise KeyboardInterrupt
    if not run.values:
        return None
    chosen, choices = decode(model, model.at_one(run.values))
    parts = sum(offer.option.bought is not None for offer in chosen)
    return Fitting(parts=parts, choices=choices)


def company(garage: Garage, offers: Iterable[Offer]) -> tuple[Offer, ...]:
    """The offers of the waiting parts, and of all that links tie to them."""
    tied: dict[str, set[str]] = defaultdict(set)
    for one, other in pairs(garage.faults):
        tied[one].add(other)
        tied[other].add(one)
    left = [cure.fault for o in garage.options if o.bought for cure in o.fixes]
    found: set[str] = set()
    while left:
        if (fault := left.pop()) not in found:
            found.add(fault)
            left += [*garage.fault[fault].after, *tied[fault]]
            for option in garage.options_for[fault]:
                left += [cure.fault for cure in option.fixes]
    return tuple(one for one in offers if found.issuperset(one.faults))


def _terms(model: Model) -> list[tuple[int, float]]:
    return [
        (column, 1.0)
        for column, offer in zip(model.take, model.offers, strict=True)
        if offer.option.bought
    ]
