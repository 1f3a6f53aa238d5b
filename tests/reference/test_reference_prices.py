"""Prices of the reference, worked out by hand."""

from fractions import Fraction

import pytest

from partsplan.domain import (
    Coding,
    FaultStatus,
    Instalment,
    Option,
    Route,
    Supplier,
    System,
    Tax,
    Vehicle,
)
from tests.support.reference import offers, refusals
from tests.support.tiny_garage import START, fixes, tiny_fault, tiny_garage, tiny_option


def instalments(*parts: tuple[int, str]) -> tuple[Instalment, ...]:
    return tuple(Instalment(months=m, share=Fraction(share)) for m, share in parts)


def test_every_part_of_a_price_is_rounded_once() -> None:
    option = tiny_option(
        price=333,
        quantity=Fraction("1.5"),
        currency="USD",
        supplier="s1",
        core_deposit=101,
        core_chance=Fraction("0.8"),
        core_return_cost=9,
        coding=Coding.PAID,
        coding_cost=20,
        consumables=7,
        hours=Fraction("1.5"),
        dud_chance=Fraction("0.2"),
        life_months=5,
        instalments=instalments((0, "0.25"), (1, "0.75")),
    )
    supplier = Supplier(
        id="s1",
        name="s1",
        currency="USD",
        tax=Tax.ADDED,
        duty_rate=Fraction("0.1"),
    )
    garage = tiny_garage(
        options=(option,),
        suppliers=(supplier,),
        rates={"USD": Fraction("0.9")},
        tax_rate=Fraction("0.19"),
        hour_value=11,
    )
    offer = offers(garage)["o1", 0]
    assert offer.goods == 450  # 333 x 1.5 x 0.9 = 449.55
    assert offer.landed == 589  # 450 + duty 45 + tax (495 x 0.19 = 94.05)
    assert offer.deposit == 136  # 101 x 1.5 x 0.9 = 136.35
    # 589 + 20 + 7 + hours 16.5 + lost 27.2 + return 9 + duds 605.5 / 4 = 820.075
    assert offer.expected == 820
    assert offer.charge == 492  # three of five months
    # Month 0: 589 / 4 = 147.25, deposit 136, coding and consumables 27; then the
    # rest of 442 and the return 9.
    assert offer.out == (310, 451, 0)
    assert offer.back == (0, 136, 0)


@pytest.mark.parametrize(("price", "goods"), [(5, 2), (7, 4), (9, 4), (11, 6)])
def test_halves_go_to_the_even_neighbour(price: int, goods: int) -> None:
    option = tiny_option(price=price, quantity=Fraction("0.5"))
    assert offers(tiny_garage(options=(option,)))["o1", 0].goods == goods


def test_duty_and_tax_go_to_the_even_neighbour_too() -> None:
    supplier = Supplier(
        id="s1", name="", currency="EUR", tax=Tax.ADDED, duty_rate=Fraction("0.1")
    )
    garage = tiny_garage(
        options=(tiny_option(price=25, supplier="s1"),),
        suppliers=(supplier,),
        tax_rate=Fraction("0.5"),
    )
    assert offers(garage)["o1", 0].landed == 41  # 25 + 2 (2.5) + 14 (13.5)


def test_parts_are_paid_when_ordered_and_work_when_fitted() -> None:
    option = tiny_option(
        price=100,
        lead_days=15,
        core_deposit=40,
        core_return_cost=6,
        coding=Coding.PAID,
        coding_cost=3,
        consumables=5,
        valid_until=START,
    )
    garage = tiny_garage(options=(option,))
    assert offers(garage)["o1", 0].out == (140, 8, 6)
    assert offers(garage)["o1", 0].back == (0, 0, 40)


@pytest.mark.parametrize(("relief", "cured"), [("0.79", False), ("0.8", True)])
def test_four_fifths_of_relief_cure(relief: str, cured: bool) -> None:
    option = tiny_option(fixes=fixes("f1", relief=Fraction(relief)))
    offer = offers(tiny_garage(options=(option,)))["o1", 2]
    assert (("f1", 2) in offer.cured) == cured


def test_a_month_that_is_just_warm_enough_will_do() -> None:
    garage = tiny_garage(
        options=(tiny_option(min_temp=Fraction(5)),),
        mean_temperature=(Fraction(5), Fraction("4.9"), *[Fraction(20)] * 10),
    )
    assert refusals(garage) == {("o1", 1): "too cold"}


def test_a_warranty_pays_for_the_next_part_but_not_for_the_hours() -> None:
    option = tiny_option(
        price=100, hours=Fraction(2), dud_chance=Fraction("0.5"), warranty_months=12
    )
    garage = tiny_garage(options=(option,), hour_value=10)
    assert offers(garage)["o1", 0].expected == 140  # 100 + 20 + 1 x 20


@pytest.mark.parametrize(
    ("lead_days", "fitted"), [(0, 0), (14, 0), (15, 1), (44, 1), (45, 2)]
)
def test_a_part_is_fitted_once_it_is_there_by_the_middle_of_a_month(
    lead_days: int, fitted: int
) -> None:
    garage = tiny_garage(options=(tiny_option(lead_days=lead_days),))
    assert offers(garage)["o1", 0].fitted == fitted


