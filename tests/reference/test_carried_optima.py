"""What was before the first month matters to the optima of the carried garages."""

import re
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import cache

import pytest

from partsplan.domain import CURED, FaultStatus, Garage
from tests.support.reference import Priced, best, judge, offers, refusals
from tests.support.small_optima import carried_optimum

SEEDS = range(150)
ENOUGH = 4

FEATURES = """
no legal choice; fitted; fitted later; fitted at a loss; left over; all left over
deposit back; barred
gains less; gains from when it runs out; serves nothing but what was relieved
meets a demand; comes after what was fitted; watched
promised out; promised back; promised past the horizon
promised or grown to another plan
"""


@cache
def counts() -> Counter[str]:
    return Counter(name for seed in SEEDS for name in set(shown(seed)))


@pytest.mark.parametrize("feature", re.split(r"\s*[;\n]\s*", FEATURES.strip()))
def test_shows(feature: str) -> None:
    assert counts()[feature] >= ENOUGH


def shown(seed: int) -> Iterator[str]:
    """The features that an optimal choice shows."""
    garage, found = carried_optimum(seed)
    if found is None:
        yield "no legal choice"
        return
    known = offers(garage)
    chosen = [known[order] for order in found.orders.items()]
    yield from _waiting(garage, chosen, known)
    yield from _relieved(garage, chosen)
    yield from _promised(garage)
    if garage.promised or garage.grown:
        forgetful = best(replace(garage, promised=(), grown=0))
        if forgetful is None or forgetful.orders != found.orders:
            yield "promised or grown to another plan"


def _waiting(
    garage: Garage, chosen: Sequence[Priced], known: dict[tuple[str, int], Priced]
) -> Iterator[str]:
    fitted = {offer.option.id: offer for offer in chosen if offer.option.bought}
    able = {offer.option.id for offer in known.values() if offer.option.bought}
    if able - fitted.keys():
        yield "left over" if fitted else "all left over"
    if "already bought" in refusals(garage).values():
        yield "barred"
    for offer in fitted.values():
        yield "fitted"
        if any(known.get((offer.option.id, month)) for month in range(offer.fitted)):
            yield "fitted later"
        if sum(offer.gains.values()) < offer.charge:
            yield "fitted at a loss"
        if any(offer.back):
            yield "deposit back"


def _relieved(garage: Garage, chosen: Sequence[Priced]) -> Iterator[str]:
    forgetful = replace(
        garage, faults=tuple(replace(one, fitted=()) for one in garage.faults)
    )
    before = offers(forgetful)
    for offer in chosen:
        gained = sum(offer.gains.values())
        all_ = sum(before[offer.option.id, offer.ordered].gains.values())
        if gained < all_:
            yield "gains less"
            yield "serves nothing but what was relieved" if not gained else "gains"
        worths = [offer.gains[key] for key in sorted(offer.gains)]
        if worths and not worths[0] and any(worths):
            yield "gains from when it runs out"
        for cure in offer.option.fixes:
            firsts = (garage.fault[one] for one in garage.fault[cure.fault].after)
            if any(one.relief >= CURED for first in firsts for one in first.fitted):
                yield "comes after what was fitted"
    idle, worse = (judge(one, {}, {}).stages for one in (garage, forgetful))
    if replace(idle, net_worth=0) != replace(worse, net_worth=0):
        yield "meets a demand"
    if any(one.fitted and one.status is FaultStatus.WATCH for one in garage.faults):
        yield "watched"


def _promised(garage: Garage) -> Iterator[str]:
    for flow in garage.promised:
        if flow.month >= garage.months:
            yield "promised past the horizon"
        elif flow.out:
            yield "promised out"
        elif flow.back:
            yield "promised back"
