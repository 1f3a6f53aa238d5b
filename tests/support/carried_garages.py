"""Small garages in which something was bought and fitted before the first month."""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from random import Random

from partsplan.domain import (
    Fault,
    FaultStatus,
    Fitted,
    Flow,
    Garage,
    Instalment,
    Month,
    Option,
    Purchase,
)
from tests.support.small_garages import small_garage

RELIEFS = ("1", "0.9", "0.8", "0.7", "0.5", "0.3")


def carried_garage(seed: int) -> Garage:
    """The small garage of that seed some months on; the same seed gives the same one.

    Parts wait to be fitted, faults are relieved for ever, for a time, until before the
    first month, in part or wholly, money is promised, and points have grown.
    """
    garage = small_garage(seed)
    dice = Random(f"carried {seed}")
    waiting = dice.sample(range(len(garage.options)), dice.choice((0, 1, 1, 2, 2, 3)))
    return replace(
        garage,
        name=f"carried garage {seed}",
        faults=tuple(_relieved(dice, garage, fault) for fault in garage.faults),
        options=tuple(
            _bought(dice, garage, option) if place in waiting else option
            for place, option in enumerate(garage.options)
        ),
        promised=_promised(dice, garage),
        grown=dice.choice((0, 1, 4)),
    )


def _bought(dice: Random, garage: Garage, option: Option) -> Option:
    """The part is paid for; it is on the way, or lies there."""
    start = garage.start
    there = start.plus(dice.choice((0, 0, 0, 1, 2)))
    return replace(
        option,
        supplier=None,
        price=0,
        currency=garage.currency.code,
        quantity=Fraction(1),
        core_deposit=round(
            option.core_deposit * option.quantity * garage.rate(option.currency)
        ),
        lead_days=0,
        instalments=(Instalment(months=0, share=Fraction(1)),),
        not_before=max(there, option.not_before or there),
        valid_until=None,
        bought=Purchase(
            month=start.plus(dice.randint(-4, -1)), supplier=option.supplier
        ),
    )


def _relieved(dice: Random, garage: Garage, fault: Fault) -> Fault:
    """The fault with what was fitted for it, if anything was."""
    if fault.status is FaultStatus.FIXED or dice.random() < 0.55:
        return fault
    names = [option.id for option in garage.options_for[fault.id]] or ["gone"]
    return replace(
        fault,
        fitted=tuple(
            Fitted(
                option=dice.choice(names),
                relief=Fraction(dice.choice(RELIEFS)),
                until=_end(dice, garage),
            )
            for _ in range(dice.choice((1, 1, 2)))
        ),
    )


def _end(dice: Random, garage: Garage) -> Month:
    """Run out already, within the plan, or after all that counts."""
    months = garage.months
    places: Sequence[int] = (-1, 0, 1, 2, months - 1, months, months + 2, months + 8)
    return garage.month(dice.choice(places))


def _promised(dice: Random, garage: Garage) -> tuple[Flow, ...]:
    """Instalments and returns of up to half a month's money, also past the horizon."""
    most = round(garage.mean_budget / 2)
    return tuple(
        Flow(
            month=dice.randint(0, garage.months),
            out=dice.choice((0, dice.randint(0, most))),
            back=dice.choice((0, 0, dice.randint(0, most))),
        )
        for _ in range(dice.choice((0, 1, 2)))
    )
