"""What a garage works out from its own facts."""

from fractions import Fraction

import pytest

from partsplan.domain import ONE, FaultStatus, Fitted, Month, Stage, Stages
from tests.support.building import fault, garage, option, vehicle


def test_the_last_budget_and_hours_repeat() -> None:
    made = garage(months=4, budget=(100, 250), hours=(Fraction(3),))
    assert made.monthly_budget == (100, 250, 250, 250)
    assert made.monthly_hours == (Fraction(3),) * 4
    assert made.mean_budget == Fraction(850, 4)


def test_values_past_the_horizon_are_left_out() -> None:
    made = garage(months=2, budget=(100, 250, 900))
    assert made.monthly_budget == (100, 250)
    assert made.mean_budget == 175


def test_months_are_counted_from_the_start() -> None:
    made = garage(start=Month(2027, 11))
    assert made.index(Month(2028, 2)) == 3
    assert made.index(Month(2027, 10)) == -1
    assert made.month(3) == Month(2028, 2)


@pytest.mark.parametrize(
    ("driven_from", "driven"),
    [
        (Month(1900, 1), [True, True, True, True, False]),
        (Month(2027, 3), [False, False, True, True, False]),
        (None, [False] * 5),
    ],
)
def test_a_vehicle_is_driven_from_its_month_until_it_is_gone(
    driven_from: Month | None, driven: list[bool]
) -> None:
    car = vehicle(driven_from=driven_from, keep_months=4)
    made = garage(vehicles=(car,))
    assert [made.driven(car, month) for month in range(5)] == driven


@pytest.mark.parametrize(
    ("look_beyond", "keep_months", "end"), [(6, 36, 9), (0, 36, 3), (6, 5, 5)]
)
def test_a_fix_counts_beyond_the_horizon_while_the_vehicle_is_kept(
    look_beyond: int, keep_months: int, end: int
) -> None:
    car = vehicle(keep_months=keep_months)
    made = garage(look_beyond=look_beyond, vehicles=(car,))
    assert made.counted_end(car) == end


def test_options_are_found_under_every_fault_they_name() -> None:
    both, one = option("both", "f1", "f2"), option("one", "f2")
    made = garage(faults=(fault(), fault("f2"), fault("f3")), options=(both, one))
    assert made.options_for == {"f1": (both,), "f2": (both, one), "f3": ()}


def test_a_fault_is_relieved_by_the_best_of_what_was_fitted_and_lasts() -> None:
    made = garage()
    half, nearly, whole = (
        Fitted(option=f"o{end}", relief=relief, until=made.month(end))
        for end, relief in ((3, Fraction(1, 2)), (2, Fraction(9, 10)), (-1, ONE))
    )
    relieved = fault(fitted=(half, nearly, whole))
    found = [made.relieved(relieved, month) for month in range(4)]
    assert found == [Fraction(9, 10), Fraction(9, 10), Fraction(1, 2), 0]


def test_a_watched_fault_is_relieved_by_nothing() -> None:
    made = garage()
    for_ever = Fitted(option="o1", relief=ONE, until=made.month(99))
    watched = fault(status=FaultStatus.WATCH, fitted=(for_ever,))
    assert made.relieved(watched, 0) == 0


def test_own_currency_needs_no_rate() -> None:
    made = garage(rates={"JPY": Fraction("0.61")})
    assert made.rate("EUR") == 1
    assert made.rate("JPY") == Fraction("0.61")


def test_facts_are_found_by_id() -> None:
    made = garage()
    assert made.fault["f1"] is made.faults[0]
    assert made.option["o1"] is made.options[0]
    assert made.vehicle["v1"] is made.vehicles[0]


def test_stages_are_told_by_name() -> None:
    stages = Stages(
        missed_deadlines=1,
        unsafe_vehicle_months=2,
        undrivable_vehicle_months=3,
        net_worth=4,
    )
    assert [stages.of(stage) for stage in Stage] == [1, 2, 3, 4]
