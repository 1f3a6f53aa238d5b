"""Plans are exact where a minor unit or an hour is within a solver's tolerances."""

from dataclasses import replace
from fractions import Fraction
from itertools import combinations, product
from random import Random

import pytest

from partsplan.domain import Garage, Plan, PlanStatus
from partsplan.planning import plan
from partsplan.verification import violations
from tests.support.building import START, fault, garage, option
from tests.support.reference import best
from tests.support.small_garages import small_garage

JOBS = 6
POINTS = (31, 37, 41, 43, 47, 53)


def dear_garage(seed: int) -> tuple[Garage, list[int]]:
    """Jobs of one to ten milliards that are worth their cost a hundred times."""
    dice = Random(seed)
    prices = [dice.randint(10**9, 10**10) for _ in range(JOBS)]
    return (
        garage(
            months=1,
            hours=(Fraction(0),),
            money_per_point=Fraction(10**11),
            faults=tuple(
                fault(f"f{n}", points=Fraction(points))
                for n, points in enumerate(POINTS)
            ),
            options=tuple(
                option(f"o{n}", f"f{n}", price=price) for n, price in enumerate(prices)
            ),
        ),
        prices,
    )


def planned(made: Garage) -> Plan:
    found = plan(made, gap=0.0)
    assert isinstance(found, Plan)
    assert violations(made, found) == ()
    assert found.status is PlanStatus.PROVEN
    return found


def best_points(prices: list[int], money: int) -> int:
    """Of all subsets within the money, the most points."""
    places = range(JOBS)
    return max(
        sum(POINTS[place] for place in subset)
        for size in range(JOBS + 1)
        for subset in combinations(places, size)
        if sum(prices[place] for place in subset) <= money
    )


@pytest.mark.parametrize(("seed", "less"), list(product(range(12), (0, 1))))
def test_money_is_exact_to_the_minor_unit(seed: int, less: int) -> None:
    made, prices = dear_garage(seed)
    within = Random(seed).sample(prices, 4)
    money = sum(within) - less
    found = planned(replace(made, budget=(money,)))
    chosen = {int(job.option.removeprefix("o")) for job in found.jobs}
    assert sum(POINTS[place] for place in chosen) == best_points(prices, money)
    assert found.ledger[-1].balance >= 0


@pytest.mark.parametrize("less", [0, 1])
def test_a_minor_unit_too_little_is_too_little(less: int) -> None:
    # no choice but one: a job for ten milliards and the sum less one
    dear = option(price=10**10 + 1)
    made = garage(
        months=1,
        budget=(10**10 + 1 - less,),
        money_per_point=Fraction(10**10),
        options=(dear,),
    )
    assert len(planned(made).jobs) == 1 - less


@pytest.mark.parametrize(("spare", "jobs"), [("0", 2), ("-0.0000000001", 1)])
def test_hours_are_exact(spare: str, jobs: int) -> None:
    long = Fraction("1.0000000004")
    made = garage(
        months=1,
        hours=(2 * long + Fraction(spare),),
        faults=(fault(), fault("f2")),
        options=(
            option("o1", "f1", hours=long, price=1),
            option("o2", "f2", hours=long, price=1),
        ),
    )
    assert len(planned(made).jobs) == jobs


def test_a_deadline_takes_the_last_minor_unit_too() -> None:
    # both by January for the stage of deadlines, with one unit too little for it
    made = garage(
        months=1,
        budget=(2 * 10**10 + 2,),
        faults=(fault(fix_by=START), fault("f2", fix_by=START)),
        options=(
            option("o1", "f1", price=10**10 + 1),
            option("o2", "f2", price=10**10 + 2),
        ),
    )
    assert planned(made).stages.missed_deadlines == 1
    rich = replace(made, opening_cash=1)
    assert planned(rich).stages.missed_deadlines == 0


@pytest.mark.parametrize("first", range(0, 60, 20))
def test_small_garages_with_all_money_blown_up(first: int) -> None:
    factor = 10**8 + 7
    for seed in range(first, first + 20):
        made = blown_up(small_garage(seed), factor)
        record, found = best(made), plan(made, gap=0.0)
        if record is None:
            continue
        assert isinstance(found, Plan)
        assert violations(made, found) == (), seed
        figures = tuple(found.stages.of(stage) for stage in made.priority)
        assert figures == record.figures, seed


def blown_up(small: Garage, factor: int) -> Garage:
    """The same garage with every sum of money that many times as large."""
    return replace(
        small,
        budget=tuple(factor * budget for budget in small.budget),
        opening_cash=factor * small.opening_cash,
        reserve=factor * small.reserve,
        money_per_point=factor * small.money_per_point,
        hour_value=factor * small.hour_value,
        faults=tuple(
            replace(
                one,
                loss_per_month=factor * one.loss_per_month,
                damage_cost=factor * one.damage_cost,
            )
            for one in small.faults
        ),
        options=tuple(
            replace(
                one,
                price=factor * one.price,
                core_deposit=factor * one.core_deposit,
                core_return_cost=factor * one.core_return_cost,
                coding_cost=factor * one.coding_cost,
                consumables=factor * one.consumables,
            )
            for one in small.options
        ),
        suppliers=tuple(
            replace(
                one,
                shipping=factor * one.shipping,
                free_over=None if one.free_over is None else factor * one.free_over,
            )
            for one in small.suppliers
        ),
        tools=tuple(replace(one, price=factor * one.price) for one in small.tools),
    )
