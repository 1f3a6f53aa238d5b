"""Parts that were bought before the plan, by hand."""

import pytest

from partsplan.domain import Flow, Garage, Month, Needs, Plan
from partsplan.planning import Force, cash, plan, planner, replan
from partsplan.verification import violations
from tests.support.building import bought, fault, garage, option, vehicle

KEPT = vehicle(keep_months=3)
"""Until the end of the plan, so that all that a job costs is charged."""


def planned(made: Garage) -> Plan:
    found = plan(made, gap=0.0)
    assert isinstance(found, Plan)
    assert violations(made, found) == ()
    return found


def test_a_part_is_fitted_though_it_gains_less_than_that_costs() -> None:
    made = garage(vehicles=(KEPT,), options=(bought(consumables=16000),))
    assert planned(made).choices.orders == {"o1": 0}


@pytest.mark.parametrize("narrow", [0, 2000])
def test_as_many_parts_are_fitted_as_any_plan_can_fit(
    narrow: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    # two for f1 alone, of which the cheaper one; one after f3, which nothing cures
    monkeypatch.setattr(planner, "NARROW", narrow)
    made = garage(
        vehicles=(KEPT,),
        faults=(fault(), fault("f2"), fault("f3"), fault("f4", after=("f3",))),
        options=(
            bought("dear", "f1", consumables=19000),
            bought("cheap", "f1", consumables=18000),
            bought("sad", "f2", consumables=17000),
            bought("stuck", "f4"),
        ),
    )
    assert planned(made).choices.orders.keys() == {"cheap", "sad"}


@pytest.mark.parametrize("narrow", [0, 2000])
def test_as_many_parts_are_fitted_as_what_is_forced_leaves(
    narrow: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(planner, "NARROW", narrow)
    made = garage(
        vehicles=(KEPT,),
        faults=(fault(), fault("f2")),
        options=(bought("o1", "f1"), bought("o2", "f2", consumables=17000)),
    )
    for force in (Force(avoid=frozenset({"o1"})), Force(leave=frozenset({"f1"}))):
        found = replan(made, force=force)
        assert isinstance(found, Plan)
        assert found.choices.orders.keys() == {"o2"}


@pytest.fixture(params=[300, 0], ids=["closed months", "balance columns"])
def _both_forms(
    request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(cash, "SPARSE_FROM", request.param)


@pytest.mark.usefixtures("_both_forms")
def test_the_deposit_of_a_part_that_is_fitted_pays_for_another() -> None:
    # 40.00 a month and a deposit of 100.00, back a month after fitting
    made = garage(
        budget=(4000,),
        faults=(fault(), fault("f2")),
        options=(
            bought("o1", "f1", core_deposit=10000),
            option("o2", "f2", price=18000),
        ),
    )
    found = planned(made)
    assert found.choices.orders == {"o1": 0, "o2": 1}
    assert [line.balance for line in found.ledger] == [4000, 0, 4000]


@pytest.mark.usefixtures("_both_forms")
def test_the_deposit_of_a_part_that_is_fitted_pays_a_debt() -> None:
    # 100.00 promised in February, 40.00 a month: 20.00 short, unless it is fitted
    made = garage(
        budget=(4000,),
        promised=(Flow(month=1, out=10000),),
        options=(bought(core_deposit=3000),),
    )
    found = planned(made)
    assert found.choices.orders == {"o1": 0}
    assert [line.balance for line in found.ledger] == [4000, 1000, 5000]


def test_the_least_money_is_what_is_short_with_the_deposit() -> None:
    # 80.00 short in February and 40.00 in March; of the deposit 50.00 are back by then
    made = garage(
        budget=(4000,),
        promised=(Flow(month=1, out=16000),),
        options=(bought(core_deposit=5000),),
    )
    assert plan(made) == Needs(month=Month(2027, 2), money=3000)


def test_money_that_comes_too_late_is_needed() -> None:
    # 20.00 short in January, 80.00 in February, when the deposit is back
    made = garage(
        budget=(4000,),
        promised=(Flow(month=0, out=6000), Flow(month=1, out=10000)),
        options=(bought(core_deposit=7000),),
    )
    assert plan(made) == Needs(month=Month(2027, 1), money=2000)
