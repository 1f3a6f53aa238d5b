"""Prices, points and budgets that turn a choice, each side planned anew."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from partsplan.domain import (
    Garage,
    Plan,
    Stage,
    Supplier,
    Threshold,
    Turn,
    WhyNot,
)
from partsplan.explanation import subjects, why
from partsplan.explanation.turning import Left
from partsplan.intake import read_garage
from partsplan.planning import Planner, plan, replan
from tests.support.asking_why import (
    CLOSE,
    PLENTY,
    closed,
    forced_in,
    left_out,
    order,
    small_plan,
    turned_to,
    why_not,
)
from tests.support.building import fault, garage, option
from tests.support.reference import Best, best

HOUSEHOLD = Path(__file__).parents[2] / "scenarios" / "household"
SEEDS = range(0, 12)
"""Money moves on in some of them and is lost in others."""
MORE_SEEDS = range(12, 150)
ENDS = {Turn.PRICE: 0, Turn.POINTS: 100, Turn.ENJOYMENT: 10}
OVER = 3
"""The largest budget that is tried, in budgets of now."""


@cache
def waiting(seed: int) -> tuple[tuple[Garage, WhyNot], ...]:
    """The answers for the faults and options that a small garage leaves alone."""
    planned = small_plan(seed)
    return tuple(_waiting(*planned)) if planned else ()


def _waiting(planner: Planner, found: Plan) -> Iterator[tuple[Garage, WhyNot]]:
    made = planner.garage
    taken = found.choices.orders
    faults = [one for one in subjects(made, found) if one not in taken]
    options = [one.id for one in made.options if one.id not in taken]
    for subject in (*faults, *options[:2]):
        for answer in why(planner, found, subject, limits=CLOSE, left=lambda: PLENTY):
            assert isinstance(answer, WhyNot)
            yield made, answer


def naming(made: Garage, subject: str) -> set[str]:
    """The option itself, or all that name the fault."""
    if subject in made.option:
        return {subject}
    return {one.id for one in made.options_for[subject]}


def loss(made: Garage, found: Best | None) -> tuple[int, ...]:
    """The figures of a best choice; less is better."""
    assert found is not None
    return tuple(
        -figure if stage is Stage.WORTH else figure
        for stage, figure in zip(made.priority, found.figures, strict=True)
    )


def tried(
    made: Garage, subject: str
) -> tuple[tuple[int, ...], tuple[int, ...], tuple[int, ...] | None]:
    """The best of all choices, the best without the job, and a plan made with it.

    The first two come from a program that tries every choice.
    """
    forced = replan(made, force=forced_in(made, subject), gap=0.0)
    found = plan(made, gap=0.0)
    assert isinstance(found, Plan)
    of_all = loss(made, best(made))
    assert order(made, found.stages) == of_all
    without = loss(made, best(closed(made, naming(made, subject))))
    return (
        of_all,
        without,
        order(made, forced.stages) if isinstance(forced, Plan) else None,
    )


def check_ends(threshold: Threshold) -> None:
    """What was tried last, where nothing was found."""
    if threshold.at is not None:
        towards = threshold.not_at - threshold.now
        assert (threshold.at - threshold.not_at) * (towards or 1) != 0
    elif threshold.turn is Turn.BUDGET:
        assert threshold.not_at == OVER * threshold.now
    else:
        assert threshold.not_at == ENDS[threshold.turn]


def check_small(made: Garage, subject: str, threshold: Threshold) -> None:
    """Both sides of a threshold, with every choice tried."""
    check_ends(threshold)
    if threshold.at is not None:
        of_all, without, forced = tried(
            turned_to(made, subject, threshold, threshold.at), subject
        )
        assert forced == of_all
        # A budget is told from a plan that has the job; another may be as good.
        assert of_all < without or threshold.turn is Turn.BUDGET
    of_all, without, forced = tried(
        turned_to(made, subject, threshold, threshold.not_at), subject
    )
    assert without == of_all
    assert forced is None or forced >= without


@pytest.mark.parametrize(
    "seed",
    [*SEEDS, *(pytest.param(seed, marks=pytest.mark.slow) for seed in MORE_SEEDS)],
)
def test_with_every_choice_tried_the_choice_turns_where_told(seed: int) -> None:
    for made, answer in waiting(seed):
        assert not answer.cut_short
        for threshold in answer.thresholds:
            check_small(made, answer.subject, threshold)


@pytest.mark.parametrize("seed", SEEDS)
def test_beyond_the_turn_it_stays_chosen_and_before_it_not(seed: int) -> None:
    for made, answer in waiting(seed):
        for threshold in answer.thresholds:
            if threshold.turn is Turn.BUDGET or threshold.at is None:
                continue
            if threshold.turn is Turn.PRICE and sent_free(made, threshold):
                continue  # a lower price may cost shipping
            end = ENDS[threshold.turn]
            for value in between(threshold, threshold.at, Fraction(end)):
                changed = turned_to(made, answer.subject, threshold, value)
                of_all, without, _ = tried(changed, answer.subject)
                assert of_all < without
            for value in between(threshold, threshold.now, threshold.not_at):
                changed = turned_to(made, answer.subject, threshold, value)
                of_all, without, _ = tried(changed, answer.subject)
                assert of_all == without


def sent_free(made: Garage, threshold: Threshold) -> bool:
    """Whether the supplier of the option sends large orders for free."""
    supplier = made.option[threshold.option or ""].supplier
    return supplier is not None and made.supplier[supplier].free_over is not None


def between(threshold: Threshold, one: Fraction, other: Fraction) -> set[Fraction]:
    """A few values from one to another; whole ones for a price."""
    values = {one + (other - one) * share / 4 for share in range(5)}
    if threshold.turn is Turn.PRICE:
        low, high = sorted((one, other))
        values = {min(max(Fraction(round(value)), low), high) for value in values}
    return values


def test_the_small_garages_turn_in_every_way() -> None:
    told = Counter(
        (threshold.turn, threshold.at is not None)
        for seed in SEEDS
        for _, answer in waiting(seed)
        for threshold in answer.thresholds
    )
    for turn in (Turn.PRICE, Turn.POINTS, Turn.BUDGET):
        assert told[turn, True]
    assert told[Turn.PRICE, False]
    assert told[Turn.BUDGET, False]
    kept = {made.carry_over for seed in SEEDS for made, _ in waiting(seed)}
    assert kept == {True, False}


def at_price(made: Garage, price: int) -> Plan:
    """The plan with another price of the only option for the first fault."""
    changed = replace(made.options[0], price=price)
    found = plan(replace(made, options=(changed, *made.options[1:])), gap=0.0)
    assert isinstance(found, Plan)
    return found


def of(answer: WhyNot, turn: Turn) -> Threshold:
    (found,) = [one for one in answer.thresholds if one.turn is turn]
    return found


def tells(threshold: Threshold, now: int, not_at: int, at: int | Fraction) -> bool:
    told = threshold.now, threshold.not_at, threshold.at
    return told == (Fraction(now), Fraction(not_at), Fraction(at))


def crowded(**changes: Any) -> Garage:
    """Money for one of two jobs; that of ``f1`` waits."""
    facts: dict[str, Any] = {
        "budget": (6000,),
        "faults": (fault(), fault("f2", points=Fraction(80))),
        "options": (option(price=12000), option("o2", "f2", price=12000)),
    }
    return garage(**facts | changes)


def test_the_price_and_the_budget_at_which_both_jobs_fit() -> None:
    """180.00 in three months, of which 120.00 are taken: 60.00 are left."""
    answer = why_not(crowded(), "f1")
    price = of(answer, Turn.PRICE)
    # The dearest price told is a whole step of 0.60 away from what is too dear.
    assert price.at == 6000
    assert price.not_at == 6060
    budget = of(answer, Turn.BUDGET)
    assert budget.at is not None
    assert budget.not_at < 8000 <= budget.at
    assert budget.at - budget.not_at <= 60


def test_the_points_above_which_it_goes_first() -> None:
    points = of(why_not(crowded(), "f1"), Turn.POINTS)
    assert tells(points, 50, 80, 81)


def test_a_wish_is_turned_by_its_enjoyment() -> None:
    """An enjoyment of 8 is worth as much as 8 points."""
    made = crowded(
        faults=(
            fault(points=None, enjoyment=Fraction(5)),
            fault("f2", points=Fraction(8)),
        ),
        money_per_point=Fraction(1000),
    )
    answer = why_not(made, "f1")
    liking = of(answer, Turn.ENJOYMENT)
    assert tells(liking, 5, 8, Fraction("8.1"))
    assert Turn.POINTS not in {one.turn for one in answer.thresholds}


def test_where_no_enjoyment_is_enough_points_are_told() -> None:
    made = crowded(
        faults=(
            fault(points=None, enjoyment=Fraction(5)),
            fault("f2", points=Fraction(80)),
        )
    )
    answer = why_not(made, "f1")
    assert Turn.ENJOYMENT not in {one.turn for one in answer.thresholds}
    points = of(answer, Turn.POINTS)
    assert tells(points, 5, 80, 81)


def test_a_price_does_not_buy_hours() -> None:
    made = crowded(
        budget=(30000,),
        hours=(Fraction(4), Fraction(0)),
        options=(option(hours=Fraction(4)), option("o2", "f2", hours=Fraction(4))),
    )
    answer = why_not(made, "f1")
    assert of(answer, Turn.PRICE).at is None
    assert of(answer, Turn.PRICE).not_at == 0
    assert of(answer, Turn.BUDGET).at is None
    assert at_price(made, 0).choices.orders == {"o2": 0}


def test_what_is_free_has_no_price_to_turn() -> None:
    made = crowded(
        budget=(30000,),
        hours=(Fraction(4), Fraction(0)),
        options=(
            option(price=0, hours=Fraction(4)),
            option("o2", "f2", hours=Fraction(4)),
        ),
    )
    assert Turn.PRICE not in {one.turn for one in why_not(made, "f1").thresholds}


def test_without_a_budget_none_is_turned() -> None:
    made = crowded(budget=(0,), opening_cash=18000)
    assert Turn.BUDGET not in {one.turn for one in why_not(made, "f1").thresholds}


def test_an_option_is_turned_by_its_price_and_the_budget_only() -> None:
    made = crowded(
        faults=(fault(),), options=(option(price=9000), option("o2", price=12000))
    )
    answer = why_not(made, "o2")
    assert {one.turn for one in answer.thresholds} == {Turn.PRICE, Turn.BUDGET}
    price = of(answer, Turn.PRICE)
    assert price.option == "o2"
    assert price.at is not None
    assert price.at < 9000


def test_a_price_that_loses_free_shipping_is_not_the_lowest_worth_trying() -> None:
    """At 400.00 both jobs fit; for nothing its shipping of 200.00 would not pay."""
    made = garage(
        suppliers=(
            Supplier(
                id="s", name="Mill Lane", currency="EUR", shipping=20000, free_over=8000
            ),
        ),
        faults=(fault(), fault("f2", points=Fraction(80))),
        options=(option(price=55000, supplier="s"), option("o2", "f2", price=15000)),
    )
    assert at_price(made, 40000).choices.orders.keys() == {"o1", "o2"}
    price = of(why_not(made, "f1"), Turn.PRICE)
    assert price.at is not None
    assert "o1" in at_price(made, int(price.at)).choices.orders
    assert "o1" not in at_price(made, int(price.not_at)).choices.orders


def test_points_that_are_full_gain_no_more_and_the_search_ends() -> None:
    """Growth has filled the later months by then, so less is gained than promised."""
    planned = small_plan(78)
    assert planned is not None
    planner, found = planned
    (answer,) = why(planner, found, "f1", limits=CLOSE, left=within(100))
    assert isinstance(answer, WhyNot)
    assert not answer.cut_short
    for threshold in answer.thresholds:
        check_small(planner.garage, "f1", threshold)


def within(plans: int) -> Left:
    """Time for so many plans, no more."""
    seconds = iter([PLENTY] * plans)
    return lambda: next(seconds, 0.0)


@pytest.mark.parametrize(
    "subject",
    ["estate-comfort-unit", pytest.param("cabrio-soft-top", marks=pytest.mark.slow)],
)
def test_what_waits_in_the_household_turns_where_told(subject: str) -> None:
    made = read_garage(HOUSEHOLD)
    answer = why_not(made, subject)
    assert not answer.cut_short
    assert answer.thresholds
    for threshold in answer.thresholds:
        check_ends(threshold)
        for value, chosen in ((threshold.at, True), (threshold.not_at, False)):
            if value is not None:
                check_planned(
                    turned_to(made, subject, threshold, value), subject, chosen
                )


def check_planned(made: Garage, subject: str, chosen: bool) -> None:
    """Whether the proven plan has the job, and does better so."""
    forced = replan(made, force=forced_in(made, subject), gap=0.0)
    without = replan(made, force=left_out(made, subject), gap=0.0)
    found = plan(made, gap=0.0)
    assert isinstance(without, Plan)
    assert isinstance(found, Plan)
    assert any(subject in job.faults for job in found.jobs) is chosen
    if chosen:
        assert isinstance(forced, Plan)
        assert order(made, forced.stages) < order(made, without.stages)
    elif isinstance(forced, Plan):
        assert order(made, forced.stages) >= order(made, without.stages)
