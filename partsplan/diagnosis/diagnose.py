"""Check first, or buy on suspicion: both in their best order."""

from collections.abc import Sequence
from fractions import Fraction

from partsplan.diagnosis.orders import (
    Probe,
    best_order,
    chances_left,
    cost_to_first_find,
    expected_cost,
    ratio_order,
)
from partsplan.diagnosis.suspicion import on_suspicion
from partsplan.domain import ONE, ZERO, Cause, CheckStep, Diagnosis, Garage
from partsplan.pricing import bars, price


def diagnose(garage: Garage, fault: str) -> Diagnosis:
    """The best order to check a fault's suspected causes, and what it saves.

    One cause is at work. Where the chances sum to 1, it is one of those written down,
    and the last one left needs no check. Where they sum to less, the rest is the
    chance of something else: then every cause is checked, and with that chance all
    checks are paid and the fault stays unresolved, in every order alike.
    """
    named = [cause for cause in garage.causes if cause.fault == fault]
    causes = [cause for cause in named if cause.chance]
    something_else = 1 - sum((cause.chance for cause in causes), ZERO)
    probes = [_check(garage, cause, closed=not something_else) for cause in causes]
    order = best_order(probes)
    steps = _steps(garage, causes, probes, order)
    checks = expected_cost(probes, order)
    cures = sum((one.cause.chance * (one.cure_cost or 0) for one in steps), ZERO)
    trials, buying = on_suspicion(steps, closed=not something_else)
    ratios = ratio_order(probes)
    return Diagnosis(
        fault=fault,
        steps=steps,
        ruled_out=tuple(cause.cause for cause in named if not cause.chance),
        something_else=something_else,
        checks=round(checks),
        expected=round(checks + cures),
        at_once=round(checks + cures - _spared_at_once(steps)),
        trials=trials,
        on_suspicion=round(buying),
        several=tuple(causes[place].cause for place in ratios),
        first_find=round(cost_to_first_find(probes, ratios)),
    )


def sure_enough(check: Fraction, cure: int) -> Fraction:
    """The chance from which buying a cure without a check is right. [0-1]

    Bought unchecked, a cure is wasted with chance 1 - p; so a check pays as long as
    check < (1 - p) x cure, that is p < 1 - check / cure.
    """
    return max(ZERO, 1 - check / cure) if cure else ZERO


def _check(garage: Garage, cause: Cause, *, closed: bool) -> Probe:
    cost = cause.check_cost + cause.check_hours * garage.hour_value
    return Probe(
        chance=cause.chance,
        cost=cost,
        hours=cause.check_hours,
        spared=cost if closed else ZERO,
    )


def _steps(
    garage: Garage,
    causes: Sequence[Cause],
    probes: Sequence[Probe],
    order: Sequence[int],
) -> tuple[CheckStep, ...]:
    left = chances_left(causes[place].chance for place in order)
    return tuple(
        _step(garage, causes[place], probes[place].cost, share)
        for place, share in zip(order, left, strict=True)
    )


def _step(garage: Garage, cause: Cause, check: Fraction, left: Fraction) -> CheckStep:
    """``left`` is the chance that none of those before it is the cause."""
    option = garage.option[cause.cure] if cause.cure else None
    cost = price(garage, option).expected if option else None
    chance = cause.chance / left
    return CheckStep(
        cause=cause,
        check=check,
        checked=chance < ONE,
        chance=chance,
        cure_cost=cost,
        sure_enough=None if cost is None else sure_enough(check, cost),
        bars=bars(garage, option) if option else (),
    )


def _spared_at_once(steps: Sequence[CheckStep]) -> Fraction:
    """What is saved by buying without a check where that is right. [minor units]"""
    return sum(
        (
            one.cause.chance
            / one.chance
            * (one.check - (1 - one.chance) * (one.cure_cost or 0))
            for one in steps
            if one.skips_check
        ),
        ZERO,
    )
