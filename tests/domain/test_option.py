"""What an option is by its route and by what it fixes."""

from fractions import Fraction

import pytest

from partsplan.domain import Route
from tests.support.building import option


@pytest.mark.parametrize("route", list(Route))
def test_only_a_stand_in_comes_off_again(route: Route) -> None:
    made = option(route=route, life_months=24, followup_within=2)
    assert made.lasting == (route is not Route.STAND_IN)
    assert made.life == (24 if made.lasting else 2)


def test_without_a_life_it_has_no_end() -> None:
    assert option().life is None


def test_it_cures_a_fault_alone_if_it_names_no_other() -> None:
    assert option("o1", "f1:0.5").alone == "f1"
    assert option("o1", "f1", "f2").alone is None


def test_relief_is_none_for_faults_it_does_not_name() -> None:
    made = option("o1", "f1", "f2:0.3")
    reliefs = [made.relief(name) for name in ("f1", "f2", "f3")]
    assert reliefs == [1, Fraction("0.3"), 0]


@pytest.mark.parametrize(("days", "months"), [(0, 0), (1, 1), (30, 1), (31, 2)])
def test_a_credit_comes_in_the_month_that_has_begun(days: int, months: int) -> None:
    assert option(core_days=days).core_months == months


@pytest.mark.parametrize(("relief", "cures"), [("0.8", True), ("0.79", False)])
def test_a_fault_counts_as_cured_from_four_fifths_on(relief: str, cures: bool) -> None:
    assert option("o1", f"f1:{relief}").fixes[0].cures == cures
