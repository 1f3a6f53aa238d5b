"""Small valid garages at random, every field in use."""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from hypothesis import strategies as st

from partsplan import catalogue
from partsplan.domain import (
    LONG_AGO,
    Access,
    Cause,
    Coding,
    Cure,
    Currency,
    Fault,
    FaultStatus,
    Garage,
    Inspection,
    Instalment,
    Likelihood,
    Milestone,
    Option,
    Route,
    Severity,
    Stage,
    Supplier,
    System,
    Tax,
    Tool,
    Use,
    Vehicle,
    Weights,
)
from tests.support.drawn import amounts, fractions, ids, months, notes, some, texts

CURRENCIES = (
    Currency("EUR", 2),
    Currency("USD", 2),
    Currency("JPY", 0),
    Currency("KWD", 3),
)


@st.composite
def garages(draw: st.DrawFn) -> Garage:
    """A valid garage of one or two vehicles, up to four faults and five options."""
    currency = draw(st.sampled_from(CURRENCIES))
    foreign = draw(st.sets(st.sampled_from(CURRENCIES), max_size=3)) - {currency}
    rates = {one.code: draw(fractions(0, 9)) + Fraction(1, 7) for one in foreign}
    codes = [currency.code, *rates]
    vehicles = [draw(_vehicle(name)) for name in draw(ids("v", 1, 2))]
    faults = draw(_faults([one.id for one in vehicles]))
    suppliers = [draw(_supplier(name, codes)) for name in draw(ids("s", 0, 2))]
    access = [draw(_access(name)) for name in draw(ids("a", 0, 2))]
    tools = [draw(_tool(name)) for name in draw(ids("t", 0, 2))]
    names = draw(ids("o", 0, 5)) if faults else []
    options = [draw(_option(name, faults, codes)) for name in names]
    options = [
        draw(_with_bench(option, suppliers, access, tools)) for option in options
    ]
    causes = [draw(_causes(fault, options)) for fault in faults]
    weights = [draw(fractions(0, 1)) for _ in range(2)]
    return Garage(
        name=draw(texts(1)),
        currency=currency,
        start=draw(months()),
        months=draw(st.integers(1, 12)),
        budget=tuple(draw(st.lists(amounts(), min_size=1, max_size=4))),
        hours=tuple(draw(st.lists(fractions(0, 40), min_size=1, max_size=4))),
        opening_cash=draw(st.integers(-50_000, 50_000)),
        carry_over=draw(st.booleans()),
        reserve=draw(amounts()),
        money_per_point=draw(fractions(0, 900)),
        hour_value=draw(amounts()),
        tax_rate=draw(fractions(0, 1)),
        look_beyond=draw(st.integers(0, 24)),
        core_trust=draw(fractions(0, 1)),
        allow_risky_routes=draw(st.booleans()),
        discount_rate=draw(fractions(0, 1)),
        weights=Weights(
            safety=weights[0], drivability=weights[1], enjoyment=Fraction(1, 10)
        ),
        rates={currency.code: Fraction(1), **rates},
        mean_temperature=draw(
            st.none()
            | st.lists(fractions(-30, 40), min_size=12, max_size=12).map(tuple)
        ),
        coding_tool=draw(st.booleans()),
        priority=tuple(draw(st.permutations(list(Stage)))),
        vehicles=tuple(vehicles),
        faults=tuple(faults),
        options=tuple(options),
        suppliers=tuple(suppliers),
        access=tuple(access),
        tools=tuple(tools),
        causes=tuple(cause for some in causes for cause in some),
        milestones=tuple(draw(_milestones(faults))),
    )


def _vehicle(name: str) -> st.SearchStrategy[Vehicle]:
    return st.builds(
        Vehicle,
        id=st.just(name),
        name=texts(1),
        year=st.none() | st.integers(1950, 2030),
        use=st.sampled_from(Use),
        keep_months=st.integers(0, 60),
        driven_from=st.none() | st.just(LONG_AGO) | months(),
        value=st.none() | amounts(),
        notes=notes(),
    )


@st.composite
def _faults(draw: st.DrawFn, vehicles: Sequence[str]) -> list[Fault]:
    """Faults that come after earlier ones only, with pairs on one vehicle."""
    faults: list[Fault] = []
    for name in draw(ids("f", 0, 4)):
        vehicle = draw(st.sampled_from(vehicles))
        mates = [one.id for one in faults if one.vehicle == vehicle]
        faults.append(draw(_fault(name, vehicle, mates, [one.id for one in faults])))
    return faults


def _fault(
    name: str, vehicle: str, mates: Sequence[str], earlier: Sequence[str]
) -> st.SearchStrategy[Fault]:
    lamp = texts(1).map(lambda text: text.replace(";", "").strip())
    kinds = st.sampled_from(sorted(catalogue.fault_kinds()))
    return st.builds(
        Fault,
        id=st.just(name),
        vehicle=st.just(vehicle),
        title=texts(1),
        kind=st.just("") | kinds,
        system=st.sampled_from(System),
        severity=st.none() | st.sampled_from(Severity),
        likelihood=st.sampled_from(Likelihood),
        inspection=st.sampled_from(Inspection),
        drivability=st.integers(0, 4),
        loss_per_month=amounts(),
        damage_chance=fractions(0, 1),
        damage_cost=amounts(),
        enjoyment=fractions(0, 10),
        points=st.none() | fractions(0, 100),
        growth=fractions(0, 1),
        lamps=st.lists(
            lamp.filter(lambda text: bool(text) and text.lower() != "none"),
            max_size=2,
            unique=True,
        ).map(tuple),
        codes=some(["P0171", "B0039", "U0073"]),
        pair_with=some(mates),
        after=some(earlier),
        fix_by=st.none() | months(),
        status=st.sampled_from(FaultStatus),
    )


