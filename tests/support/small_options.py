"""Options of small garages: every way to price, time and link a job."""

from collections.abc import Iterator, Sequence
from typing import TypeVar

from partsplan.domain import (
    Access,
    Coding,
    Cure,
    Fault,
    FaultStatus,
    Instalment,
    Option,
    Route,
    Supplier,
    System,
    Tool,
)
from tests.support.small_bench import Bench

_T = TypeVar("_T")

LASTING = [route for route in Route if route is not Route.STAND_IN]
SOUND = [Route.NEW, Route.OEM_SPEC, Route.EXCHANGE, Route.SEND_IN, Route.WORKSHOP]
PAYMENTS = (
    "0:0.25;1:0.75",
    "0:0.5;2:0.5",
    "1:1",
    "0:0.3;1:0.3;5:0.4",
)


def small_options(
    bench: Bench,
    faults: Sequence[Fault],
    suppliers: Sequence[Supplier],
    access: Sequence[Access],
    tools: Sequence[Tool],
) -> tuple[Option, ...]:
    """Six to eight options, paired faults and every other fault served first."""
    wanted = bench.dice.choice((6, 7, 8) if bench.months == 3 else (6, 7))
    drawn: list[Option] = []
    for cures, route in _targets(bench, faults):
        if len(drawn) == wanted:
            break
        drawn.append(
            _option(bench, f"o{len(drawn) + 1}", cures, route, suppliers, access, tools)
        )
    return tuple(drawn)


def _targets(
    bench: Bench, faults: Sequence[Fault]
) -> Iterator[tuple[tuple[Cure, ...], Route]]:
    """What each option fixes and by which route, without an end."""
    dice = bench.dice
    by_id = {fault.id: fault for fault in faults}
    served: list[Fault] = []
    for fault in faults:
        for name in fault.pair_with:
            other = by_id[name]
            first, second = dice.sample(SOUND, 2)
            manner = dice.choice(("same", "different", "both", "free"))
            if manner == "both":
                yield (_cure(bench, fault), _cure(bench, other)), first
            if manner in ("same", "different"):
                yield (_cure(bench, fault),), first
                yield (_cure(bench, other),), first if manner == "same" else second
                served += [fault, other]
    for fault in faults:
        likely = 0.9 if fault.status is FaultStatus.OPEN else 0.3
        if fault not in served and bench.some(likely):
            served.append(fault)
            yield (_cure(bench, fault),), _route(bench, fault)
    while True:
        fault = dice.choice([f for f in faults if f.status is FaultStatus.OPEN])
        mates = [f for f in faults if f.vehicle == fault.vehicle and f != fault]
        if mates and bench.some(0.25):
            mate = dice.choice(mates)
            yield (_cure(bench, fault), _cure(bench, mate)), _route(bench, fault)
        elif bench.some(0.4):
            yield (_cure(bench, fault),), Route.STAND_IN
        else:
            yield (_cure(bench, fault),), _route(bench, fault)


def _cure(bench: Bench, fault: Fault) -> Cure:
    relief = bench.fraction("1", "1", "1", "0.8", "0.5", "0.3")
    return Cure(fault=fault.id, relief=relief)


def _route(bench: Bench, fault: Fault) -> Route:
    """A lasting route; one that a route rule allows more often than not."""
    rough = fault.system not in (System.OTHER, System.ENGINE, System.BODY)
    return bench.dice.choice(SOUND if rough and bench.some(0.5) else LASTING)


def _option(
    bench: Bench,
    name: str,
    cures: tuple[Cure, ...],
    route: Route,
    suppliers: Sequence[Supplier],
    access: Sequence[Access],
    tools: Sequence[Tool],
) -> Option:
    dice = bench.dice
    stand_in = route is Route.STAND_IN
    supplier = dice.choice([*suppliers, *suppliers, None])
    currency = supplier.currency if supplier else bench.currency
    if bench.some(0.1):
        currency = dice.choice([bench.currency, *bench.rates])
    price = bench.money(5, 40) if stand_in else bench.money(15, 100)
    quantity = bench.fraction("1", "1", "1", "1", "2", "1.5")
    with_core = bench.some(0.9 if route is Route.EXCHANGE else 0.2)
    coding = dice.choices(list(Coding), (7, 1, 2))[0]
    return Option(
        id=name,
        fixes=cures,
        route=route,
        price=bench.abroad(round(price / quantity), currency),
        currency=currency,
        supplier=supplier.id if supplier else None,
        quantity=quantity,
        core_deposit=bench.abroad(bench.money(10, 90), currency) if with_core else 0,
        core_chance=bench.fraction("1", "0.9", "0.8", "0.7", "0.45"),
        core_days=dice.choice((0, 14, 30, 30, 30, 31, 60)),
        core_return_cost=bench.money(1, 12) if bench.some(0.6) else 0,
        coding=coding,
        coding_cost=bench.money(3, 30) if coding is Coding.PAID else 0,
        consumables=bench.money(1, 15) if bench.some(0.3) else 0,
        life_months=dice.choice((None, None, None, None, 1, 2, 3, 12, 24)),
        dud_chance=bench.fraction("0", "0", "0.02", "0.1", "0.25"),
        warranty_months=dice.choice((0, 12, 24)),
        lead_days=dice.choice((0, 0, 0, 0, 3, 10, 14, 15, 30, 45)),
        hours=bench.fraction("0", "0.5", "1", "1.5", "2", "4"),
        access=_drawn(bench, [group.id for group in access], 0.5),
        tools=_drawn(bench, [tool.id for tool in tools], 0.25),
        min_temp=bench.fraction("8", "12", "16") if bench.some(0.15) else None,
        instalments=_instalments(bench),
        followup_within=dice.choice((1, 1, 2, 3)) if stand_in else None,
        not_before=bench.month(0, 2) if bench.some(0.14) else None,
        not_after=bench.month(0, bench.months) if bench.some(0.1) else None,
        valid_until=bench.month(-1, 2) if bench.some(0.12) else None,
        road_legal=not bench.some(0.05),
    )


def _drawn(bench: Bench, names: Sequence[_T], share: float) -> tuple[_T, ...]:
    return tuple(name for name in names if bench.some(share))


def _instalments(bench: Bench) -> tuple[Instalment, ...]:
    if bench.some(0.75):
        return (Instalment(months=0, share=bench.fraction("1")),)
    parts = (part.split(":") for part in bench.dice.choice(PAYMENTS).split(";"))
    return tuple(
        Instalment(months=int(months), share=bench.fraction(share))
        for months, share in parts
    )
