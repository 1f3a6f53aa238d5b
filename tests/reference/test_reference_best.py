"""Optima of the reference: published ones, ones found by hand, every choice tried."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import islice, product
from typing import Any

import pytest

from partsplan.domain import (
    Garage,
    Inspection,
    Instalment,
    Stage,
    Stages,
    Tool,
    Vehicle,
)
from tests.support.reference import best, judge, offers
from tests.support.small_garages import small_garage
from tests.support.tiny_garage import START, fixes, tiny_fault, tiny_garage, tiny_option


def projects(
    value: Sequence[int],
    outlays: Sequence[Sequence[int]],
    budget: Sequence[int],
    needs: Mapping[int, int] | None = None,
    **fields: Any,
) -> Garage:
    """Projects to take or leave, counted from 1; ``needs`` name what comes first.

    Each is a part that is ordered in month 0 or never and paid by instalments, one a
    period. The vehicle is kept for a month, in which the fault costs the value of the
    project and all outlays, and the part is charged in full.
    """
    faults, options = [], []
    for number, worth in enumerate(value, start=1):
        paid = [outlay[number - 1] for outlay in outlays]
        first = (needs or {}).get(number)
        faults.append(
            tiny_fault(
                id=f"f{number}",
                points=Fraction(0),
                loss_per_month=worth + sum(paid),
                after=(f"f{first}",) if first else (),
            )
        )
        options.append(
            tiny_option(
                id=f"{number}",
                fixes=fixes(f"f{number}"),
                price=sum(paid),
                valid_until=START,
                instalments=tuple(
                    Instalment(months=month, share=Fraction(part, sum(paid)))
                    for month, part in enumerate(paid)
                ),
            )
        )
    usual: dict[str, Any] = {
        "months": len(budget),
        "budget": tuple(budget),
        "carry_over": False,
        "vehicles": (Vehicle(id="v1", name="v1", keep_months=1),),
        "faults": tuple(faults),
        "options": tuple(options),
    }
    return tiny_garage(**usual | fields)


def net_worth(garage: Garage) -> int:
    found = best(garage)
    assert found is not None
    return found.figures[garage.priority.index(Stage.WORTH)]


# W. L. Winston, Operations Research: Applications and Algorithms, 4th ed., section 9.2,
# example 1: value and outlay, and optima by budget (computed: every subset).
STOCKCO = ([16, 22, 12, 8], [[5, 7, 4, 3]])
STOCKCO_SWEEP = {
    3: 8, 4: 12, 5: 16, 6: 16, 7: 22, 8: 24, 9: 28, 10: 30, 11: 34, 12: 38, 13: 38,
    14: 42, 15: 46, 16: 50, 17: 50, 18: 50, 19: 58,
}  # fmt: skip

# H. A. Taha, Operations Research: An Introduction, example 9.1-1: three years.
TAHA = (
    [20, 40, 20, 15, 30],
    [[5, 4, 3, 7, 8], [1, 7, 9, 4, 6], [8, 10, 2, 1, 10]],
    [25, 25, 25],
)

# J. H. Lorie and L. J. Savage, Journal of Business 28(4), 1955, 229-239: two years.
LORIE_SAVAGE = (
    [14, 17, 17, 15, 40, 12, 14, 10, 12],
    [[12, 54, 6, 6, 30, 6, 48, 36, 18], [3, 7, 6, 2, 35, 6, 4, 3, 3]],
    [50, 20],
)


@pytest.mark.parametrize(("budget", "optimum"), STOCKCO_SWEEP.items())
def test_stockco_at_every_budget(budget: int, optimum: int) -> None:
    assert net_worth(projects(*STOCKCO, [budget])) == optimum


def test_stockco_with_a_link() -> None:
    assert net_worth(projects(*STOCKCO, [14], {2: 1})) == 38  # computed: every subset


@pytest.mark.parametrize(
    ("carry_over", "optimum", "chosen"),
    [(False, 95, {"1", "2", "3", "4"}), (True, 110, {"1", "2", "3", "5"})],
)
def test_taha(carry_over: bool, optimum: int, chosen: set[str]) -> None:
    """The first is printed in the source, the second computed by every subset."""
    garage = projects(*TAHA, carry_over=carry_over)
    found = best(garage)
    assert net_worth(garage) == optimum
    assert found is not None
    assert set(found.orders) == chosen


@pytest.mark.parametrize(("needs", "optimum"), [({}, 70), ({4: 5}, 55)])
def test_lorie_savage(needs: dict[int, int], optimum: int) -> None:
    assert net_worth(projects(*LORIE_SAVAGE, needs)) == optimum


def test_stages_stand_in_order_of_priority() -> None:
    """Money for one: the deadline, the road, or the worth."""
    garage = tiny_garage(
        months=1,
        budget=(10,),
        vehicles=(Vehicle(id="v1", name="v1", keep_months=1),),
        faults=(
            tiny_fault(id="f1", points=Fraction(20), fix_by=START),
            tiny_fault(id="f2", points=Fraction(30), inspection=Inspection.DANGEROUS),
            tiny_fault(id="f3", points=Fraction(40)),
        ),
        options=tuple(
            tiny_option(id=f"o{n}", fixes=fixes(f"f{n}"), price=10) for n in (1, 2, 3)
        ),
    )
    by_priority = {
        (Stage.DEADLINES, Stage.SAFETY, Stage.MOBILITY, Stage.WORTH): (0, 1, 0, 10),
        (Stage.SAFETY, Stage.WORTH, Stage.DEADLINES, Stage.MOBILITY): (0, 20, 1, 0),
        (Stage.WORTH, Stage.MOBILITY, Stage.SAFETY, Stage.DEADLINES): (30, 0, 1, 1),
    }
    for priority, figures in by_priority.items():
        found = best(replace(garage, priority=priority))
        assert found is not None
        assert found.figures == figures


def test_a_debt_that_nothing_pays_leaves_no_choice() -> None:
    assert best(tiny_garage(opening_cash=-1001)) is None
    assert best(tiny_garage(opening_cash=-1000)) is not None


def test_a_deposit_can_save_a_later_month() -> None:
    """Unspent money is lost, month 1 has none: only the deposit keeps the reserve."""
    garage = tiny_garage(
        faults=(tiny_fault(), tiny_fault(id="f2", points=Fraction(90))),
        options=(
            tiny_option(id="o1", price=40, valid_until=START),
            tiny_option(id="o2", fixes=fixes("f2"), price=90, core_deposit=40),
        ),
        budget=(200, 0, 50),
        carry_over=False,
        reserve=30,
    )
    found = best(garage)
    assert found is not None
    assert found.orders == {"o1": 0, "o2": 0}  # 170 of 200
    assert best(replace(garage, core_trust=Fraction("1.01"))) is None


def test_a_tool_is_bought_ahead_where_unspent_money_is_lost() -> None:
    garage = tiny_garage(
        budget=(10,),
        carry_over=False,
        options=(tiny_option(price=10, tools=("t1",), not_before=START.plus(1)),),
        tools=(Tool(id="t1", name="t1", price=9),),
    )
    found = best(garage)
    assert found is not None
    assert found.orders == {"o1": 1}
    assert found.tools == {"t1": 0}


def every_choice(garage: Garage) -> Iterator[tuple[dict[str, int], dict[str, int]]]:
    """All orders and all tool months, legal or not."""
    months = {option.id: [None, *range(garage.months)] for option in garage.options}
    known = offers(garage)
    for name, choices in months.items():
        months[name] = [m for m in choices if m is None or (name, m) in known]
    names = [*months, *garage.tool]
    ranges = [*months.values(), *([None, *range(garage.months)] for _ in garage.tool)]
    for picked in product(*ranges):
        chosen = {n: m for n, m in zip(names, picked, strict=True) if m is not None}
        yield (
            {name: month for name, month in chosen.items() if name in garage.option},
            {name: month for name, month in chosen.items() if name in garage.tool},
        )


def losses(garage: Garage) -> Callable[[Stages], list[int]]:
    """What to make small, first things first."""
    return lambda stages: [
        -stages.net_worth if stage is Stage.WORTH else stages.of(stage)
        for stage in garage.priority
    ]


def count_of_choices(garage: Garage) -> int:
    return sum(1 for _ in islice(every_choice(garage), 1001))


def test_nothing_that_is_left_out_is_better() -> None:
    """Every choice judged, in garages with few of them."""
    tried = 0
    for seed in range(120):
        garage = small_garage(seed)
        if count_of_choices(garage) > 1000:
            continue
        tried += 1
        known = offers(garage)
        judged = [
            judge(garage, orders, tools, known)
            for orders, tools in every_choice(garage)
        ]
        legal = [j.stages for j in judged if not j.broken]
        found = best(garage)
        assert (found is None) == (not legal)
        if found:
            stages = min(legal, key=losses(garage))
            assert found.figures == tuple(map(stages.of, garage.priority))
            assert judge(garage, found.orders, found.tools, known).broken == ()
    assert tried >= 10
