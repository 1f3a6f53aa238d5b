"""Prices, points and budgets that turn a choice beside parts that wait."""

from collections.abc import Iterator
from fractions import Fraction

import pytest

from partsplan.domain import Garage, Plan, Threshold, Turn, WhyNot
from partsplan.explanation import subjects, why
from partsplan.planning import Planner, replan
from tests.support.asking_why import (
    CLOSE,
    PLENTY,
    closed,
    forced_in,
    order,
    turned_to,
)
from tests.support.building import bought, fault, garage, option, vehicle
from tests.support.carried_garages import carried_garage
from tests.support.every_choice import rank
from tests.support.reference import best

Rank = tuple[int, ...]


def rank_of_plan(made: Garage, found: Plan) -> Rank:
    return -sum(job.bought for job in found.jobs), *order(made, found.stages)


def answers(made: Garage) -> Iterator[WhyNot]:
    """The answers for the faults and options that a plan leaves alone."""
    planner = Planner(made)
    found = planner.best(CLOSE)
    if not isinstance(found, Plan):
        return
    taken = found.choices.orders
    faults = [one for one in subjects(made, found) if one not in taken]
    options = [one.id for one in made.options if one.id not in taken]
    for subject in (*faults, *options[:2]):
        for answer in why(planner, found, subject, limits=CLOSE, left=lambda: PLENTY):
            assert isinstance(answer, WhyNot)
            yield answer


def naming(made: Garage, subject: str) -> set[str]:
    """The option itself, or all that name the fault."""
    if subject in made.option:
        return {subject}
    return {one.id for one in made.options_for[subject]}


def tried(made: Garage, subject: str) -> tuple[Rank, Rank, Rank | None]:
    """The best of all choices, the best without the job, and a plan made with it."""
    forced = replan(made, force=forced_in(made, subject), gap=0.0)
    without = closed(made, naming(made, subject))
    return (
        rank(made, best(made)),
        rank(without, best(without)),
        rank_of_plan(made, forced) if isinstance(forced, Plan) else None,
    )


def check(made: Garage, subject: str, threshold: Threshold) -> None:
    if threshold.at is not None:
        of_all, without, forced = tried(
            turned_to(made, subject, threshold, threshold.at), subject
        )
        assert forced == of_all
        assert of_all < without or threshold.turn is Turn.BUDGET
    of_all, without, forced = tried(
        turned_to(made, subject, threshold, threshold.not_at), subject
    )
    assert without == of_all
    assert forced is None or forced >= without


@pytest.mark.parametrize("seed", [*range(16), 21, 133])
def test_with_every_choice_tried_the_choice_turns_where_told(seed: int) -> None:
    made = carried_garage(seed)
    for answer in answers(made):
        assert not answer.cut_short
        for threshold in answer.thresholds:
            check(made, answer.subject, threshold)


def test_points_are_told_as_their_owner_writes_them() -> None:
    made = garage(
        grown=4,
        faults=(fault(points=Fraction(1), growth=Fraction(1, 10)),),
    )
    answer, _ = answers(made)
    (points,) = (one for one in answer.thresholds if one.turn is Turn.POINTS)
    assert points.now == 1
    check(made, "f1", points)


def test_a_job_is_not_chosen_for_its_price_where_a_part_that_waits_has_the_hours() -> (
    None
):
    made = garage(
        vehicles=(vehicle(keep_months=3),),
        hours=(Fraction(3), Fraction(0)),
        faults=(fault(points=Fraction(1)), fault("f2")),
        options=(
            bought(hours=Fraction(2)),
            option("o2", "f2", hours=Fraction(2), price=100),
        ),
    )
    (answer, of_option) = answers(made)
    assert answer.instead is not None
    assert answer.instead.leaves == ("o1",)
    assert answer.instead.loss.net_worth < 0
    assert {one.at for one in (*answer.thresholds, *of_option.thresholds)} == {None}
