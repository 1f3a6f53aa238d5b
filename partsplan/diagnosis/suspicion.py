"""Buying without a check: the likeliest cure for the money, then the next."""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from partsplan.diagnosis.orders import Probe, best_order, expected_cost
from partsplan.domain import ONE, ZERO, CheckStep, Trial


def on_suspicion(
    steps: Sequence[CheckStep], *, closed: bool
) -> tuple[tuple[Trial, ...], Fraction]:
    """What is tried in the best order, and the expected cost of that. [minor units]

    A cure is bought and fitted; if the fault stays it was wasted, and the next one is
    tried. One cure for several causes is bought once. Causes without a cure have
    nothing to buy: they are checked when nothing else is left to buy. ``closed`` says
    that there are no other causes, so that the last one left needs no check.
    """
    purchases, buying, left = _purchases(steps)
    checks, checking = _checks(steps, left, closed=closed)
    return purchases + checks, buying + left * checking


def _purchases(
    steps: Sequence[CheckStep],
) -> tuple[tuple[Trial, ...], Fraction, Fraction]:
    """Cures in their order, their expected cost, and the chance that none helps."""
    settled: dict[str, list[CheckStep]] = {}
    for step in steps:
        if step.cause.cure:
            settled.setdefault(step.cause.cure, []).append(step)
    trials = [
        Trial(
            causes=tuple(one.cause.cause for one in those),
            cure=cure,
            cost=Fraction(those[0].cure_cost or 0),
        )
        for cure, those in settled.items()
    ]
    probes = [
        Probe(chance=sum((one.cause.chance for one in those), ZERO), cost=trial.cost)
        for trial, those in zip(trials, settled.values(), strict=True)
    ]
    order = best_order(probes)
    left = ONE - sum((one.chance for one in probes), ZERO)
    return tuple(trials[one] for one in order), expected_cost(probes, order), left


def _checks(
    steps: Sequence[CheckStep], left: Fraction, *, closed: bool
) -> tuple[tuple[Trial, ...], Fraction]:
    """Checks of what has no cure, and their expected cost once no cure has helped."""
    those = [step for step in steps if not step.cause.cure]
    probes = [
        Probe(
            chance=one.cause.chance / left,
            cost=one.check,
            hours=one.cause.check_hours,
            spared=one.check if closed else ZERO,
        )
        for one in those
    ]
    order = best_order(probes)
    trials = [
        Trial(causes=(those[one].cause.cause,), cure=None, cost=probes[one].cost)
        for one in order
    ]
    if closed and trials:
        trials[-1] = replace(trials[-1], cost=ZERO, checked=False)
    return tuple(trials), expected_cost(probes, order)
