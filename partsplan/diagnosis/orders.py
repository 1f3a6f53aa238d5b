"""The cheapest order in which to rule out causes of which one is at work.

The model is that of D. Heckerman, J. S. Breese and K. Rommelse, Decision-theoretic
troubleshooting, Communications of the ACM 38(3), 1995; the rule, falling chance over
cost, is J. B. Kadane's and H. A. Simon's of 1977.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from partsplan.domain import ONE, ZERO


@dataclass(frozen=True, slots=True, kw_only=True)
class Probe:
    """One way to learn whether it is this cause.

    Attributes
    ----------
    chance
        That it is; above 0. [0-1]
    cost
        Of learning it. [minor units]
    hours
        Own work; settles ties, so that of free probes the quicker comes first. [h]
    spared
        The part of the cost that falls away where it is the last one left.
        [minor units]
    """

    chance: Fraction
    cost: Fraction
    hours: Fraction = ZERO
    spared: Fraction = ZERO


def best_order(probes: Sequence[Probe]) -> tuple[int, ...]:
    """The places of the probes in their cheapest order.

    By falling chance over cost, with each one tried as the last: what is spared there
    can outweigh the rule. Free probes go first, ties keep the order given.
    """
    ranked = ratio_order(probes)
    tried = (
        (*(one for one in ranked if one != last), last) for last in reversed(ranked)
    )
    return min(tried, key=lambda order: expected_cost(probes, order), default=())


def ratio_order(probes: Sequence[Probe]) -> tuple[int, ...]:
    """The places of the probes by falling chance over cost."""

    def rank(place: int) -> tuple[Fraction, Fraction]:
        one = probes[place]
        return one.cost / one.chance, one.hours / one.chance

    return tuple(sorted(range(len(probes)), key=rank))


def expected_cost(probes: Sequence[Probe], order: Sequence[int]) -> Fraction:
    """Of the probes up to the one that finds the cause; exactly one is at work.

    The sum over the order of (1 - the chances before) x cost. [minor units]
    """
    if not order:
        return ZERO
    left = chances_left(probes[place].chance for place in order)
    paid = sum(
        (share * probes[place].cost for share, place in zip(left, order, strict=True)),
        ZERO,
    )
    return paid - left[-1] * probes[order[-1]].spared


def cost_to_first_find(probes: Sequence[Probe], order: Sequence[int]) -> Fraction:
    """Of the probes up to the first find, where each cause is at work or not.

    The causes are independent, and nothing is spared at the end. [minor units]
    """
    total, nothing_found = ZERO, ONE
    for place in order:
        total += nothing_found * probes[place].cost
        nothing_found *= 1 - probes[place].chance
    return total


def chances_left(chances: Iterable[Fraction]) -> list[Fraction]:
    """For each place the chance that the cause is none of those before it. [0-1]"""
    found, left = [], ONE
    for chance in chances:
        found.append(left)
        left -= chance
    return found
