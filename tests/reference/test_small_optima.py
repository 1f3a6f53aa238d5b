"""Every feature of the small garages shows in the optima of some of them."""

import re
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from functools import cache

import pytest

from partsplan.domain import CURED, Coding, FaultStatus, Garage, Route, System
from tests.support.reference import Best, Judgement, Priced, best, judge, offers
from tests.support.small_optima import small_optimum

SEEDS = range(400)
ENOUGH = 4

FEATURES = """
no legal choice; nothing worth doing; several jobs; both vehicles; ordered later
stand-in; stand-in followed up; joint option; several jobs for one fault
partial relief; several reliefs at once; worn out within the horizon
pair; pair by different routes; pair by one option
after another job; after a fixed fault
deposit back; deposit not trusted; return cost; instalments; instalment past the horizon
free shipping; shipping; several goods in one order; foreign money; duty or tax
tool bought; tool for several jobs; tool bought ahead; access shared
coding self; coding paid; risky route; route of restraint; not driven
unsafe month left; unsafe month spared; undrivable month left; undrivable month spared
deadline missed; deadline met; loss for an earlier stage
"""


@cache
def counts() -> Counter[str]:
    return Counter(name for seed in SEEDS for name in set(shown(seed)))


@pytest.mark.parametrize("feature", re.split(r"\s*[;\n]\s*", FEATURES.strip()))
def test_shows(feature: str) -> None:
    assert counts()[feature] >= ENOUGH


def test_about_half_of_the_jobs_fit() -> None:
    """Of the jobs that money and hours to spare would do."""
    done = wanted = 0
    for seed in range(0, 400, 16):
        garage, found = small_optimum(seed)
        if found:
            rich = best(lavish(garage))
            assert rich is not None
            done += len(found.orders)
            wanted += len(rich.orders)
    assert 0.4 < done / wanted < 0.75


def test_every_optimum_is_legal_and_what_it_says() -> None:
    for seed in SEEDS:
        garage, found = small_optimum(seed)
        if found:
            judged = judge(garage, found.orders, found.tools)
            assert judged.broken == ()
            assert found.figures == tuple(map(judged.stages.of, garage.priority))


def lavish(garage: Garage) -> Garage:
    """The same with money and hours to spare."""
    return replace(
        garage, opening_cash=10**9, carry_over=True, reserve=0, hours=(Fraction(1000),)
    )


def shown(seed: int) -> Iterator[str]:
    """The features that an optimal choice shows."""
    garage, found = small_optimum(seed)
    if found is None:
        yield "no legal choice"
        return
    known = offers(garage)
    chosen = [known[order] for order in found.orders.items()]
    judged = judge(garage, found.orders, found.tools, known)
    yield from _of_the_choice(garage, found, chosen)
    yield from _of_the_figures(garage, judged)
    yield from (name for offer in chosen for name in _of_offer(garage, offer))
    yield from _of_links(garage, chosen)


def _named(found: Mapping[str, bool]) -> Iterator[str]:
    yield from (name for name, holds in found.items() if holds)


def _of_the_choice(
    garage: Garage, found: Best, chosen: Sequence[Priced]
) -> Iterator[str]:
    options = [offer.option for offer in chosen]
    tools = Counter(tool for option in options for tool in option.tools)
    groups = Counter(
        (group, offer.fitted) for offer in chosen for group in offer.option.access
    )
    suppliers = Counter((o.option.supplier, o.ordered) for o in chosen)
    needed = {
        tool: min(o.fitted for o in chosen if tool in o.option.tools) for tool in tools
    }
    at_need = judge(
        garage, found.orders, {tool: needed[tool] for tool in found.tools}
    ).broken
    faults = Counter(cure.fault for option in options for cure in option.fixes)
    yield from _named(
        {
            "nothing worth doing": not chosen,
            "several jobs": len(chosen) > 2,
            "both vehicles": len({garage.fault[f].vehicle for f in faults}) > 1,
            "several jobs for one fault": max(faults.values(), default=0) > 1,
            "several goods in one order": any(
                supplier and count > 1 for (supplier, _), count in suppliers.items()
            ),
            "tool bought": bool(found.tools),
            "tool for several jobs": any(tools[tool] > 1 for tool in found.tools),
            "tool bought ahead": bool(at_need),
            "access shared": max(groups.values(), default=0) > 1,
        }
    )


