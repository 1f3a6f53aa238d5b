"""Which few inputs a difference is due to."""

from dataclasses import replace

import pytest

from partsplan.domain import (
    Change,
    ChangeBudget,
    ChangePrice,
    ChangeReserve,
    Found,
    Garage,
    Input,
    LeaveFault,
    Plan,
    Why,
)
from partsplan.explanation import (
    Search,
    changed,
    compare_plans,
    same_jobs,
    why_changed,
    why_different,
    with_inputs,
)
from partsplan.planning import plan, replan
from tests.support.building import fault, garage, option
from tests.support.small_garages import small_garage

USUAL = Search()
MADE = garage(
    budget=(10000, 0),
    faults=(fault(), fault("f2", points=40)),
    options=(option(), option("o2", "f2")),
)


def planned(made: Garage) -> Plan:
    found = plan(made, gap=0.0)
    assert isinstance(found, Plan)
    return found


def why(made: Garage, other: Garage, search: Search = USUAL) -> Why:
    plans = planned(made), planned(other)
    difference = compare_plans(made, plans[0], other, plans[1])
    return why_different(made, other, plans[1], difference, search)


def test_one_input_among_several_is_found_with_few_tries() -> None:
    other = replace(
        MADE,
        reserve=0,
        months=4,
        budget=(20000, 0),
        options=(option(price=9999), option("o2", "f2")),
    )
    found = why(MADE, other)
    assert found.found is Found.EXPLAINED
    assert [one.column for one in found.parts if isinstance(one, Input)] == ["budget"]
    assert found.among == 3
    assert found.tries <= 4


def test_where_it_takes_two_both_are_named() -> None:
    other = replace(
        MADE,
        budget=(15000, 0),
        look_beyond=1,
        options=(option(), option("o2", "f2", price=5000)),
    )
    found = why(MADE, other)
    assert found.found is Found.EXPLAINED
    columns = {one.column for one in found.parts if isinstance(one, Input)}
    assert columns == {"budget", "price"}


def test_plans_that_are_as_good_need_no_input() -> None:
    made = replace(MADE, faults=(fault(), fault("f2")))
    first = planned(made)
    (kept,) = first.jobs
    other = {"o1": "o2", "o2": "o1"}[kept.option]
    second = planned(
        replace(made, options=tuple(one for one in made.options if one.id == other))
    )
    difference = compare_plans(made, first, made, second)
    assert not difference.same_jobs
    found = why_different(made, made, second, difference)
    assert found.found is Found.ALIKE
    assert found.parts == ()


def test_when_tries_run_out_nothing_is_claimed() -> None:
    other = replace(
        MADE,
        budget=(15000, 0),
        look_beyond=1,
        options=(option(), option("o2", "f2", price=5000)),
    )
    early = why(MADE, other, Search(tries=2))
    assert early.found is Found.CUT_SHORT
    assert early.parts == ()
    singles = why(MADE, other, Search(tries=4))
    assert singles.found is Found.UNEXPLAINED
    assert singles.tries == 4
    assert why(MADE, other, Search(seconds=0.0)).found is Found.CUT_SHORT


def test_of_several_changes_the_one_that_matters_is_named() -> None:
    changes: list[Change] = [
        ChangeReserve(reserve=0),
        LeaveFault(fault="f1"),
        ChangePrice(option="o1", price=9000),
    ]
    other, force = changed(MADE, changes)
    found = replan(other, force=force, gap=0.0)
    assert isinstance(found, Plan)
    told = why_changed(MADE, changes, other, found)
    assert told == Why(
        found=Found.EXPLAINED, parts=(LeaveFault(fault="f1"),), among=3, tries=3
    )


def test_one_change_needs_no_search_for_it() -> None:
    changes = [ChangeBudget(amount=20000)]
    other, _ = changed(MADE, changes)
    told = why_changed(MADE, changes, other, planned(other))
    assert told.parts == tuple(changes)
    assert told.tries == 1  # whether the jobs would be as good without it


@pytest.mark.parametrize("seed", range(10))
def test_what_is_found_leads_to_the_other_plan(seed: int) -> None:
    made = small_garage(seed)
    other = replace(
        made,
        budget=tuple(one // 2 for one in made.budget),
        hour_value=made.hour_value + 1,
        options=tuple(replace(one, price=one.price // 3) for one in made.options),
    )
    plans = plan(made, gap=0.0), plan(other, gap=0.0)
    if not isinstance(plans[0], Plan) or not isinstance(plans[1], Plan):
        return
    difference = compare_plans(made, plans[0], other, plans[1])
    told = why_different(made, other, plans[1], difference, Search(gap=0.0))
    inputs = [one for one in told.parts if isinstance(one, Input)]
    assert len(inputs) == len(told.parts) <= told.among
    if told.found is Found.EXPLAINED and len(inputs) < told.among:
        mixed = with_inputs(made, other, inputs)
        found = replan(mixed, start=plans[1].choices, gap=0.0)
        assert isinstance(found, Plan)
        assert same_jobs(mixed, found, other, plans[1])
