"""The settings whose weight in a plan can be asked for, and values to try for them."""

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from partsplan.domain import Garage, Setting
from partsplan.explanation.steps import round_step, snapped

WEIGHTS = (Setting.SAFETY, Setting.DRIVABILITY, Setting.ENJOYMENT)
FINENESS = 100
"""An end is placed to a round step of at most a hundredth of the setting."""
DOWN = tuple(Fraction(part, 8) for part in (1, 2, 4, 6, 7, 8))
"""Shares of a setting that are taken away, one after the other."""
UP = (Fraction(1, 8), Fraction(1, 2), *(Fraction(2**k - 1) for k in range(1, 7)))
"""Shares of a setting that are added."""
USUAL_WEIGHT = Fraction(1, 10)


def value_of(garage: Garage, setting: Setting) -> Fraction:
    """The value of a setting; money in minor units."""
    if setting in WEIGHTS:
        return Fraction(getattr(garage.weights, setting.value))
    return Fraction(getattr(garage, setting.value))


def with_setting(garage: Garage, setting: Setting, value: Fraction) -> Garage:
    """The garage with another value of one setting, all else as it is."""
    if setting in WEIGHTS:
        weights = replace(garage.weights, **{setting.value: value})
        return replace(garage, weights=weights)
    if setting is Setting.RESERVE:
        return replace(garage, reserve=int(value))
    return replace(garage, money_per_point=value)


def _unit(garage: Garage, setting: Setting) -> Fraction:
    """What a setting is moved by: its own size, or a usual one where that says little.

    [as the setting]
    """
    now = value_of(garage, setting)
    if setting is Setting.RESERVE:
        return max(now, garage.mean_budget / 4, Fraction(1))
    return now or (USUAL_WEIGHT if setting in WEIGHTS else Fraction(1))


def step_of(garage: Garage, setting: Setting) -> Fraction:
    """How closely an end is placed. [as the setting]"""
    step = round_step(_unit(garage, setting) / FINENESS)
    return max(step, Fraction(1)) if setting is Setting.RESERVE else step


def upwards(garage: Garage, setting: Setting) -> Iterator[Fraction]:
    """Values above the setting's own, the nearest first."""
    now, unit = value_of(garage, setting), _unit(garage, setting)
    step = step_of(garage, setting)
    yield from _snapped((now + unit * share for share in UP), now, step)


def downwards(garage: Garage, setting: Setting) -> Iterator[Fraction]:
    """Values below the setting's own down to 0, the nearest first."""
    now, step = value_of(garage, setting), step_of(garage, setting)
    yield from _snapped((now - now * share for share in DOWN), now, step)


def _snapped(
    values: Iterator[Fraction], now: Fraction, step: Fraction
) -> Iterator[Fraction]:
    for value in dict.fromkeys(snapped(one, step) for one in values):
        if value != now:
            yield value
