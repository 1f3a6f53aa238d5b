"""Options that another one beats in every way, and that no plan misses."""

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from random import Random
from typing import Any

import pytest

from partsplan.domain import (
    Access,
    Dominated,
    Garage,
    Plan,
    Route,
    Supplier,
    Tool,
)
from partsplan.explanation.dominance import dominated
from partsplan.explanation.prospects import Prospects
from partsplan.planning import Planner, plan
from tests.support.building import START, fault, garage, option
from tests.support.reference import best
from tests.support.small_garages import small_garage


def beaten(made: Garage, option: str = "o1") -> str | None:
    """The option that is said to beat it."""
    offers = Prospects(Planner(made)).of_option
    found = dominated(made, made.option[option], offers)
    assert found is None or found.option == option
    return None if found is None else found.by


def against(**changes: Any) -> Garage:
    """``o1`` for 100.00 against ``o2``, which is alike but for what is changed."""
    own = changes.pop("own", {})
    return garage(
        months=4,
        options=(
            option(**own),
            option("o2", *changes.pop("fixes", ()), **changes),
        ),
        access=(Access(id="a1", hours=Fraction(1)),),
        tools=(Tool(id="t1", name="puller", price=900),),
        suppliers=(
            Supplier(id="s1", name="Mill Lane", currency="EUR"),
            Supplier(id="s2", name="North Yard", currency="EUR"),
        ),
    )


def test_a_cheaper_one_beats_it_and_says_so() -> None:
    made = against(price=9000)
    offers = Prospects(Planner(made)).of_option
    found = dominated(made, made.option["o1"], offers)
    assert found == Dominated(option="o1", by="o2")
    assert found.code == "dominated"
    assert beaten(made, "o2") is None


def test_one_that_lasts_longer_for_the_money_beats_it() -> None:
    assert beaten(against(own={"life_months": 12})) == "o2"


def test_one_that_costs_less_a_month_beats_it_if_it_outlasts_the_plan() -> None:
    assert beaten(against(price=3000, life_months=12)) == "o2"


@pytest.mark.parametrize(
    "changes",
    [
        {},  # alike in all that counts
        {"price": 10100},
        {"price": 9000, "fixes": ("f1:0.9",)},
        {"price": 9000, "hours": Fraction(1)},
        {"price": 9000, "access": ("a1",)},
        {"price": 9000, "tools": ("t1",)},
        {"price": 9000, "supplier": "s1"},
        {"price": 9000, "supplier": "s1", "own": {"supplier": "s2"}},
        {"price": 4000, "life_months": 12},  # 3.33 a month, not 2.78
        {"price": 500, "life_months": 2},  # worn out before the plan ends
        {"price": 9000, "lead_days": 30},
        {"price": 9000, "valid_until": START.plus(1)},
        {"price": 9000, "not_before": START.plus(1)},
        {"price": 9000, "core_deposit": 5000},
        {"price": 9000, "consumables": 2000},
        {"price": 100, "route": Route.STAND_IN, "followup_within": 2},
    ],
)
def test_one_that_is_worse_in_one_way_does_not_beat_it(changes: dict[str, Any]) -> None:
    assert beaten(against(**changes)) is None


@pytest.mark.parametrize(
    "own",
    [
        {"hours": Fraction(1)},
        {"access": ("a1",)},
        {"tools": ("t1",)},
        {"supplier": "s1"},
        {"valid_until": START.plus(1)},
        {"core_deposit": 5000},
    ],
)
def test_a_cheaper_one_that_asks_for_less_beats_it(own: dict[str, Any]) -> None:
    assert beaten(against(price=9000, own=own)) == "o2"


def test_what_fixes_other_faults_does_not_beat_it() -> None:
    made = garage(
        faults=(fault(), fault("f2")),
        options=(option(), option("o2", "f1", "f2", price=5000)),
    )
    assert beaten(made) is None
    assert beaten(made, "o2") is None


def test_of_a_pair_only_the_same_route_is_compared() -> None:
    faults = fault(), fault("f2", pair_with=("f1",))
    used = option("o2", route=Route.USED, price=5000)
    other = option("o3", "f2")
    made = garage(faults=faults, options=(option(), used, other))
    assert beaten(made) is None
    made = garage(faults=faults, options=(option(), replace(used, route=Route.NEW)))
    assert beaten(made) == "o2"


