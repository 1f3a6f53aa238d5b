from dataclasses import replace
from fractions import Fraction

import pytest

from partsplan.diagnosis import diagnose
from partsplan.diagnosis.diagnose import sure_enough
from partsplan.domain import Route, RouteRule, System
from tests.support import building
from tests.support.suspects import cause, priced, suspecting


def order(*causes: tuple[str, str, int]) -> list[str]:
    garage = suspecting(*(cause(*one) for one in causes))
    return [one.cause.cause for one in diagnose(garage, "f1").steps]


def test_the_cheap_check_goes_before_the_likely_cause() -> None:
    assert order(("unit", ".6", 9000), ("wire", ".2", 500)) == ["wire", "unit"]


def test_ties_keep_the_order_of_the_file() -> None:
    alike = [("a", ".25", 1000), ("b", ".25", 1000), ("c", ".25", 1000)]
    assert order(*alike) == ["a", "b", "c"]
    assert order(*reversed(alike)) == ["c", "b", "a"]


def test_of_free_checks_the_one_that_finds_most_in_an_hour_comes_first() -> None:
    garage = suspecting(
        cause("belt", ".4", check_hours=Fraction(2)),
        cause("earth", ".3", check_hours=Fraction(1)),
        cause("fuse", ".3"),
    )
    found = diagnose(garage, "f1")
    assert [one.cause.cause for one in found.steps] == ["fuse", "earth", "belt"]
    assert found.expected == 0


def test_own_hours_cost_what_they_are_worth() -> None:
    garage = suspecting(
        cause("belt", ".5", 100, check_hours=Fraction(1, 2)), hour_value=500
    )
    assert diagnose(garage, "f1").expected == 100 + 250


def test_a_sure_cause_needs_no_check() -> None:
    (step,) = diagnose(priced([10000], [cause("pump", "1", 5000)]), "f1").steps
    assert not step.checked
    assert step.chance == 1


def test_where_it_may_be_something_else_the_last_one_is_checked_too() -> None:
    causes = [cause("pump", ".5", 1000), cause("relay", ".3", 400)]
    found = diagnose(priced([10000, 2000], causes), "f1")
    assert found.something_else == Fraction(1, 5)
    assert all(one.checked for one in found.steps)
    # relay first: 4.00, then in 7 of 10 cases 10.00; cures .5 x 100.00 + .3 x 20.00
    assert found.checks == 400 + 700
    assert found.expected == 400 + 700 + 5000 + 600
    # relay first: 20.00, then in 7 of 10 cases 100.00
    assert found.on_suspicion == 2000 + 7000
    assert found.saving == 9000 - 6700


def test_a_cause_of_chance_0_is_never_checked() -> None:
    causes = [cause("pump", "1", 1000), cause("gremlin", "0", 1)]
    found = diagnose(priced([10000, 1], causes), "f1")
    assert found.ruled_out == ("gremlin",)
    assert [one.cause.cause for one in found.steps] == ["pump"]
    assert found.expected == found.on_suspicion == 10000


def test_a_fault_without_causes_has_nothing_to_check() -> None:
    found = diagnose(suspecting(), "f1")
    assert (found.steps, found.trials, found.expected) == ((), (), 0)
    assert found.something_else == 1


def test_one_cure_for_two_causes_is_bought_once() -> None:
    garage = suspecting(
        cause("brushes", ".5", 100, cure="o1"),
        cause("winding", ".3", 100, cure="o1"),
        cause("belt", ".2", 100),
    )
    found = diagnose(garage, "f1")
    assert [(one.causes, one.checked) for one in found.trials] == [
        (("brushes", "winding"), True),
        (("belt",), False),  # nothing to buy, and all others are ruled out
    ]
    assert found.on_suspicion == 10000


def test_what_has_no_cure_is_checked_when_nothing_is_left_to_buy() -> None:
    garage = suspecting(
        cause("wire", ".1", 4000),
        cause("unit", ".6", 100, cure="o1"),
        cause("relay", ".1", 500),
    )
    found = diagnose(garage, "f1")
    assert [one.causes for one in found.trials] == [("unit",), ("relay",), ("wire",)]
    # 100.00, then in 4 of 10 cases 5.00, then in 3 of 10 cases 40.00
    assert found.on_suspicion == 10000 + 200 + 1200


def test_the_cure_counts_with_its_expected_cost() -> None:
    garage = suspecting(
        cause("unit", "1", cure="o1"),
        options=(building.option(core_deposit=5000, core_chance=Fraction(9, 10)),),
    )
    assert diagnose(garage, "f1").expected == 10000 + 500


def test_what_bars_a_cure_is_told() -> None:
    garage = suspecting(
        cause("hose", "1", cure="o1"),
        faults=(building.fault(system=System.BRAKES),),
        options=(building.option(route=Route.USED),),
    )
    (step,) = diagnose(garage, "f1").steps
    assert step.bars == (
        RouteRule(option="o1", route=Route.USED, system=System.BRAKES),
    )


@pytest.mark.parametrize(
    ("check", "cure", "threshold"),
    [
        (0, 10000, "1"),  # a free check: only certainty is enough
        (2500, 10000, ".75"),
        (10000, 10000, "0"),
        (20000, 10000, "0"),
        (0, 0, "0"),  # nothing is wasted
    ],
)
def test_how_sure_one_must_be(check: int, cure: int, threshold: str) -> None:
    assert sure_enough(Fraction(check), cure) == Fraction(threshold)


@pytest.mark.parametrize(
    "chance", ["1/100", "1/2", "74/100", "3/4", "76/100", "99/100"]
)
def test_at_the_threshold_check_and_purchase_cost_the_same(chance: str) -> None:
    """Whatever is done if it is not this cause costs the same in both ways."""
    check, cure, p = 2500, 10000, Fraction(chance)
    checked, unchecked = check + p * cure, Fraction(cure)
    threshold = sure_enough(Fraction(check), cure)
    assert (unchecked <= checked) == (p >= threshold)
    assert (unchecked == checked) == (p == threshold)


def test_who_is_sure_enough_skips_the_check() -> None:
    causes = [cause("unit", ".8", 2500), cause("wire", ".2", 10000)]
    garage = priced([10000, 10000], causes)
    unit, wire = diagnose(garage, "f1").steps
    assert (unit.skips_check, wire.skips_check) == (True, False)
    # 75 % is just enough for the unit
    causes = [cause("unit", ".75", 2500), cause("wire", ".25", 10000)]
    assert diagnose(priced([10000, 10000], causes), "f1").steps[0].skips_check
    dearer = replace(
        garage, options=(building.option("cure-0", price=20000), garage.options[1])
    )
    assert not diagnose(dearer, "f1").steps[0].skips_check
