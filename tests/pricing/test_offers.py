"""Every offer against the same worked out in slow and plain code."""

import pytest

from partsplan.domain import AfterWatched, Garage, Offer
from partsplan.planning.benefits import Benefits
from partsplan.pricing import bars, offers
from tests.benchmarks.generator import made_up_garage
from tests.support import reference
from tests.support.small_garages import small_garage


@pytest.mark.parametrize("tens", range(20))
def test_offers_of_small_garages_are_those_of_the_reference(tens: int) -> None:
    for seed in range(10 * tens, 10 * tens + 10):
        garage = small_garage(seed)
        told = {(one.option.id, one.ordered): one for one in offers(garage)}
        expected = {
            key: one
            for key, one in reference.offers(garage).items()
            if not _waits_for_watched(garage, key[0])
        }
        assert told.keys() == expected.keys()
        for key, offer in told.items():
            assert _figures(garage, offer) == _as_figures(expected[key])


@pytest.mark.parametrize(("months", "seed"), [(1, 1), (6, 2), (24, 3)])
def test_offers_of_made_up_garages_are_those_of_the_reference(
    months: int, seed: int
) -> None:
    garage = made_up_garage(30, months, seed)
    expected = reference.offers(garage)
    for offer in offers(garage):
        key = offer.option.id, offer.ordered
        assert _figures(garage, offer) == _as_figures(expected[key])


def _waits_for_watched(garage: Garage, option: str) -> bool:
    found = bars(garage, garage.option[option])
    return any(isinstance(one, AfterWatched) for one in found)


def _figures(garage: Garage, offer: Offer) -> tuple[object, ...]:
    out, back = [0] * garage.months, [0] * garage.months
    for flow in offer.flows:
        out[flow.month] += flow.out
        back[flow.month] += flow.back
    benefits = Benefits(garage)
    gains = {
        (fault, month): gain
        for fault in offer.faults
        for month, gain in enumerate(benefits.of(offer, fault), start=offer.fitted)
    }
    priced = offer.price
    money = (priced.goods, priced.landed, priced.deposit, priced.expected)
    months = (offer.fitted, offer.until)
    return (*months, *money, offer.charge, tuple(out), tuple(back), gains)


def _as_figures(one: reference.Priced) -> tuple[object, ...]:
    money = (one.goods, one.landed, one.deposit, one.expected)
    return (one.fitted, one.until, *money, one.charge, one.out, one.back, one.gains)
