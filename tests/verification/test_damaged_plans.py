"""A sound plan, damaged in one place at a time: each damage is caught by its rule."""

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest

from partsplan.domain import Choices, Garage, Month, Plan, PlanStatus
from partsplan.verification import broken_rules, violations
from tests.support.full_garage import full_garage, full_plan


def rules(garage: Garage, plan: Plan) -> set[str]:
    return {one.rule for one in violations(garage, plan)}


def with_orders(changes: Mapping[str, int | None]) -> Plan:
    """The plan with options ordered in other months; None takes one out."""
    plan = full_plan()
    orders = {**plan.choices.orders, **changes}
    kept = {option: month for option, month in orders.items() if month is not None}
    return replace(plan, choices=replace(plan.choices, orders=kept))


def with_tools(tools: Mapping[str, int]) -> Plan:
    plan = full_plan()
    return replace(plan, choices=replace(plan.choices, tools=tools))


def test_the_plan_is_sound_before_it_is_damaged() -> None:
    plan = full_plan()
    assert plan.status is PlanStatus.PROVEN
    assert violations(full_garage(), plan) == ()
    assert set(plan.choices.orders) == {
        "hose-tape",
        "hose-new",
        "pads-new",
        "left-new",
        "right-new",
        "unit-exchange",
        "sensor-new",
        "film-roll",
    }
    assert plan.choices.orders["film-roll"] == 2
    assert plan.choices.tools == {"piston": 0}


@pytest.mark.parametrize(
    ("rule", "changes"),
    [
        ("known", {"nothing": 0}),
        ("known", {"pads-new": -1}),
        ("known", {"pads-new": 4}),
        ("in time", {"hose-new": 3}),  # in hand after the horizon
        ("in time", {"sensor-new": 2}),  # the quote is over
        ("in time", {"film-roll": None, "film-late": 2}),
        ("in time", {"film-roll": None, "film-early": 1}),
        ("in time", {"tank-new": 1}),  # the vehicle is gone by then
        ("warm enough", {"film-roll": 0}),
        ("coded", {"unit-exchange": None, "unit-self": 0}),
        ("by allowed route", {"pads-new": None, "pads-used": 0}),
        ("by allowed route", {"film-roll": None, "film-show": 2}),
        ("for open faults", {"seep-new": 0}),
        ("for open faults", {"wiper-new": 0}),
        ("one lasting", {"film-slow": 0}),
        ("in order", {"sensor-new": 0}),  # the unit comes in the second month
        ("in order", {"unit-exchange": None}),
        ("in pairs", {"left-new": None}),
        ("in pairs", {"left-new": 1}),
        ("in pairs", {"left-new": None, "left-used": 0}),  # another route
        ("followed up", {"hose-new": None}),
        ("followed up", {"hose-new": 1}),
        ("followed up", {"hose-tape": 1}),  # with the hose, not before it
        # the tool is bought for nothing
        ("with tools", {"pads-new": None, "sensor-new": None}),
        ("within money", {"film-roll": None, "film-gold": 2}),
        ("within hours", {"film-roll": None, "film-slow": 2}),
    ],
)
def test_damaged_orders(rule: str, changes: Mapping[str, int | None]) -> None:
    assert rule in rules(full_garage(), with_orders(changes))


@pytest.mark.parametrize(
    ("rule", "tools"),
    [
        ("known", {"piston": 0, "hammer": 0}),
        ("known", {"piston": 4}),
        ("with tools", {}),
        ("with tools", {"piston": 1}),  # after the first job that needs it
        ("with tools", {"piston": 0, "jack": 0}),  # no job needs it
        ("with tools", {"piston": 0, "stands": 0}),  # owned
    ],
)
def test_damaged_tools(rule: str, tools: Mapping[str, int]) -> None:
    assert rule in rules(full_garage(), with_tools(tools))


@pytest.mark.parametrize(
    ("rule", "changes"),
    [
        ("within money", {"reserve": 12801}),
        ("within money", {"budget": (33199, 30000, 20000, 20000)}),
        ("within money", {"carry_over": False, "budget": (45000, 1000)}),
        ("within hours", {"hours": (Fraction("3.9"),)}),
        ("figures: ledger", {"opening_cash": 1}),
        ("figures: ledger", {"core_trust": Fraction("1.01")}),
        ("figures: stages", {"money_per_point": Fraction(301)}),
        ("figures: jobs", {"look_beyond": 1}),
    ],
)
def test_a_plan_of_another_garage(rule: str, changes: dict[str, Any]) -> None:
    assert rule in rules(replace(full_garage(), **changes), full_plan())


