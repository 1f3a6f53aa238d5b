"""What a fault costs while it waits."""

from fractions import Fraction

from partsplan.domain import DamageRisk, Fault, LossPerMonth, Reason, Score
from partsplan.domain.numbers import ZERO


def loss(fault: Fault) -> Fraction:
    """Expected cost of waiting; not rounded. [minor units a month]"""
    return fault.loss_per_month + fault.damage_chance * fault.damage_cost


def waiting(fault: Fault, mean_budget: Fraction) -> Score:
    """The cost of waiting as a share of the mean monthly budget, capped. [0-100]"""
    reasons: list[Reason] = []
    if fault.loss_per_month:
        reasons.append(LossPerMonth(amount=fault.loss_per_month))
    if fault.damage_chance and fault.damage_cost:
        reasons.append(DamageRisk(chance=fault.damage_chance, cost=fault.damage_cost))
    lost = loss(fault)
    if lost >= mean_budget:
        return Score(Fraction(100) if lost else ZERO, tuple(reasons))
    return Score(100 * lost / mean_budget, tuple(reasons))
