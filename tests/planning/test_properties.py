"""What holds for every garage, whatever is in it."""

from dataclasses import replace

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from partsplan.domain import Garage, Plan, Stage
from partsplan.planning import plan
from partsplan.verification import violations
from tests.support.small_garages import small_garage

SEEDS = st.integers(400, 10**6)


def planned(garage: Garage) -> Plan:
    found = plan(garage, gap=0.0)
    assume(isinstance(found, Plan))
    assert isinstance(found, Plan)
    return found


def losses(garage: Garage, found: Plan) -> tuple[int, ...]:
    """The figures of the stages in the garage's order, so that less is better."""
    return tuple(
        -found.stages.of(stage) if stage is Stage.WORTH else found.stages.of(stage)
        for stage in garage.priority
    )


@settings(max_examples=60)
@given(SEEDS, st.integers(0, 300))
def test_more_money_never_worsens_the_stages(seed: int, more: int) -> None:
    poor = small_garage(seed)
    rich = replace(poor, budget=tuple(budget + more for budget in poor.budget))
    assert losses(rich, planned(rich)) <= losses(poor, planned(poor))


@settings(max_examples=60)
@given(SEEDS, st.integers(0, 12))
def test_more_hours_never_worsen_the_stages(seed: int, more: int) -> None:
    busy = small_garage(seed)
    free = replace(busy, hours=tuple(hours + more for hours in busy.hours))
    assert losses(free, planned(free)) <= losses(busy, planned(busy))


@settings(max_examples=60)
@given(SEEDS, st.data())
def test_an_option_less_never_betters_the_stages(
    seed: int, data: st.DataObject
) -> None:
    full = small_garage(seed)
    # the routes that a pair shares may change with its options
    assume(not any(fault.pair_with for fault in full.faults))
    gone = data.draw(st.sampled_from(full.options))
    less = replace(full, options=tuple(o for o in full.options if o is not gone))
    assert losses(full, planned(full)) <= losses(less, planned(less))


@settings(max_examples=80)
@given(SEEDS)
def test_every_plan_is_sound(seed: int) -> None:
    garage = small_garage(seed)
    assert violations(garage, planned(garage)) == ()


@settings(max_examples=60)
@given(SEEDS)
def test_money_adds_up_to_the_cent(seed: int) -> None:
    garage = replace(small_garage(seed), carry_over=True)
    ledger = planned(garage).ledger
    assert [line.budget for line in ledger] == list(garage.monthly_budget)
    moved = sum(line.budget - line.out + line.back for line in ledger)
    assert garage.opening_cash + moved == ledger[-1].balance


@settings(max_examples=40)
@given(SEEDS)
def test_same_garage_same_plan(seed: int) -> None:
    one, other = (planned(small_garage(seed)) for _ in range(2))
    assert replace(one, seconds=0.0) == replace(other, seconds=0.0)
