"""Parts that were bought before the plan, by hand."""

import pytest

from partsplan.domain import Flow, Garage, Month, Needs, Plan
from partsplan.planning import cash, plan
from partsplan.verification import violations
from tests.support.building import bought, fault, garage, option


def planned(made: Garage) -> Plan:
    found = plan(made, gap=0.0)
    assert isinstance(found, Plan)
    assert violations(made, found) == ()
    return found


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