@pytest.mark.parametrize(
    "changes",
    [
        {"option": "pads-used"},
        {"faults": ("pads", "film")},
        {"route": "used"},
        {"supplier": None},
        {"ordered": 1},
        {"fitted": 1},
        {"landed": 4999},
        {"deposit": 1},
        {"charge": 0},
        {"hours": Fraction(1)},
    ],
)
def test_wrong_figures_of_a_job(changes: dict[str, Any]) -> None:
    plan = full_plan()
    damaged = tuple(
        replace(job, **changes) if job.option == "pads-new" else job
        for job in plan.jobs
    )
    assert rules(full_garage(), replace(plan, jobs=damaged)) == {"figures: jobs"}


@pytest.mark.parametrize("number", [0, 1, 2, 3])
@pytest.mark.parametrize("column", ["budget", "out", "back", "balance", "hours"])
def test_wrong_figures_of_a_month(number: int, column: str) -> None:
    plan = full_plan()
    line = plan.ledger[number]
    wrong = replace(line, **{column: getattr(line, column) + 1})
    ledger = (*plan.ledger[:number], wrong, *plan.ledger[number + 1 :])
    assert rules(full_garage(), replace(plan, ledger=ledger)) == {"figures: ledger"}


@pytest.mark.parametrize(
    "stage",
    [
        "missed_deadlines",
        "unsafe_vehicle_months",
        "undrivable_vehicle_months",
        "net_worth",
    ],
)
@pytest.mark.parametrize("step", [1, -1])
def test_wrong_stages(stage: str, step: int) -> None:
    plan = full_plan()
    told = replace(plan.stages, **{stage: getattr(plan.stages, stage) + step})
    assert "figures: stages" in rules(full_garage(), replace(plan, stages=told))


def test_left_out_or_doubled_lines() -> None:
    garage, plan = full_garage(), full_plan()
    for name in ("jobs", "orders", "tools", "ledger"):
        lines = getattr(plan, name)
        for wrong in (lines[1:], (*lines, lines[0])):
            change: dict[str, Any] = {name: wrong}
            damaged = replace(plan, **change)
            assert rules(garage, damaged) == {f"figures: {name}"}


@pytest.mark.parametrize("changes", [{"goods": 1}, {"shipping": 690}, {"month": 1}])
def test_wrong_figures_of_an_order(changes: dict[str, Any]) -> None:
    plan = full_plan()
    damaged = (replace(plan.orders[0], **changes), *plan.orders[1:])
    assert rules(full_garage(), replace(plan, orders=damaged)) == {"figures: orders"}


@pytest.mark.parametrize("changes", [{"price": 0}, {"month": 1}, {"tool": "jack"}])
def test_wrong_figures_of_a_tool(changes: dict[str, Any]) -> None:
    plan = full_plan()
    damaged = (replace(plan.tools[0], **changes),)
    assert rules(full_garage(), replace(plan, tools=damaged)) == {"figures: tools"}


def test_a_bound_below_the_worth() -> None:
    plan = full_plan()
    low = plan.stages.net_worth - 1
    damaged = replace(
        plan, bound=low, stage_bounds=replace(plan.stage_bounds, net_worth=low)
    )
    assert "figures: bound" in rules(full_garage(), damaged)


def test_two_bounds_that_differ() -> None:
    plan = full_plan()
    damaged = replace(
        plan, stage_bounds=replace(plan.stage_bounds, net_worth=plan.bound + 1)
    )
    assert rules(full_garage(), damaged) == {"figures: bound"}


@pytest.mark.parametrize(
    "stage",
    ["missed_deadlines", "unsafe_vehicle_months", "undrivable_vehicle_months"],
)
def test_a_bound_that_is_worse_than_the_plan(stage: str) -> None:
    plan = full_plan()
    above = getattr(plan.stages, stage) + 1
    damaged = replace(plan, stage_bounds=replace(plan.stage_bounds, **{stage: above}))
    assert rules(full_garage(), damaged) == {"figures: bound"}


@pytest.mark.parametrize("gap", [0.01, -0.01])
def test_a_wrong_gap(gap: float) -> None:
    damaged = replace(full_plan(), gap=gap)
    assert rules(full_garage(), damaged) == {"figures: gap"}


def test_another_start() -> None:
    damaged = replace(full_plan(), start=Month(2027, 6))
    assert "figures: start" in rules(full_garage(), damaged)


def test_violations_say_what_is_wrong() -> None:
    found = violations(full_garage(), with_orders({"nothing": 0}))
    assert [str(one) for one in found] == ['known: no option "nothing"']


def test_choices_can_be_judged_without_their_figures() -> None:
    assert broken_rules(full_garage(), full_plan().choices) == ()
    early = Choices(orders={"film-roll": 0}, tools={})
    found = broken_rules(full_garage(), early)
    assert [one.rule for one in found] == ["warm enough"]
