"""What an option costs, whenever it is ordered."""

from fractions import Fraction

from partsplan.domain import Coding, Garage, Option, Price, Tax
from partsplan.domain.numbers import ZERO


def price(garage: Garage, option: Option) -> Price:
    """All costs of an option, in the garage's currency.

    Each named sum is rounded once, half to even; sums in a foreign currency after
    conversion. Expected duds before a good part are those of the geometric
    distribution, q / (1 - q) (S. M. Ross, A First Course in Probability, chapter 4).
    """
    rate = garage.rate(option.currency)
    supplier = garage.supplier[option.supplier] if option.supplier else None
    goods = round(option.price * option.quantity * rate)
    duty = round(goods * supplier.duty_rate) if supplier else 0
    taxed = supplier is not None and supplier.tax is Tax.ADDED
    tax = round((goods + duty) * garage.tax_rate) if taxed else 0
    landed = goods + duty + tax
    deposit = round(option.core_deposit * option.quantity * rate)
    core_return = option.core_return_cost if option.core_deposit else 0
    coding = option.coding_cost if option.coding is Coding.PAID else 0
    own_hours = option.hours * garage.hour_value
    lost_deposit = (1 - option.core_chance) * deposit
    duds = dud_cost(option, landed, own_hours)
    known = landed + coding + option.consumables + core_return
    return Price(
        goods=goods,
        duty=duty,
        tax=tax,
        landed=landed,
        deposit=deposit,
        core_return=core_return,
        coding=coding,
        consumables=option.consumables,
        own_hours=own_hours,
        lost_deposit=lost_deposit,
        duds=duds,
        expected=round(known + own_hours + lost_deposit + duds),
    )


def dud_cost(option: Option, landed: int, own_hours: Fraction) -> Fraction:
    """Expected cost of parts that are bad out of the box. [minor units]

    Each costs the hours again, and without a warranty the part again.
    """
    if not option.dud_chance:
        return ZERO
    extra = option.dud_chance / (1 - option.dud_chance)
    return extra * (own_hours + (0 if option.warranty_months else landed))