def _of_the_figures(garage: Garage, judged: Judgement) -> Iterator[str]:
    idle = judge(garage, {}, {}).stages
    stages = judged.stages
    shipping = [cost for _, cost in judged.orders.values()]
    yield from _named(
        {
            "free shipping": any(
                cost == 0
                and garage.supplier[name].shipping > 0
                and garage.supplier[name].free_over is not None
                for (name, _), (_, cost) in judged.orders.items()
            ),
            "shipping": any(shipping),
            "deposit back": any(judged.back),
            "unsafe month left": stages.unsafe_vehicle_months > 0,
            "unsafe month spared": stages.unsafe_vehicle_months
            < idle.unsafe_vehicle_months,
            "undrivable month left": stages.undrivable_vehicle_months > 0,
            "undrivable month spared": stages.undrivable_vehicle_months
            < idle.undrivable_vehicle_months,
            "deadline missed": stages.missed_deadlines > 0,
            "deadline met": stages.missed_deadlines < idle.missed_deadlines,
            "loss for an earlier stage": stages.net_worth < 0,
        }
    )


def _of_offer(garage: Garage, offer: Priced) -> Iterator[str]:
    option = offer.option
    faults = [garage.fault[cure.fault] for cure in option.fixes]
    systems = {fault.system for fault in faults}
    last = offer.ordered + option.instalments[-1].months
    yield from _named(
        {
            "ordered later": offer.ordered > 0,
            "stand-in": not option.lasting,
            "joint option": len(faults) > 1,
            "partial relief": any(cure.relief < CURED for cure in option.fixes),
            "worn out within the horizon": offer.until < garage.months,
            "deposit not trusted": offer.deposit > 0
            and option.core_chance < garage.core_trust,
            "return cost": offer.deposit > 0 and option.core_return_cost > 0,
            "instalments": len(option.instalments) > 1,
            "instalment past the horizon": last >= garage.months,
            "foreign money": option.currency != garage.currency.code,
            "duty or tax": offer.landed > offer.goods,
            "coding self": option.coding is Coding.SELF,
            "coding paid": option.coding is Coding.PAID and option.coding_cost > 0,
            "risky route": option.route in (Route.USED, Route.ECONOMY, Route.STAND_IN)
            and bool(systems & {System.BRAKES, System.STEERING, System.TYRES}),
            "route of restraint": System.RESTRAINT in systems,
            "not driven": garage.vehicle[faults[0].vehicle].driven_from is None,
        }
    )


def _of_links(garage: Garage, chosen: Sequence[Priced]) -> Iterator[str]:
    lasting = [offer for offer in chosen if offer.option.lasting]
    for offer in chosen:
        for cure in offer.option.fixes:
            fault = garage.fault[cure.fault]
            for name in fault.after:
                fixed = garage.fault[name].status is FaultStatus.FIXED
                yield "after a fixed fault" if fixed else "after another job"
            for name in fault.pair_with:
                if garage.fault[name].status is FaultStatus.OPEN and offer in lasting:
                    yield "pair"
                    if offer.option.relief(name):
                        yield "pair by one option"
                    elif any(
                        other.option.relief(name)
                        and other.option.route is not offer.option.route
                        for other in lasting
                    ):
                        yield "pair by different routes"
            for other in chosen:
                if other is not offer and offer.gains.keys() & other.gains.keys():
                    yield "several reliefs at once"
                if (
                    not offer.option.lasting
                    and other in lasting
                    and other.option.relief(fault.id)
                    and other.fitted > offer.fitted
                ):
                    yield "stand-in followed up"
