"""One garage with a few inputs of another."""

from dataclasses import replace
from fractions import Fraction

import pytest

from partsplan.domain import (
    Fitted,
    Flow,
    Garage,
    Input,
    Milestone,
    Month,
    Plan,
    Supplier,
)
from partsplan.explanation import differing_inputs, with_inputs
from partsplan.planning import plan
from tests.support.building import bought, fault, garage, option, vehicle
from tests.support.carried_garages import carried_garage
from tests.support.small_garages import small_garage

TABLES = ("vehicles", "faults", "options", "milestones")


def named(inputs: tuple[Input, ...]) -> list[tuple[str, str, str]]:
    return [(one.table, one.row, one.column) for one in inputs]


def test_only_what_a_plan_depends_on_is_an_input() -> None:
    made = garage()
    other = garage(
        name="another name",
        budget=(20000, 20000),
        discount_rate=Fraction(1, 10),
        vehicles=(vehicle(notes="washed"),),
        options=(option(part_no="X-1", price_high=99999),),
        suppliers=(Supplier(id="s1", name="Low Barn Spares", currency="EUR"),),
    )
    assert differing_inputs(made, other) == ()


def test_the_usual_inputs_come_first() -> None:
    other = garage(
        reserve=100,
        budget=(30000,),
        faults=(fault(drivability=3, fix_by=Month(2027, 2)),),
        options=(option(price=1),),
    )
    assert named(differing_inputs(garage(), other)) == [
        ("options", "o1", "price"),
        ("faults", "f1", "fix_by"),
        ("garage", "", "budget"),
        ("faults", "f1", "drivability"),
        ("garage", "", "reserve"),
    ]


def test_a_new_fault_brings_its_options_and_a_new_vehicle_its_faults() -> None:
    more = garage(faults=(fault(), fault("f2")), options=(option(), option("o2", "f2")))
    (found,) = differing_inputs(garage(), more)
    assert (found.table, found.row, found.before) == ("faults", "f2", None)
    assert with_inputs(garage(), more, [found]) == more
    assert with_inputs(more, garage(), differing_inputs(more, garage())) == garage()
    van = replace(
        more,
        vehicles=(vehicle(), vehicle("v2")),
        faults=(fault(), fault("f2", vehicle="v2")),
    )
    (found,) = differing_inputs(garage(), van)
    assert (found.table, found.row) == ("vehicles", "v2")
    assert with_inputs(garage(), van, [found]) == van


def test_what_is_gone_is_named_no_more() -> None:
    made = garage(
        faults=(fault(after=("f2",)), fault("f2")),
        options=(option("o1", "f1", "f2"), option("o2", "f2")),
        milestones=(Milestone(id="m1", month=Month(2027, 2), faults=("f1", "f2")),),
    )
    inputs = differing_inputs(made, garage())
    gone = [one for one in inputs if (one.table, one.row) == ("faults", "f2")]
    found = with_inputs(made, garage(), gone)
    assert found.faults == (fault(),)
    assert found.options == (option(),)
    assert found.milestones[0].faults == ("f1",)


def test_one_cell_is_taken_alone() -> None:
    other = garage(options=(option(price=1, lead_days=40),))
    cell = Input(table="options", row="o1", column="lead_days")
    assert with_inputs(garage(), other, [cell]).options == (option(lead_days=40),)


def test_a_part_that_is_bought_comes_with_its_price_and_months() -> None:
    there = bought(lead_days=0, not_before=Month(2027, 2), hours=Fraction(2))
    made, later = garage(options=(option(lead_days=40),)), garage(options=(there,))
    (found,) = differing_inputs(made, later)
    assert named((found,)) == [("options", "o1", "bought")]
    assert with_inputs(made, later, [found]) == later
    assert with_inputs(later, made, differing_inputs(later, made)) == made


def test_what_comes_from_before_is_an_input() -> None:
    made = garage()
    tape = Fitted(option="o9", relief=Fraction(1, 2), until=Month(2027, 3))
    later = garage(
        faults=(fault(fitted=(tape,)),), promised=(Flow(month=1, out=5),), grown=1
    )
    inputs = differing_inputs(made, later)
    assert named(inputs) == [
        ("faults", "f1", "fitted"),
        ("garage", "", "promised"),
        ("garage", "", "grown"),
    ]
    assert with_inputs(made, later, inputs) == later


@pytest.mark.parametrize("seed", range(40))
def test_with_all_inputs_it_is_the_other_garage(seed: int) -> None:
    made, other = small_garage(seed), carried_garage(seed + 1)
    other = replace(other, currency=made.currency)
    mixed = with_inputs(made, other, differing_inputs(made, other))
    for table in TABLES:
        for row in getattr(mixed, table):
            there = {one.id: one for one in getattr(other, table)}[row.id]
            assert same_for_a_plan(row, there)
        assert len(getattr(mixed, table)) == len(getattr(other, table))
    assert differing_inputs(mixed, other) == ()
    assert with_inputs(made, other, []) == replace(
        made, **{table: getattr(with_inputs(made, other, []), table) for table in BENCH}
    )


BENCH = ("suppliers", "access", "tools", "rates")


def same_for_a_plan(row: object, other: object) -> bool:
    """Whether two rows say the same in all columns that a plan depends on."""
    from partsplan.explanation.inputs import SILENT

    return all(
        getattr(row, name) == getattr(other, name)
        for name in type(row).__dataclass_fields__  # type: ignore[attr-defined]
        if name not in SILENT
    )


@pytest.mark.parametrize("seed", range(6))
def test_every_mixture_of_two_garages_can_be_planned(seed: int) -> None:
    made, other = small_garage(seed), carried_garage(seed + 1)
    other = replace(other, currency=made.currency)
    inputs = differing_inputs(made, other)
    for one in inputs[:12]:
        mixed: Garage = with_inputs(made, other, [one])
        if isinstance(found := plan(mixed), Plan):
            assert {job.option for job in found.jobs} <= set(mixed.option)
