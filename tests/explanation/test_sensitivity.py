"""Ranges in which the next purchases stay the same; ends worked out by hand."""

from collections.abc import Iterator
from fractions import Fraction
from itertools import islice

import pytest

from partsplan.domain import (
    Garage,
    Likelihood,
    Needs,
    Plan,
    Sensitivity,
    Setting,
    Severity,
    SteadyRange,
)
from partsplan.explanation import sensitivity
from partsplan.explanation.sensitivity import bought_first
from partsplan.explanation.settings import value_of, with_setting
from partsplan.planning import plan
from tests.support.asking import CLOSE, Asking
from tests.support.building import bought, fault, garage, option
from tests.support.small_garages import small_garage


def ranges(made: Garage) -> dict[Setting, SteadyRange]:
    return {one.setting: one for one in found(made).ranges}


def found(made: Garage, asking: Asking | None = None) -> Sensitivity:
    _, sensed = sensitivity(made, asking or Asking(), limits=CLOSE)
    assert sensed is not None
    return sensed


def test_the_worth_of_a_point_ends_where_a_job_costs_what_it_gains() -> None:
    """50 points for 3 months gain 150 points; 3 of 36 months of 100.00 are 8.33."""
    one = ranges(garage())[Setting.MONEY_PER_POINT]
    assert one.now == 100
    assert one.step == 1
    assert one.low.breaks == 5  # 150 x 5 = 750 < 833 < 900 = 150 x 6
    assert one.low.holds == 6
    assert one.low.drops == ("o1",)
    assert one.low.adds == ()
    assert one.high.breaks is None
    assert one.high.holds == 6400


def test_the_reserve_ends_where_the_first_month_cannot_pay_any_more() -> None:
    one = ranges(garage())[Setting.RESERVE]  # 200.00 come in, 100.00 go out
    assert one.low.holds == 0
    assert one.low.breaks is None
    assert one.high.holds == 10000
    assert one.high.breaks is not None
    assert 0 < one.high.breaks - one.high.holds <= 100
    assert one.high.drops == ("o1",)
    assert one.high.possible


def test_a_reserve_that_no_plan_can_hold_is_an_end_too() -> None:
    one = ranges(garage(options=()))[Setting.RESERVE]
    assert one.high.holds == 20000
    assert not one.high.possible
    assert (one.high.adds, one.high.drops) == ((), ())


def test_weights_turn_a_purchase_from_a_danger_to_a_wish() -> None:
    """Money for one: S = 24 against E = 100, so 0.6 x 24 against 0.1 x 100."""
    made = garage(
        budget=(10000, 0),
        faults=(
            fault(
                "risk",
                points=None,
                severity=Severity.MARGINAL,
                likelihood=Likelihood.PROBABLE,
            ),
            fault("wish", points=None, enjoyment=Fraction(10)),
        ),
        options=(option("o1", "risk"), option("o2", "wish")),
    )
    by_setting = ranges(made)
    safety, joy = by_setting[Setting.SAFETY], by_setting[Setting.ENJOYMENT]
    level = Fraction(1, 10) * 100 / 24  # the weight of safety at which both are equal
    assert safety.low.breaks is not None
    assert safety.low.breaks <= level <= safety.low.holds
    assert (safety.low.adds, safety.low.drops) == (("o2",), ("o1",))
    level = Fraction(6, 10) * 24 / 100
    assert joy.high.breaks is not None
    assert joy.high.holds <= level <= joy.high.breaks
    assert by_setting[Setting.DRIVABILITY].low.breaks is None
    assert by_setting[Setting.DRIVABILITY].high.breaks is None


def planned() -> Iterator[Garage]:
    for seed in range(200):
        made = small_garage(seed)
        best = plan(made, gap=0.0)
        if isinstance(best, Plan) and bought_first(made, best.choices):
            yield made


@pytest.mark.parametrize("made", list(islice(planned(), 4)))
def test_both_sides_of_every_end_were_planned(made: Garage) -> None:
    asking = Asking()
    sensed = found(made, asking)
    tried = {setting: set[Fraction]() for setting in Setting}
    for question in asking.asked:
        for setting in Setting:
            value = value_of(question.garage, setting)
            if question.garage == with_setting(made, setting, value):
                tried[setting].add(value)
    assert sensed.plans == len(asking.asked)
    for one in sensed.ranges:
        for end in (one.low, one.high):
            assert end.holds in tried[one.setting]
            if end.breaks is None:
                continue
            assert end.breaks in tried[one.setting]
            assert abs(end.breaks - end.holds) <= max(one.step, end.breaks / 100)
            beyond = plan(with_setting(made, one.setting, end.breaks), gap=0.0)
            if isinstance(beyond, Needs):
                assert not end.possible
            else:
                assert end.adds or end.drops


def test_what_is_bought_already_is_no_purchase() -> None:
    made = garage(
        faults=(fault(), fault("f2")), options=(bought("o1", "f1"), option("o2", "f2"))
    )
    sensed = found(made)
    assert sensed.purchases == ("o2",)
    reserve = next(one for one in sensed.ranges if one.setting is Setting.RESERVE)
    assert reserve.high.drops == ("o2",)


def test_a_part_that_waits_drops_a_purchase_as_soon_as_it_can_be_fitted() -> None:
    # 100.00 and the hours for one of them; the part takes 80.00, and is worth less
    made = garage(
        budget=(10000, 0),
        hours=(Fraction(8), Fraction(0)),
        reserve=5000,
        faults=(fault(points=Fraction(1)), fault("f2")),
        options=(
            bought("o1", "f1", consumables=8000, hours=Fraction(8)),
            option("o2", "f2", price=4000, hours=Fraction(8)),
        ),
    )
    assert found(made).purchases == ("o2",)
    low = ranges(made)[Setting.RESERVE].low
    assert low.breaks is not None
    assert low.breaks <= 2000 < low.holds <= 2100
    assert low.drops == ("o2",)


def test_two_purchases_as_good_as_each_other_are_no_change() -> None:
    twins = garage(options=(option("o1"), option("o2")))
    one = ranges(twins)[Setting.MONEY_PER_POINT]
    assert one.low.breaks == 5
    assert one.low.adds == ()


def test_a_garage_without_a_plan_has_no_ranges() -> None:
    needs, sensed = sensitivity(garage(opening_cash=-90000), Asking(), limits=CLOSE)
    assert isinstance(needs, Needs)
    assert sensed is None


def test_a_search_that_was_stopped_tells_how_far_it_came() -> None:
    sensed = found(garage(), Asking(most=9))
    assert sensed.interrupted
    assert sensed.plans == 9
    assert len(sensed.ranges) == len(Setting)


def test_a_search_stopped_before_a_plan_says_nothing() -> None:
    with pytest.raises(KeyboardInterrupt):
        sensitivity(garage(), Asking(most=0), limits=CLOSE)
