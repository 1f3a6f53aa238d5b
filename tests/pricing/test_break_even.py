"""Where two options cost the same for a month of service."""

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from partsplan.domain import (
    BreakEven,
    Candidate,
    Coding,
    Garage,
    Lever,
    Option,
    Route,
    Supplier,
    Tax,
)
from partsplan.pricing import compare
from partsplan.pricing.annuity import capital_recovery, monthly_rate
from tests.support.building import garage, option, vehicle

CHANCES = st.fractions(0, Fraction(9, 10), max_denominator=20)
MONEY = st.integers(0, 10**6)
OPTIONS = st.builds(
    option,
    price=MONEY,
    currency=st.sampled_from(("EUR", "JPY")),
    supplier=st.sampled_from((None, "near", "far")),
    quantity=st.sampled_from((Fraction(1), Fraction(2), Fraction(3, 2))),
    core_deposit=st.one_of(st.just(0), MONEY),
    core_chance=CHANCES,
    core_return_cost=st.integers(0, 5000),
    coding=st.sampled_from(Coding),
    coding_cost=MONEY,
    consumables=st.integers(0, 5000),
    life_months=st.none() | st.integers(1, 60),
    dud_chance=CHANCES,
    warranty_months=st.sampled_from((0, 12)),
    lead_days=st.sampled_from((0, 30)),
    hours=st.fractions(0, 8, max_denominator=4),
)
GARAGES = st.builds(
    lambda first, second, rate, keep: garage(
        hour_value=2000,
        tax_rate=Fraction("0.19"),
        coding_tool=True,
        discount_rate=rate,
        rates={"JPY": Fraction("0.61")},
        vehicles=(vehicle(keep_months=keep),),
        suppliers=(
            Supplier(id="near", name="Mill Lane Spares", currency="EUR"),
            Supplier(
                id="far",
                name="Harbour Spares",
                currency="JPY",
                tax=Tax.ADDED,
                duty_rate=Fraction("0.045"),
            ),
        ),
        options=(replace(first, id="a"), replace(second, id="b")),
    ),
    OPTIONS,
    OPTIONS,
    st.sampled_from((Fraction(0), Fraction(1, 10))),
    st.integers(3, 60),
)


def by_id(made: Garage) -> dict[str, Candidate]:
    return {one.option.id: one for one in compare(made, "f1").candidates}


def month(candidate: Candidate) -> float:
    assert candidate.per_month is not None
    return candidate.per_month


def turned(made: Garage, option: Option, lever: Lever, value: Any) -> Candidate:
    """The option with one lever at another value."""
    other = replace(option, **{lever.value: value})
    options = tuple(other if one.id == option.id else one for one in made.options)
    return by_id(replace(made, options=options))[option.id]


def roundings(option: Option) -> Fraction:
    """What roundings can add to the expected cost, twice. [minor units]

    Half a unit of goods, with duty and tax on it, of duty, of tax and of the cost; a
    dud without a warranty is bought again.
    """
    again = 1 / (1 - option.dud_chance)
    return 2 * (Fraction("1.8") * again + Fraction("0.5"))


@settings(max_examples=200)
@given(GARAGES)
def test_turning_the_lever_there_makes_both_cost_the_same(made: Garage) -> None:
    found = by_id(made)
    for even in compare(made, "f1").break_evens:
        one, rival = found[even.option], month(found[even.rival])
        if even.lever is Lever.LIFE:
            assert one.fitted is not None
            assert even.at <= made.vehicles[0].keep_months - one.fitted
            rate = monthly_rate(float(made.discount_rate))
            here = one.price.expected * capital_recovery(rate, even.at)
            assert here == pytest.approx(rival, rel=1e-6)
            continue
        there = turned(made, one.option, even.lever, Fraction(even.at))
        assert one.service is not None
        recovery = month(there) / there.price.expected if there.price.expected else 1
        slack = recovery * float(roundings(there.option) + roundings(one.option))
        assert month(there) == pytest.approx(rival, rel=1e-6, abs=slack), even


@settings(max_examples=200)
@given(GARAGES)
def test_the_option_is_cheaper_on_the_side_that_is_told(made: Garage) -> None:
    found = by_id(made)
    for even in compare(made, "f1").break_evens:
        one, rival = found[even.option], month(found[even.rival])
        if even.now is None or abs(month(one) - rival) < 1:
            continue
        is_above = even.now > even.at
        assert (month(one) < rival) == (is_above == even.cheaper_above), even


def example() -> Garage:
    """Exchange part a for 687.50 a month against new part b for 625 a month.

    a: 100.00, coding 20.00, half of a deposit of 40.00 lost, a quarter of a dud at
    100.00, together 165.00 for 24 months. b: 225.00 for 36 months. At b's 6.25 a month
    a could cost 150.00, 15.00 less than it does.
    """
    return garage(
        options=(
            option(
                "a",
                route=Route.EXCHANGE,
                core_deposit=4000,
                core_chance=Fraction("0.5"),
                coding=Coding.PAID,
                coding_cost=2000,
                dud_chance=Fraction("0.2"),
                life_months=24,
            ),
            option("b", price=22500),
        ),
    )


@pytest.mark.parametrize(
    ("lever", "now", "at", "cheaper_above"),
    [
        (Lever.CORE_CHANCE, 0.5, 0.875, True),  # 15.00 of 40.00 more comes back
        (Lever.DUD_CHANCE, 0.2, 1 / 11, False),  # a tenth of a dud, not a quarter
        (Lever.CODING_COST, 2000, 500, False),
        (Lever.PRICE, 10000, 8800, False),  # 15.00 less for 1.25 parts
        (Lever.LIFE, 24, 26.4, True),  # 165.00 at 6.25 a month
    ],
)
def test_break_even_by_hand(
    lever: Lever, now: float, at: float, cheaper_above: bool
) -> None:
    found = compare(example(), "f1").break_evens
    assert found
    even = next(one for one in found if (one.option, one.lever) == ("a", lever))
    assert (even.rival, even.now, even.cheaper_above) == ("b", now, cheaper_above)
    assert even.at == pytest.approx(at)


def evens(made: Garage, option: str) -> dict[Lever, BreakEven]:
    found = compare(made, "f1").break_evens
    return {one.lever: one for one in found if one.option == option}


def test_values_out_of_a_levers_range_are_not_told() -> None:
    # b would have to cost 22.50 more to be no better than a: it has no deposit, no
    # paid coding, and is kept for 36 months at most
    assert set(evens(example(), "b")) == {Lever.DUD_CHANCE, Lever.PRICE, Lever.LIFE}
    made = example()
    cheaper = replace(made.options[1], price=11250)  # a could cost 75.00
    made = replace(made, options=(made.options[0], cheaper))
    # no chance saves 90.00, nor does coding for 20.00; 52.8 months are too many
    assert set(evens(made, "a")) == {Lever.PRICE}


def test_every_lasting_option_stands_against_the_cheapest_other_one() -> None:
    made = garage(
        options=(
            option("middle", price=12000),
            option("dear", price=15000),
            option("cheap", price=9000),
            option("barred", price=1, coding=Coding.SELF),
            option("brief", price=1, route=Route.STAND_IN, followup_within=1),
        )
    )
    found = compare(made, "f1")
    order = [one.option.id for one in found.candidates]
    assert order == ["brief", "cheap", "middle", "dear", "barred"]
    rivals = {even.option: even.rival for even in found.break_evens}
    assert rivals == {"cheap": "middle", "middle": "cheap", "dear": "cheap"}
