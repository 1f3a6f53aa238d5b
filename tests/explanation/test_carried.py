"""Why and why not, with parts that wait and faults that something relieves already."""

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest

from partsplan.domain import (
    ONE,
    AlreadyBought,
    Fault,
    Fitted,
    LongerThanAllHours,
    Month,
    NoOption,
    NoRoomToFit,
    OutsideWindow,
    Plan,
    Reason,
    Route,
    Skip,
    WaitsFor,
    WaitsToBeFitted,
    WorthLessThanCost,
)
from partsplan.explanation import skips
from partsplan.planning import plan
from tests.support.asking_why import why_chosen, why_not
from tests.support.building import START, bought, fault, garage, option, vehicle

FOR_GOOD = Fitted(option="old", relief=ONE, until=START.plus(36))
UNTIL_NOW = Fitted(option="old", relief=ONE, until=START)


def told(**changes: Any) -> tuple[Skip, ...]:
    made = garage(**changes)
    found = plan(made, gap=0.0)
    assert isinstance(found, Plan)
    return skips(made, found)


def relieved(relief: str, months: int, **changes: Any) -> Fault:
    old = Fitted(option="old", relief=Fraction(relief), until=START.plus(months))
    return fault(fitted=(old,), **changes)


def test_what_keeps_a_part_that_waits_comes_before_what_it_bars() -> None:
    late = Month(2027, 9)
    assert told(options=(option(), bought("b", not_before=late))) == (
        Skip(
            fault="f1",
            reason=OutsideWindow(
                option="b", earliest=START, not_before=late, not_after=None
            ),
            also=(AlreadyBought(option="o1", bought="b"),),
        ),
    )


@pytest.mark.parametrize(
    ("part", "reason"),
    [
        # it would be fitted whatever that costs
        (bought("b", consumables=19000), NoRoomToFit(option="b")),
        (
            bought("b", hours=Fraction(9)),
            LongerThanAllHours(option="b", needed=Fraction(9), hours=Fraction(8)),
        ),
    ],
)
def test_a_part_that_waits_on_is_told_before_what_else_there_is(
    part: Any, reason: Reason
) -> None:
    stopgap = option("o2", price=90000, route=Route.STAND_IN, followup_within=3)
    assert told(
        vehicles=(vehicle(keep_months=3),),
        faults=(fault(after=("f2",)), fault("f2")),
        options=(stopgap, part),
    ) == (Skip(fault="f1", reason=reason), Skip(fault="f2", reason=NoOption()))


@pytest.mark.parametrize(
    ("relief", "months", "worth"), [("1", 36, 0), ("0.5", 36, 100), ("1", 2, 200)]
)
def test_what_a_relieved_fault_would_still_gain_is_told(
    relief: str, months: int, worth: int
) -> None:
    # best in the last month, which is one of the 34 that the vehicle is kept then
    (skip,) = told(faults=(relieved(relief, months, points=Fraction(2)),))
    assert skip.reason == WorthLessThanCost(option="o1", worth=worth, cost=294)


def test_a_job_for_a_part_that_waits_says_so() -> None:
    found = why_chosen(garage(options=(bought(),)), "o1")
    assert found.forced_by == (WaitsToBeFitted(),)


def test_a_part_beside_one_that_waits_is_barred_by_it() -> None:
    made = garage(options=(option(), bought("b")))
    assert why_not(made, "o1").ruled_out == (AlreadyBought(option="o1", bought="b"),)


def test_a_part_that_cannot_be_fitted_is_not_said_to_be_worth_too_little() -> None:
    made = garage(
        vehicles=(vehicle(keep_months=3),),
        faults=(fault(after=("f2",)), fault("f2")),
        options=(bought(consumables=19000),),
    )
    for subject in ("o1", "f1"):
        found = why_not(made, subject)
        assert found.ruled_out == (WaitsFor(fault="f2"),)
        assert found.instead is None


def test_of_two_parts_for_one_fault_the_other_leaves_the_first_on_the_shelf() -> None:
    made = garage(options=(bought("one", consumables=500), bought("other")))
    found = why_not(made, "one")
    assert found.ruled_out == ()
    assert found.instead is not None
    assert (found.instead.enters, found.instead.leaves) == (("one",), ("other",))


def test_nothing_waits_for_what_was_cured_before() -> None:
    # no plan can hold a stand-in that nothing follows, whatever was before it
    stopgap = option("o2", "f2", route=Route.STAND_IN, followup_within=1, price=100)
    made = garage(
        faults=(
            replace(fault(), fitted=(UNTIL_NOW,)),
            fault("f2", after=("f1",)),
        ),
        options=(replace(stopgap, not_after=START),),
    )
    assert why_not(made, "f2").ruled_out == ()
    open_ = replace(made, faults=(fault(), made.faults[1]))
    assert why_not(open_, "f2").ruled_out == (WaitsFor(fault="f1"),)
