"""Where two options cost the same for a month of service, in closed form.

An option costs k C a month, k being the capital recovery factor of its months of
service and C its expected cost. Against a rival's a a month it may cost C* = a / k;
each break-even solves C(lever) = C* for one lever. Roundings are left out.
"""

from collections.abc import Iterator
from fractions import Fraction

from partsplan.domain import BreakEven, Coding, Garage, Lever, Option, Price, Tax
from partsplan.pricing.annuity import periods_for


def break_evens(
    garage: Garage,
    option: Option,
    price: Price,
    *,
    service: int,
    longest: int,
    recovery: float,
    rival: str,
    rival_per_month: float,
    rate: float,
) -> Iterator[BreakEven]:
    """The break-evens of an option against one rival that lie in a lever's range.

    ``service`` is in months, and at most ``longest``, when the vehicle goes;
    ``recovery`` is the option's capital recovery factor, ``rate`` the monthly interest.
    """
    spare = rival_per_month / recovery - price.expected

    def at(lever: Lever, now: float | None, value: float, above: bool) -> BreakEven:
        return BreakEven(
            option=option.id,
            rival=rival,
            lever=lever,
            now=now,
            at=value,
            cheaper_above=above,
        )

    if price.deposit:
        chance = float(option.core_chance) - spare / price.deposit
        if 0 <= chance <= 1:
            yield at(Lever.CORE_CHANCE, float(option.core_chance), chance, True)
    again = price.own_hours + (0 if option.warranty_months else price.landed)
    if again:
        extra = float(price.duds / again) + spare / float(again)
        if extra >= 0:
            q = extra / (1 + extra)
            yield at(Lever.DUD_CHANCE, float(option.dud_chance), q, False)
    if option.coding is Coding.PAID and price.coding + spare >= 0:
        yield at(Lever.CODING_COST, price.coding, price.coding + spare, False)
    if (piece := price_at(garage, option, spare)) is not None:
        yield at(Lever.PRICE, option.price, piece, False)
    life = periods_for(rate, price.expected, rival_per_month)
    if life is not None and life <= longest:
        now = None if option.life is None else float(service)
        yield at(Lever.LIFE, now, life, True)


def price_at(garage: Garage, option: Option, spare: float) -> float | None:
    """The price of a piece that leaves that much less to spare. [minor units]"""
    supplier = garage.supplier.get(option.supplier or "")
    duty = supplier.duty_rate if supplier else Fraction(0)
    taxed = supplier is not None and supplier.tax is Tax.ADDED
    tax = garage.tax_rate if taxed else Fraction(0)
    per_piece = option.quantity * garage.rate(option.currency) * (1 + duty) * (1 + tax)
    if not option.warranty_months:  # a dud is bought again
        per_piece *= 1 / (1 - option.dud_chance)
    piece = option.price + spare / float(per_piece)
    return piece if piece >= 0 else None
