"""What an option's parts cost in each future."""

from dataclasses import dataclass

import numpy as np

from partsplan.domain import Garage, Option, Tax, instalments
from partsplan.pricing import price
from partsplan.simulation.arrays import Counts, whole
from partsplan.simulation.streams import stream


@dataclass(frozen=True, slots=True)
class Drawn:
    """The price of an option, one figure a future. [minor units]

    Attributes
    ----------
    goods, landed
        Before and after duty and tax.
    dues
        Months after ordering, and the instalment then due.
    """

    goods: Counts
    landed: Counts
    dues: tuple[tuple[int, Counts], ...]


def drawn_price(garage: Garage, option: Option, futures: int, seed: int) -> Drawn:
    """Prices between the lowest and the highest seen, triangular around the quote.

    A blank end is the quote itself. Duty, tax and instalments follow the drawn price.
    Without a range it is the plan's own price, exactly.
    """
    low, high = price_range(option)
    if low == high:
        exact = price(garage, option)
        dues = instalments(option, exact.landed)
        return Drawn(
            np.full(futures, exact.goods),
            np.full(futures, exact.landed),
            tuple((month, np.full(futures, due)) for month, due in dues),
        )
    dice = stream(seed, "price", option.id)
    piece = whole(dice.triangular(low, option.price, high, futures))
    goods, landed = landed_prices(garage, option, piece)
    return Drawn(goods, landed, _instalments(option, landed))


def price_range(option: Option) -> tuple[int, int]:
    """Lowest and highest price of a piece. [minor units of the option's currency]"""
    low, high = option.price_low, option.price_high
    return (
        option.price if low is None else min(low, option.price),
        option.price if high is None else max(high, option.price),
    )


def landed_prices(
    garage: Garage, option: Option, piece: Counts
) -> tuple[Counts, Counts]:
    """Goods and landed price for each price of a piece. [minor units]

    The same rounding steps as the plan's price, in floating point.
    """
    supplier = garage.supplier[option.supplier] if option.supplier else None
    goods = _times(piece, float(option.quantity * garage.rate(option.currency)))
    if supplier is None:
        return goods, goods
    landed = goods + _times(goods, float(supplier.duty_rate))
    if supplier.tax is Tax.ADDED:
        landed = landed + _times(landed, float(garage.tax_rate))
    return goods, landed


def _instalments(option: Option, landed: Counts) -> tuple[tuple[int, Counts], ...]:
    """The last takes the rounding."""
    ordered = sorted(option.instalments, key=lambda one: one.months)
    dues = [(one.months, _times(landed, float(one.share))) for one in ordered[:-1]]
    left = landed - sum((due for _, due in dues), start=np.zeros_like(landed))
    return (*dues, (ordered[-1].months, left))


def _times(amounts: Counts, factor: float) -> Counts:
    return whole(amounts * factor)