@pytest.mark.parametrize(
    ("core_days", "back"),
    [(0, (9, 0, 0)), (1, (0, 9, 0)), (30, (0, 9, 0)), (31, (0, 0, 9)), (61, (0, 0, 0))],
)
def test_a_deposit_comes_back_a_begun_month_at_a_time(
    core_days: int, back: tuple[int, ...]
) -> None:
    option = tiny_option(core_deposit=9, core_days=core_days)
    assert offers(tiny_garage(options=(option,)))["o1", 0].back == back


def test_a_deposit_below_trust_never_comes_back_and_costs_its_chance() -> None:
    option = tiny_option(
        price=100, core_deposit=40, core_chance=Fraction("0.75"), core_return_cost=6
    )
    offer = offers(tiny_garage(options=(option,)))["o1", 0]
    assert offer.out == (140, 6, 0)
    assert offer.back == (0, 0, 0)
    assert offer.expected == 116  # 100 + 40 / 4 + 6


def test_a_return_costs_nothing_where_there_is_no_deposit() -> None:
    offer = offers(tiny_garage(options=(tiny_option(core_return_cost=6),)))["o1", 0]
    assert offer.expected == sum(offer.out) == offer.landed


@pytest.mark.parametrize(
    ("parts", "out"),
    [
        (((0, "0.25"), (1, "0.25"), (2, "0.5")), (2, 2, 6)),  # 2.5, 2.5, the rest
        (((0, "0.35"), (5, "0.65")), (4, 0, 0)),  # 3.5; the rest past the horizon
        (((1, "1"),), (0, 10, 0)),
    ],
)
def test_the_last_instalment_takes_the_rounding(
    parts: tuple[tuple[int, str], ...], out: tuple[int, ...]
) -> None:
    option = tiny_option(price=10, instalments=instalments(*parts))
    assert offers(tiny_garage(options=(option,)))["o1", 0].out == out


@pytest.mark.parametrize(
    ("life", "keep", "look_beyond", "charge"),
    [
        (None, 10, 2, 44),  # 100 x 4 counted of 9 kept months
        (2, 10, 2, 100),  # worn out before the count ends
        (8, 10, 2, 50),  # 4 of 8
        (20, 10, 2, 44),  # no more than the vehicle is kept
        (None, 4, 2, 100),  # kept no longer than counted
        (None, 10, 0, 22),  # 2 of 9
    ],
)
def test_a_plan_pays_for_the_months_it_counts(
    life: int | None, keep: int, look_beyond: int, charge: int
) -> None:
    garage = tiny_garage(
        vehicles=(Vehicle(id="v1", name="v1", keep_months=keep),),
        options=(tiny_option(price=100, life_months=life, lead_days=15),),
        look_beyond=look_beyond,
    )
    assert offers(garage)["o1", 0].charge == charge


def test_a_stand_in_lives_until_its_follow_up() -> None:
    option = tiny_option(
        route=Route.STAND_IN, price=100, life_months=30, followup_within=2
    )
    offer = offers(tiny_garage(options=(option,)))["o1", 0]
    assert (offer.until, offer.charge) == (2, 100)


REFUSED = {
    "nothing open": tiny_option(fixes=fixes("watched")),
    "route rule": tiny_option(fixes=fixes("belt"), route=Route.USED),
    "not road legal": tiny_option(road_legal=False),
    "no coding tool": tiny_option(coding=Coding.SELF),
    "quote over": tiny_option(valid_until=START.plus(-1)),
    "past the horizon": tiny_option(lead_days=75),
    "too early": tiny_option(not_before=START.plus(1)),
    "too late": tiny_option(lead_days=45, not_after=START.plus(1)),
    "vehicle gone": tiny_option(fixes=fixes("old"), lead_days=15),
    "too cold": tiny_option(min_temp=Fraction(5)),
}


@pytest.mark.parametrize(("reason", "option"), REFUSED.items())
def test_an_option_makes_no_offer_for_a_reason(reason: str, option: Option) -> None:
    garage = tiny_garage(
        vehicles=(
            Vehicle(id="v1", name="v1"),
            Vehicle(id="v2", name="v2", keep_months=1),
        ),
        faults=(
            tiny_fault(),
            tiny_fault(id="belt", system=System.RESTRAINT),
            tiny_fault(id="watched", status=FaultStatus.WATCH),
            tiny_fault(id="old", vehicle="v2"),
        ),
        options=(option,),
        mean_temperature=(Fraction(4), *[Fraction(20)] * 11),
    )
    assert refusals(garage)["o1", 0] == reason
    assert ("o1", 0) not in offers(garage)


@pytest.mark.parametrize(
    ("system", "routes"),
    [
        (System.RESTRAINT, {"used", "economy", "stand-in", "refinish"}),
        (System.BRAKES, {"refinish"}),
        (System.STEERING, {"refinish"}),
        (System.TYRES, {"refinish"}),
        (System.FUEL, {"refinish"}),
        (System.ENGINE, set()),
    ],
)
@pytest.mark.parametrize("risky", [True, False])
def test_route_rules_by_system(system: System, routes: set[str], risky: bool) -> None:
    garage = tiny_garage(
        faults=(tiny_fault(system=system),),
        options=tuple(
            tiny_option(id=route, route=route, followup_within=1) for route in Route
        ),
        allow_risky_routes=risky,
    )
    if not risky and routes:
        routes = {"used", "economy", "stand-in", "refinish"}
    assert {name for name, _ in refusals(garage)} == routes
