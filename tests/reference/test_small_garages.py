"""Every feature occurs in the small garages."""

import re
from collections import Counter
from collections.abc import Iterator
from functools import cache
from itertools import combinations

import pytest

from partsplan.domain import (
    CURED,
    LONG_AGO,
    Fault,
    FaultStatus,
    Garage,
    Month,
    Option,
    Stage,
    System,
    Tax,
    Vehicle,
)
from tests.support.reference import offers, refusals
from tests.support.small_garages import small_garage

SEEDS = range(400)
ENOUGH = 10

FEATURES = """
several vehicles; use daily; use weekend; use project; use stored
kept less than the horizon; kept less than what is looked beyond
driven long since; driven later; never driven
status open; status fixed; status watch
fix_by before; fix_by in; fix_by past; milestone before; milestone in; milestone past
pair; pair with a route of both; pair without a route of both; option for a pair
after open; after fixed; after watch; after the same job
growth; own points; damage; loss; enjoyment; safety; dangerous; not drivable
restraint; route rule; risky route allowed; not road legal; road_legal no, not driven
relief 0.5; relief 0.8; several faults; open and watched together; stand-in
deposit trusted; deposit not trusted; deposit at the edge of trust; core_days over 30
core_days 0; return cost
coding none; coding self; coding paid; no coding tool; consumables; hours
duty and tax added; foreign money; foreign money without minor digits; own money so
free_over; quantity; instalments; instalment past the horizon
lead_days; too early; too late; quote over; too cold; min_temp met; past the horizon
vehicle gone; life within the horizon; life beyond it; dud without warranty
access of several options; tool owned; tool not owned; tool of several options
budget by month; hours by month; hour_value; opening cash; debt
carry_over; no carry_over; reserve; default priority; other priority
look_beyond 0; look_beyond 6
"""


@cache
def counts() -> Counter[str]:
    return Counter(name for seed in SEEDS for name in features(small_garage(seed)))


@pytest.mark.parametrize("feature", re.split(r"\s*[;\n]\s*", FEATURES.strip()))
def test_occurs(feature: str) -> None:
    assert counts()[feature] >= ENOUGH


def test_a_seed_gives_one_garage() -> None:
    assert small_garage(7) == small_garage(7)
    assert small_garage(7) != small_garage(8)


def features(garage: Garage) -> set[str]:
    """The features of a garage; those of options only where they make an offer."""
    offered = [garage.option[name] for name in {name for name, _ in offers(garage)}]
    open_faults = [f for f in garage.faults if f.status is FaultStatus.OPEN]
    return {
        *_of_the_garage(garage),
        *(name for vehicle in garage.vehicles for name in _of_vehicle(garage, vehicle)),
        *(f"status {fault.status}" for fault in garage.faults),
        *(name for fault in open_faults for name in _of_fault(garage, fault)),
        *(f"milestone {_place(garage, one.month)}" for one in garage.milestones),
        *refusals(garage).values(),
        *(name for option in offered for name in _of_option(garage, option)),
        *(
            f"{kind} of several options"
            for one, other in combinations(offered, 2)
            for kind in ("access", "tool")
            if {*getattr(one, _LISTS[kind])} & {*getattr(other, _LISTS[kind])}
        ),
    }


_LISTS = {"access": "access", "tool": "tools"}


def _place(garage: Garage, month: Month) -> str:
    index = garage.index(month)
    return "before" if index < 0 else "in" if index < garage.months else "past"


def _named(found: dict[str, bool]) -> Iterator[str]:
    yield from (name for name, holds in found.items() if holds)


def _of_the_garage(garage: Garage) -> Iterator[str]:
    yield f"look_beyond {garage.look_beyond}"
    yield from _named(
        {
            "several vehicles": len(garage.vehicles) > 1,
            "own money so": garage.currency.digits == 0,
            "tool owned": any(tool.owned for tool in garage.tools),
            "tool not owned": any(not tool.owned for tool in garage.tools),
            "budget by month": len(set(garage.budget)) > 1,
            "hours by month": len(set(garage.hours)) > 1,
            "hour_value": garage.hour_value > 0,
            "opening cash": garage.opening_cash > 0,
            "debt": garage.opening_cash < 0,
            "carry_over": garage.carry_over,
            "no carry_over": not garage.carry_over,
            "reserve": garage.reserve > 0,
            "default priority": garage.priority == tuple(Stage),
            "other priority": garage.priority != tuple(Stage),
        }
    )


