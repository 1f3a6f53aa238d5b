"""Every feature of the small garages sways the optimum of some of them."""

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest

from partsplan.domain import (
    LONG_AGO,
    ONE,
    ZERO,
    Cure,
    Fault,
    FaultStatus,
    Garage,
    Inspection,
    Instalment,
    Stage,
)
from tests.support.reference import Best, best
from tests.support.small_optima import small_optimum

SEEDS = range(400)
ENOUGH = 4

Change = Callable[[Garage], Garage]


def garage(**fields: Any) -> Change:
    return lambda one: replace(one, **fields)


def faults(**fields: Any) -> Change:
    return lambda one: replace(
        one, faults=tuple(replace(fault, **fields) for fault in one.faults)
    )


def options(**fields: Any) -> Change:
    return lambda one: replace(
        one, options=tuple(replace(option, **fields) for option in one.options)
    )


def suppliers(**fields: Any) -> Change:
    return lambda one: replace(
        one, suppliers=tuple(replace(each, **fields) for each in one.suppliers)
    )


def vehicles(**fields: Any) -> Change:
    return lambda one: replace(
        one, vehicles=tuple(replace(each, **fields) for each in one.vehicles)
    )


def with_full_relief(one: Garage) -> Garage:
    return replace(
        one,
        options=tuple(
            replace(o, fixes=tuple(Cure(fault=cure.fault) for cure in o.fixes))
            for o in one.options
        ),
    )


def without_stand_ins(one: Garage) -> Garage:
    return replace(one, options=tuple(o for o in one.options if o.lasting))


def without_joint_options(one: Garage) -> Garage:
    return replace(one, options=tuple(o for o in one.options if o.alone))


def with_open_instead_of_watched(one: Garage) -> Garage:
    def opened(fault: Fault) -> Fault:
        watched = fault.status is FaultStatus.WATCH
        return replace(fault, status=FaultStatus.OPEN) if watched else fault

    return replace(one, faults=tuple(map(opened, one.faults)))


CHANGES: dict[str, Change] = {
    "access": lambda one: replace(
        one, access=tuple(replace(group, hours=ZERO) for group in one.access)
    ),
    "after": faults(after=()),
    "budget": lambda one: replace(one, budget=tuple(2 * b for b in one.budget)),
    "carry_over": lambda one: replace(one, carry_over=not one.carry_over),
    "coding cost": options(coding_cost=0),
    "coding tool": garage(coding_tool=True),
    "consumables": options(consumables=0),
    "core_chance": options(core_chance=ONE),
    "core_days": options(core_days=0),
    "core_deposit": options(core_deposit=0),
    "core_return_cost": options(core_return_cost=0),
    "core_trust": garage(core_trust=Fraction("1.01")),
    "damage": faults(damage_chance=ZERO),
    "deadlines": lambda one: replace(faults(fix_by=None)(one), milestones=()),
    "driven_from": vehicles(driven_from=LONG_AGO),
    "dud_chance": options(dud_chance=ZERO),
    "duty": suppliers(duty_rate=ZERO),
    "enjoyment": faults(enjoyment=ZERO),
    "free_over": suppliers(free_over=None),
    "growth": faults(growth=ZERO),
    "hour_value": garage(hour_value=0),
    "hours": garage(hours=(Fraction(1000),)),
    "inspection": faults(inspection=Inspection.NONE),
    "instalments": options(instalments=(Instalment(months=0, share=ONE),)),
    "joint options": without_joint_options,
    "keep_months": vehicles(keep_months=36),
    "lead_days": options(lead_days=0),
    "life_months": options(life_months=None),
    "look_beyond": garage(look_beyond=0),
    "loss_per_month": faults(loss_per_month=0),
    "milestones": garage(milestones=()),
    "min_temp": garage(mean_temperature=None),
    "not_after": options(not_after=None),
    "not_before": options(not_before=None),
    "opening_cash": garage(opening_cash=0),
    "pairs": faults(pair_with=()),
    "points": faults(points=None),
    "priority": garage(priority=tuple(Stage)),
    "quantity": options(quantity=ONE),
    "rates": lambda one: replace(
        one, rates={code: 2 * rate for code, rate in one.rates.items()}
    ),
    "relief": with_full_relief,
    "reserve": garage(reserve=0),
    "risky routes": lambda one: replace(
        one, allow_risky_routes=not one.allow_risky_routes
    ),
    "road_legal": options(road_legal=True),
    "shipping": suppliers(shipping=0),
    "stages before worth": garage(
        priority=(Stage.WORTH, Stage.DEADLINES, Stage.SAFETY, Stage.MOBILITY)
    ),
    "stand-ins": without_stand_ins,
    "tax_rate": garage(tax_rate=ZERO),
    "tools": lambda one: replace(
        one, tools=tuple(replace(tool, owned=True) for tool in one.tools)
    ),
    "valid_until": options(valid_until=None),
    "warranty": options(warranty_months=12),
    "watched faults": with_open_instead_of_watched,
}


def net_worth(one: Garage, found: Best | None) -> int | None:
    return found.figures[one.priority.index(Stage.WORTH)] if found else None


@pytest.mark.parametrize("feature", CHANGES)
def test_net_worth_of_some_garages_turns_on(feature: str) -> None:
    swayed = 0
    for seed in SEEDS:
        before, found = small_optimum(seed)
        after = CHANGES[feature](before)
        swayed += after != before and (
            net_worth(after, best(after)) != net_worth(before, found)
        )
        if swayed == ENOUGH:
            return
    pytest.fail(f"only {swayed} of {len(SEEDS)} garages turn on it")