@st.composite
def _option(
    draw: st.DrawFn, name: str, faults: Sequence[Fault], codes: Sequence[str]
) -> Option:
    vehicle = draw(st.sampled_from(faults)).vehicle
    own = [one.id for one in faults if one.vehicle == vehicle]
    cured = draw(st.lists(st.sampled_from(own), min_size=1, max_size=2, unique=True))
    low, price, high = sorted(draw(st.tuples(amounts(), amounts(), amounts())))
    first, last = sorted(draw(st.tuples(months(), months())))
    route = draw(st.sampled_from(Route))
    deposit = draw(st.just(0) | amounts())
    return Option(
        id=name,
        fixes=tuple(Cure(fault=one, relief=draw(_relief())) for one in cured),
        route=route,
        price=price,
        currency=draw(st.sampled_from(codes)),
        part_no=draw(texts()),
        price_low=draw(st.sampled_from([None, low])),
        price_high=draw(st.sampled_from([None, high])),
        quantity=draw(fractions(0, 8)) + Fraction(1, 3),
        core_deposit=deposit,
        core_chance=draw(fractions(0, 1)),
        core_days=draw(st.integers(0, 120)),
        core_return_cost=draw(amounts()) if deposit else 0,
        coding=draw(st.sampled_from(Coding)),
        coding_cost=draw(amounts()),
        consumables=draw(amounts()),
        life_months=draw(st.none() | st.integers(1, 120)),
        dud_chance=draw(fractions(0, 1)) * Fraction(9, 10),
        warranty_months=draw(st.integers(0, 36)),
        lead_days=draw(st.integers(0, 90)),
        hours=draw(fractions(0, 20)),
        min_temp=draw(st.none() | fractions(-20, 30)),
        instalments=draw(_instalments()),
        followup_within=draw(st.integers(1, 12)) if route is Route.STAND_IN else None,
        not_before=draw(st.sampled_from([None, first])),
        not_after=draw(st.sampled_from([None, last])),
        road_legal=draw(st.booleans()),
        quoted_on=draw(st.sampled_from(["", "2026-11", "2026-12-31"])),
        valid_until=draw(st.none() | months()),
        notes=draw(notes()),
    )


def _relief() -> st.SearchStrategy[Fraction]:
    return st.just(Fraction(1)) | fractions(0, 1).filter(lambda relief: relief > 0)


@st.composite
def _instalments(draw: st.DrawFn) -> tuple[Instalment, ...]:
    due = sorted(draw(st.sets(st.integers(0, 12), min_size=1, max_size=3)))
    parts = [draw(st.integers(1, 9)) for _ in due]
    return tuple(
        Instalment(months=month, share=Fraction(part, sum(parts)))
        for month, part in zip(due, parts, strict=True)
    )


@st.composite
def _with_bench(
    draw: st.DrawFn,
    option: Option,
    suppliers: Sequence[Supplier],
    access: Sequence[Access],
    tools: Sequence[Tool],
) -> Option:
    """The option with a supplier, access and tools."""
    names = [None, *(one.id for one in suppliers)]
    return replace(
        option,
        supplier=draw(st.sampled_from(names)),
        access=draw(some([one.id for one in access])),
        tools=draw(some([one.id for one in tools])),
    )


def _supplier(name: str, codes: Sequence[str]) -> st.SearchStrategy[Supplier]:
    return st.builds(
        Supplier,
        id=st.just(name),
        name=texts(1),
        currency=st.sampled_from(codes),
        shipping=amounts(),
        free_over=st.none() | amounts(),
        tax=st.sampled_from(Tax),
        duty_rate=fractions(0, 1),
        notes=notes(),
    )


def _access(name: str) -> st.SearchStrategy[Access]:
    return st.builds(Access, id=st.just(name), hours=fractions(0, 5), title=texts())


def _tool(name: str) -> st.SearchStrategy[Tool]:
    return st.builds(
        Tool, id=st.just(name), name=texts(1), price=amounts(), owned=st.booleans()
    )


@st.composite
def _causes(draw: st.DrawFn, fault: Fault, options: Sequence[Option]) -> list[Cause]:
    """Causes whose chances sum to less than 1."""
    cures = [None, *(one.id for one in options if one.relief(fault.id))]
    return [
        Cause(
            fault=fault.id,
            cause=cause,
            chance=draw(fractions(0, 1)) / 3,
            check_cost=draw(amounts()),
            check_hours=draw(fractions(0, 5)),
            cure=draw(st.sampled_from(cures)),
        )
        for cause in draw(st.lists(texts(1), max_size=3, unique=True))
    ]


@st.composite
def _milestones(draw: st.DrawFn, faults: Sequence[Fault]) -> list[Milestone]:
    if not faults:
        return []
    names = [one.id for one in faults]
    return [
        Milestone(
            id=name,
            month=draw(months()),
            faults=tuple(
                draw(st.lists(st.sampled_from(names), min_size=1, unique=True))
            ),
            title=draw(texts()),
        )
        for name in draw(ids("m", 0, 2))
    ]
