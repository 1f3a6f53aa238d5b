"""Help that meets a demand gives up no other, nor a stage that comes first."""

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction

import pytest

from partsplan.domain import Garage, Month, Plan, Shortfall, Stage
from partsplan.explanation import shortfalls
from partsplan.planning import plan
from tests.support.building import bought, fault, garage, longer, option, richer
from tests.support.carried_garages import carried_garage
from tests.support.small_garages import small_garage

JANUARY = Month(2027, 1)


def planned(made: Garage) -> Plan:
    found = plan(made, gap=0.0)
    assert isinstance(found, Plan)
    return found


def told(made: Garage) -> tuple[Shortfall, ...]:
    return shortfalls(made, planned(made))


def test_another_demand_is_not_given_up_for_it() -> None:
    # both by January: one is met, the other would take its own 90.00
    made = garage(
        budget=(10000,),
        faults=(fault(fix_by=JANUARY), fault("f2", fix_by=JANUARY)),
        options=(option("o1", "f1", price=9500), option("o2", "f2", price=9000)),
    )
    (short,) = told(made)
    assert short.money == 8500
    assert told(richer(made, 8500)) == ()


@pytest.mark.parametrize(
    ("priority", "money"),
    [
        ((Stage.WORTH, Stage.DEADLINES, Stage.SAFETY, Stage.MOBILITY), None),
        ((Stage.DEADLINES, Stage.WORTH, Stage.SAFETY, Stage.MOBILITY), 7000),
    ],
)
def test_worth_is_not_given_up_where_it_comes_first(
    priority: tuple[Stage, ...], money: int | None
) -> None:
    worthless = fault(points=Fraction(0), fix_by=JANUARY)
    made = garage(budget=(3000,), priority=priority, faults=(worthless,))
    (short,) = told(made)
    assert short.money == money


def test_a_part_that_waits_is_not_left_on_the_shelf_for_it() -> None:
    # three hours: two for the part that waits, two for the deadline
    made = garage(
        hours=(Fraction(3), Fraction(0)),
        faults=(fault(), fault("f2", fix_by=JANUARY)),
        options=(
            bought("o1", "f1", hours=Fraction(2)),
            option("o2", "f2", hours=Fraction(2)),
        ),
    )
    (short,) = told(made)
    assert (short.money, short.hours) == (0, Fraction(1))
    assert told(longer(made, Fraction(1))) == ()


@pytest.mark.parametrize("kind", [small_garage, carried_garage])
@pytest.mark.parametrize("first", range(0, 100, 50))
def test_what_would_do_betters_the_stage_and_worsens_none_before_it(
    first: int, kind: Callable[[int], Garage]
) -> None:
    tried = 0
    for seed in range(first, first + 50):
        poor = replace(kind(seed), carry_over=True)
        before = plan(poor, gap=0.0)
        if not isinstance(before, Plan):
            continue
        for short in shortfalls(poor, before):
            if short.money is None or short.hours is None:
                continue
            after = planned(longer(richer(poor, short.money), short.hours))
            held = poor.priority[: poor.priority.index(short.stage)]
            if Stage.WORTH in held:
                continue
            wanted = [before.stages.of(stage) for stage in held]
            wanted.append(before.stages.of(short.stage) - len(short.months))
            assert [after.stages.of(one) for one in (*held, short.stage)] <= wanted
            tried += 1
    assert tried > 2
