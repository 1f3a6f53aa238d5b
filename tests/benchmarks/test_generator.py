"""Made-up garages are the same each time, can be read, and have every feature."""

from collections.abc import Callable
from pathlib import Path

import pytest

from partsplan.domain import Coding, FaultStatus, Garage
from partsplan.intake import read_garage, write_garage
from partsplan.pricing import bars, price
from partsplan.scoring import forbids_driving, stops_driving
from tests.benchmarks.generator import made_up_garage

SMALL = made_up_garage(60, 6, 1)

FEATURES: dict[str, Callable[[Garage], bool]] = {
    "access is shared": lambda g: any(
        sum(group.id in option.access for option in g.options) > 1 for group in g.access
    ),
    "a tool is to be bought": lambda g: any(
        tool.id in option.tools and not tool.owned
        for option in g.options
        for tool in g.tools
    ),
    "an order can be free of shipping": lambda g: any(
        supplier.shipping and supplier.free_over for supplier in g.suppliers
    ),
    "a pair": lambda g: any(fault.pair_with for fault in g.faults),
    "one after another": lambda g: any(fault.after for fault in g.faults),
    "a stand-in": lambda g: any(not o.lasting and o.followup_within for o in g.options),
    "two faults at once": lambda g: any(len(o.fixes) == 2 for o in g.options),
    "part of the relief": lambda g: any(
        cure.relief < 1 for option in g.options for cure in option.fixes
    ),
    "a deposit that may be lost": lambda g: any(
        option.core_deposit and option.core_chance < 1 for option in g.options
    ),
    "coding": lambda g: any(option.coding is Coding.PAID for option in g.options),
    "a deadline": lambda g: any(fault.fix_by for fault in g.faults),
    "a milestone": lambda g: bool(g.milestones),
    "do not drive": lambda g: any(map(forbids_driving, g.faults)),
    "not drivable": lambda g: any(map(stops_driving, g.faults)),
    "a wish": lambda g: any(fault.enjoyment for fault in g.faults),
    "growth": lambda g: any(fault.growth for fault in g.faults),
    "a watched fault": lambda g: any(
        fault.status is FaultStatus.WATCH for fault in g.faults
    ),
    "too cold": lambda g: any(
        option.min_temp is not None and option.min_temp > min(g.mean_temperature or ())
        for option in g.options
    ),
    "a late part": lambda g: any(option.lead_days >= 15 for option in g.options),
    "instalments": lambda g: any(len(option.instalments) > 1 for option in g.options),
    "a life": lambda g: any(option.life_months for option in g.options),
}


def test_the_same_seed_makes_the_same_garage() -> None:
    assert made_up_garage(60, 6, 1) == SMALL


def test_another_seed_makes_another_garage() -> None:
    other = made_up_garage(60, 6, 2)
    assert (other.faults, other.options) != (SMALL.faults, SMALL.options)


@pytest.mark.parametrize(("faults", "months"), [(3, 1), (12, 6), (100, 36)])
def test_a_garage_is_of_the_size_asked_for_and_reads_back_as_written(
    faults: int, months: int, tmp_path: Path
) -> None:
    made = made_up_garage(faults, months, 1)
    assert (len(made.faults), made.months) == (faults, months)
    write_garage(made, tmp_path)
    assert read_garage(tmp_path) == made


@pytest.mark.parametrize(("faults", "months"), [(2, 6), (10_001, 6), (3, 0), (3, 37)])
def test_a_size_out_of_range_is_refused(faults: int, months: int) -> None:
    with pytest.raises(ValueError, match="expected"):
        made_up_garage(faults, months, 1)


@pytest.mark.parametrize("feature", FEATURES)
def test_a_small_garage_has(feature: str) -> None:
    assert FEATURES[feature](SMALL)


def test_nearly_every_option_can_be_ordered() -> None:
    barred = sum(bool(bars(SMALL, option)) for option in SMALL.options)
    assert 0 < barred / len(SMALL.options) < 0.2


def test_every_open_fault_has_two_to_four_lasting_options_of_its_own() -> None:
    for fault in SMALL.faults:
        own = [
            option
            for option in SMALL.options_for[fault.id]
            if option.lasting and option.alone
        ]
        assert 2 <= len(own) <= 4


def test_money_pays_for_about_two_fifths_of_the_work() -> None:
    work = 0.0
    for fault in SMALL.faults:
        if fault.status is FaultStatus.OPEN:
            goods = [
                price(SMALL, option).goods
                for option in SMALL.options_for[fault.id]
                if option.lasting and option.alone
            ]
            work += sum(goods) / len(goods)
    assert sum(SMALL.monthly_budget) / work == pytest.approx(0.4, rel=0.01)


def test_prices_have_a_heavy_tail() -> None:
    prices = sorted(price(SMALL, option).goods for option in SMALL.options)
    assert prices[-1] > 10 * prices[len(prices) // 2]