def _of_vehicle(garage: Garage, vehicle: Vehicle) -> Iterator[str]:
    end = garage.months + garage.look_beyond
    driven_from = vehicle.driven_from
    yield f"use {vehicle.use}"
    yield from _named(
        {
            "kept less than the horizon": vehicle.keep_months < garage.months,
            "kept less than what is looked beyond": (
                garage.months < vehicle.keep_months < end
            ),
            "driven long since": driven_from == LONG_AGO,
            "driven later": driven_from is not None and driven_from > garage.start,
            "never driven": driven_from is None,
        }
    )


def _of_fault(garage: Garage, fault: Fault) -> Iterator[str]:
    if fault.fix_by:
        yield f"fix_by {_place(garage, fault.fix_by)}"
    for name in fault.after:
        yield f"after {garage.fault[name].status}"
        if any(option.relief(name) >= CURED for option in garage.options_for[fault.id]):
            yield "after the same job"
    for name in fault.pair_with:
        if garage.fault[name].status is FaultStatus.OPEN:
            yield from _of_pair(garage, fault.id, name)
    yield from _named(
        {
            "growth": fault.growth > 0,
            "own points": fault.points is not None,
            "damage": fault.damage_chance * fault.damage_cost > 0,
            "loss": fault.loss_per_month > 0,
            "enjoyment": fault.enjoyment > 0,
            "safety": fault.severity is not None,
            "dangerous": fault.inspection == "dangerous",
            "not drivable": fault.drivability == 4,
            "restraint": fault.system is System.RESTRAINT,
        }
    )


def _of_pair(garage: Garage, one: str, other: str) -> Iterator[str]:
    lasting = [
        {option for option in garage.options_for[name] if option.lasting}
        for name in (one, other)
    ]
    routes = [{option.route for option in options} for options in lasting]
    shared = routes[0] & routes[1]
    yield "pair"
    if all(routes):
        yield f"pair {'with' if shared else 'without'} a route of both"
    if lasting[0] & lasting[1]:
        yield "option for a pair"


def _of_option(garage: Garage, option: Option) -> Iterator[str]:
    faults = [garage.fault[cure.fault] for cure in option.fixes]
    vehicle = garage.vehicle[faults[0].vehicle]
    supplier = garage.supplier[option.supplier] if option.supplier else None
    money = option.currency
    yield f"coding {option.coding}"
    for cure in option.fixes:
        yield f"relief {float(cure.relief)}"
    yield from _named(
        {
            "risky route allowed": option.route in ("used", "economy", "stand-in")
            and any(
                f.system in ("brakes", "steering", "tyres", "fuel") for f in faults
            ),
            "road_legal no, not driven": not option.road_legal
            and vehicle.driven_from is None,
            "several faults": len(faults) > 1,
            "open and watched together": any(
                fault.status is FaultStatus.WATCH for fault in faults
            ),
            "stand-in": not option.lasting,
            "deposit trusted": option.core_deposit > 0
            and option.core_chance >= garage.core_trust,
            "deposit not trusted": option.core_deposit > 0
            and option.core_chance < garage.core_trust,
            "deposit at the edge of trust": option.core_deposit > 0
            and option.core_chance == garage.core_trust,
            "core_days over 30": option.core_deposit > 0 and option.core_days > 30,
            "core_days 0": option.core_deposit > 0 and option.core_days == 0,
            "return cost": option.core_deposit > 0 and option.core_return_cost > 0,
            "consumables": option.consumables > 0,
            "hours": option.hours > 0,
            "duty and tax added": supplier is not None
            and supplier.tax is Tax.ADDED
            and supplier.duty_rate * garage.tax_rate > 0,
            "foreign money": money != garage.currency.code,
            "foreign money without minor digits": money == "JPY"
            and money != garage.currency.code,
            "free_over": supplier is not None and supplier.free_over is not None,
            "quantity": option.quantity > 1,
            "instalments": len(option.instalments) > 1,
            "instalment past the horizon": option.instalments[-1].months
            >= garage.months,
            "lead_days": option.lead_days >= 15,
            "min_temp met": option.min_temp is not None
            and garage.mean_temperature is not None,
            "life within the horizon": option.lasting
            and (option.life or garage.months) < garage.months,
            "life beyond it": (option.life or 0) > garage.months,
            "dud without warranty": option.dud_chance > 0
            and option.warranty_months == 0,
        }
    )
