"""Forced plans against every choice that does what is forced."""

from collections.abc import Iterator
from dataclasses import replace
from itertools import islice

import pytest

from partsplan.domain import Garage, Needs, Plan
from partsplan.planning import Force, plan, replan
from partsplan.verification import violations
from tests.support.reference import best
from tests.support.small_garages import small_garage


def without(garage: Garage, options: frozenset[str]) -> Garage:
    kept = tuple(one for one in garage.options if one.id not in options)
    causes = tuple(replace(one, cure=None) for one in garage.causes)
    return replace(garage, options=kept, causes=causes)


def figures(found: Plan) -> tuple[int, ...]:
    stages = found.stages
    return (
        stages.missed_deadlines,
        stages.unsafe_vehicle_months,
        stages.undrivable_vehicle_months,
        stages.net_worth,
    )


def planned() -> Iterator[tuple[Garage, Plan]]:
    for seed in range(400):
        garage = small_garage(seed)
        found = plan(garage, gap=0.0)
        if isinstance(found, Plan) and found.jobs:
            yield garage, found


PLANNED = list(islice(planned(), 40))


@pytest.mark.parametrize("case", range(len(PLANNED)))
def test_avoiding_an_option_is_planning_without_it(case: int) -> None:
    garage, found = PLANNED[case]
    option = found.jobs[0].option
    forced = replan(garage, force=Force(avoid=frozenset({option})), gap=0.0)
    # Pairs look at the routes that are listed, so only choices without it compare.
    if any(fault.pair_with for fault in garage.faults):
        assert isinstance(forced, Plan)
        assert option not in forced.choices.orders
        return
    reference = best(without(garage, frozenset({option})))
    assert isinstance(forced, Plan)
    assert reference is not None
    assert tuple(forced.stages.of(s) for s in garage.priority) == reference.figures
    assert not violations(garage, forced)


@pytest.mark.parametrize("case", range(len(PLANNED)))
def test_what_the_plan_does_anyway_costs_nothing_to_force(case: int) -> None:
    garage, found = PLANNED[case]
    force = Force(
        take=frozenset(found.jobs[0].faults), use=frozenset({found.jobs[-1].option})
    )
    forced = replan(garage, force=force, start=found.choices, gap=0.0)
    assert isinstance(forced, Plan)
    assert figures(forced) == figures(found)


@pytest.mark.parametrize("case", range(len(PLANNED)))
def test_a_forced_fault_has_a_job_or_there_is_no_plan(case: int) -> None:
    garage, found = PLANNED[case]
    touched = {fault for job in found.jobs for fault in job.faults}
    for fault in garage.faults:
        if fault.id in touched:
            continue
        forced = replan(garage, force=Force(take=frozenset({fault.id})), gap=0.0)
        if forced is None:
            continue
        assert isinstance(forced, Plan)
        assert any(fault.id in job.faults for job in forced.jobs)
        assert not violations(garage, forced)
        order = garage.priority
        mine, free = (
            tuple(
                -one.stages.of(s) if s.value == "worth" else one.stages.of(s)
                for s in order
            )
            for one in (forced, found)
        )
        assert mine >= free


def test_leaving_everything_alone_buys_nothing() -> None:
    garage, _ = PLANNED[0]
    everything = frozenset(fault.id for fault in garage.faults)
    forced = replan(garage, force=Force(leave=everything))
    assert isinstance(forced, Plan)
    assert not forced.jobs


def test_no_plan_uses_an_option_that_makes_no_offer() -> None:
    garage, _ = PLANNED[0]
    assert replan(garage, force=Force(use=frozenset({"nothing of the kind"}))) is None


def test_a_debt_stays_a_debt_whatever_is_forced() -> None:
    debts = (small_garage(seed) for seed in range(400))
    garage = next(g for g in debts if g.carry_over and isinstance(plan(g), Needs))
    assert isinstance(replan(garage, force=Force(leave=frozenset({"x"}))), Needs)
