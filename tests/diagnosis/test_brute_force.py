"""Random causes: no order is cheaper than the one that is told."""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import permutations

from hypothesis import given, settings
from hypothesis import strategies as st

from partsplan.diagnosis import diagnose
from partsplan.domain import CheckStep, Diagnosis
from tests.support.suspects import cause, priced

ZERO = Fraction(0)


@st.composite
def diagnoses(draw: st.DrawFn) -> Diagnosis:
    """Up to five causes, some with free checks, some without a cure or all told."""
    weights = draw(st.lists(st.integers(1, 9), min_size=1, max_size=5))
    whole = sum(weights) + draw(st.sampled_from((0, 0, 3)))
    causes = [
        cause(
            f"c{place}",
            Fraction(weight, whole),
            draw(st.sampled_from((0, 100, 700, 4000))),
            check_hours=Fraction(draw(st.integers(0, 3)), 2),
        )
        for place, weight in enumerate(weights)
    ]
    prices = [draw(st.sampled_from((0, 300, 5000, 20000))) for _ in causes]
    garage = priced(prices, causes, hour_value=draw(st.sampled_from((0, 500))))
    kept = tuple(
        draw(st.sampled_from((one, replace(one, cure=None)))) for one in garage.causes
    )
    return diagnose(replace(garage, causes=kept), "f1")


def story(order: Sequence[CheckStep], guilty: CheckStep | None) -> Fraction:
    """What is paid if that one is the cause, told check by check."""
    paid, suspects = ZERO, list(order)
    closed = sum((one.cause.chance for one in order), ZERO) == 1
    while suspects:
        now = suspects.pop(0)
        if suspects or not closed:
            paid += now.check
        if now is guilty:
            return paid + (now.cure_cost or 0)
    return paid


def bought(order: Sequence[CheckStep], guilty: CheckStep | None) -> Fraction:
    """The same for somebody who buys whatever can be bought."""
    paid, suspects = ZERO, list(order)
    closed = sum((one.cause.chance for one in order), ZERO) == 1
    while suspects:
        now = suspects.pop(0)
        if now.cure_cost is not None:
            paid += now.cure_cost
        elif suspects or not closed:
            paid += now.check
        if now is guilty:
            return paid
    return paid


def buys_first(order: Sequence[CheckStep]) -> bool:
    """Whether all that can be bought comes before the rest."""
    bought = [one.cure_cost is not None for one in order]
    return bought == sorted(bought, reverse=True)


def at_once(order: Sequence[CheckStep], guilty: CheckStep | None) -> Fraction:
    """The same for somebody who checks unless told to buy at once."""
    paid, suspects = ZERO, list(order)
    while suspects:
        now = suspects.pop(0)
        if now.skips_check:
            paid += now.cure_cost or 0
        elif now.checked:
            paid += now.check
        if now is guilty:
            return paid + (0 if now.skips_check else now.cure_cost or 0)
    return paid


def mean(found: Diagnosis, of: object, order: Sequence[CheckStep]) -> Fraction:
    assert callable(of)
    whole = found.something_else * of(order, None)
    for one in order:
        whole += one.cause.chance * of(order, one)
    return Fraction(whole)


@settings(max_examples=60)
@given(diagnoses())
def test_no_order_of_checks_is_cheaper(found: Diagnosis) -> None:
    costs = [mean(found, story, order) for order in permutations(found.steps)]
    assert round(mean(found, story, found.steps)) == found.expected
    assert round(min(costs)) == found.expected


@settings(max_examples=60)
@given(diagnoses())
def test_no_order_of_buying_is_cheaper(found: Diagnosis) -> None:
    costs = [
        mean(found, bought, order)
        for order in permutations(found.steps)
        if buys_first(order)
    ]
    told = [
        next(one for one in found.steps if one.cause.cause in trial.causes)
        for trial in found.trials
    ]
    assert round(min(costs)) == found.on_suspicion
    assert round(mean(found, bought, told)) == found.on_suspicion


@settings(max_examples=60)
@given(diagnoses())
def test_buying_at_once_where_told_is_never_dearer(found: Diagnosis) -> None:
    assert round(mean(found, at_once, found.steps)) == found.at_once
    assert found.at_once <= found.expected


@settings(max_examples=60)
@given(diagnoses())
def test_free_checks_go_first(found: Diagnosis) -> None:
    free = [not one.check for one in found.steps]
    assert free == sorted(free, reverse=True)


@settings(max_examples=60)
@given(diagnoses())
def test_the_turn_of_a_cause_comes_after_those_before_it(found: Diagnosis) -> None:
    left = Fraction(1)
    for one in found.steps:
        assert one.chance * left == one.cause.chance
        assert one.checked == (one.chance < 1)
        left -= one.cause.chance
    assert left == found.something_else
