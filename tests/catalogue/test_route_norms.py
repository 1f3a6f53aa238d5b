"""Route norms make sense side by side; all of it common practice, no source."""

from fractions import Fraction

import pytest

from partsplan.catalogue import RouteNorm, route_norm
from partsplan.domain import Route, System

EACH_SYSTEM = pytest.mark.parametrize("system", list(System))
KEPT = 1000
"""Stands for a life as long as the vehicle is kept. [months]"""


def life(route: Route, system: System) -> int:
    months = route_norm(route, system).life_months
    return KEPT if months is None else months


def duds(route: Route, system: System) -> Fraction:
    chance = route_norm(route, system).dud_chance
    assert chance is not None
    return chance


def warranty(route: Route, system: System) -> int:
    months = route_norm(route, system).warranty_months
    assert months is not None
    return months


@EACH_SYSTEM
def test_economy_and_used_parts_have_more_duds_than_good_new_ones(
    system: System,
) -> None:
    for good in (Route.NEW, Route.OEM_SPEC):
        assert duds(Route.ECONOMY, system) > duds(good, system)
        assert duds(Route.USED, system) > duds(good, system)


@pytest.mark.parametrize("route", list(Route))
@EACH_SYSTEM
def test_most_parts_of_every_route_are_good(route: Route, system: System) -> None:
    assert 0 < duds(route, system) <= Fraction(15, 100)


def test_economy_sensors_are_worse_than_other_economy_parts() -> None:
    usual = duds(Route.ECONOMY, System.OTHER)
    assert duds(Route.ECONOMY, System.ELECTRICS) >= 2 * usual
    assert duds(Route.ECONOMY, System.EXHAUST) >= 2 * usual


@EACH_SYSTEM
def test_used_and_economy_parts_do_not_outlive_good_new_ones(system: System) -> None:
    for short in (Route.USED, Route.ECONOMY, Route.REFINISH):
        assert life(short, system) < life(Route.OEM_SPEC, system)
    assert life(Route.UPRATED, system) >= life(Route.OEM_SPEC, system)
    assert life(Route.NEW, system) >= life(Route.OEM_SPEC, system)


@EACH_SYSTEM
def test_exchange_units_carry_one_to_two_years_of_warranty(system: System) -> None:
    assert 12 <= warranty(Route.EXCHANGE, system) <= 24
    assert warranty(Route.USED, system) <= 3
    assert warranty(Route.STAND_IN, system) == 0


@EACH_SYSTEM
def test_only_exchange_has_days_for_the_old_unit(system: System) -> None:
    for route in Route:
        days = route_norm(route, system).core_days
        assert days == (30 if route is Route.EXCHANGE else None)


@EACH_SYSTEM
def test_sending_the_own_unit_in_takes_longer_than_an_exchange(system: System) -> None:
    exchange = route_norm(Route.EXCHANGE, system).lead_days
    send_in = route_norm(Route.SEND_IN, system).lead_days
    assert exchange is not None
    assert send_in is not None
    assert send_in > exchange


@EACH_SYSTEM
def test_a_stand_in_has_no_life_of_its_own(system: System) -> None:
    assert route_norm(Route.STAND_IN, system).life_months is None


def test_a_row_for_the_system_stands_instead_of_the_row_for_all() -> None:
    tyres = route_norm(Route.USED, System.TYRES)
    assert tyres == RouteNorm(
        life_months=18, dud_chance=Fraction(6, 100), warranty_months=0, lead_days=4
    )
    assert route_norm(Route.USED, System.OTHER) != tyres
    assert route_norm(Route.USED, System.OTHER) == route_norm(
        Route.USED, System.RESTRAINT
    )