def test_what_makes_no_offer_is_not_beaten() -> None:
    made = against(price=9000, own={"not_after": START.plus(-1)})
    assert beaten(made) is None


# Where a cheaper one is no substitute, since the plan is better with both at hand.


def worth(made: Garage) -> int:
    found = plan(made, gap=0.0)
    assert isinstance(found, Plan)
    return found.stages.net_worth


def missed(made: Garage) -> int:
    """What the plan loses if there is no ``o1``. [minor units]"""
    left = tuple(one for one in made.options if one.id != "o1")
    return worth(made) - worth(replace(made, options=left))


def test_a_cheaper_one_that_loses_free_shipping_does_not_beat_it() -> None:
    mill = Supplier(
        id="s", name="Mill Lane", currency="EUR", shipping=3000, free_over=15000
    )
    made = garage(
        budget=(40000,),
        suppliers=(mill,),
        faults=(fault(), fault("f2")),
        options=(
            option(supplier="s"),
            option("o2", price=9000, supplier="s"),
            option("o3", "f2", price=5000, supplier="s"),
        ),
    )
    assert missed(made) > 0
    assert beaten(made) is None


def test_one_that_no_longer_fills_an_order_does_not_beat_it() -> None:
    mill = Supplier(
        id="s", name="Mill Lane", currency="EUR", shipping=3000, free_over=15000
    )
    made = garage(
        budget=(40000,),
        suppliers=(mill,),
        faults=(fault(), fault("f2")),
        options=(
            option(supplier="s", consumables=100),
            option("o2"),
            option("o3", "f2", price=5000, supplier="s"),
        ),
    )
    assert missed(made) > 0
    assert beaten(made) is None


def test_an_earlier_one_without_hours_in_that_month_does_not_beat_it() -> None:
    made = garage(
        months=4,
        hours=(Fraction(0), Fraction(4)),
        options=(
            option(lead_days=30, hours=Fraction(4), not_after=START.plus(1)),
            option("o2", price=7000, hours=Fraction(4), valid_until=START),
        ),
    )
    assert missed(made) > 0
    assert beaten(made) is None


def test_an_earlier_one_than_the_other_of_a_pair_does_not_beat_it() -> None:
    made = garage(
        months=4,
        budget=(40000,),
        faults=(fault(pair_with=("f2",)), fault("f2")),
        options=(
            option(lead_days=30, not_after=START.plus(1)),
            option("o2", price=7000, valid_until=START),
            option("o3", "f2", not_before=START.plus(1)),
        ),
    )
    assert missed(made) > 0
    assert beaten(made) is None


def test_options_for_several_faults_may_be_used_one_after_another() -> None:
    """Each lasts for two months; both together last for four."""
    made = garage(
        months=4,
        budget=(40000,),
        faults=(fault(), fault("f2")),
        options=(
            option("o1", "f1", "f2", life_months=2),
            option("o2", "f1", "f2", price=9000, life_months=2),
        ),
    )
    assert missed(made) > 0
    assert beaten(made) is None


def with_rivals(seed: int) -> Iterator[tuple[Garage, str]]:
    """The small garage with a rival for each lasting option in turn, mostly better."""
    made, dice = small_garage(seed), Random(seed)
    for one in made.options:
        if not one.lasting:
            continue
        later = replace(one, lead_days=dice.choice((one.lead_days, 20)))
        rival = replace(
            later,
            id="rival",
            price=one.price * dice.choice((7, 9, 10)) // 10,
            supplier=one.supplier if dice.random() < 0.5 else None,
            lead_days=dice.choice((later.lead_days, 0)),
            hours=one.hours * dice.choice((1, 1, 0)),
        )
        options = (later if kept.id == one.id else kept for kept in made.options)
        yield replace(made, options=(*options, rival)), one.id


@pytest.mark.parametrize(
    "first",
    [0, *(pytest.param(first, marks=pytest.mark.slow) for first in range(50, 400, 50))],
)
def test_without_what_is_beaten_every_choice_tried_is_as_good(first: int) -> None:
    compared = 0
    for seed in range(first, first + 50):
        for made, name in with_rivals(seed):
            by = beaten(made, name)
            if by is None:
                continue
            left = tuple(one for one in made.options if one.id != name)
            with_it, without = best(made), best(replace(made, options=left))
            assert (with_it is None) is (without is None)
            if with_it is not None and without is not None:
                assert with_it.figures == without.figures, (seed, name, by)
            compared += 1
    assert compared > 10
