"""Route rules, system by system. Common practice, no source; local law decides."""

import pytest

from partsplan.domain import Garage, NotRoadLegal, Route, RouteRule, System
from partsplan.pricing import bars, flagged
from tests.support.building import fault, garage, option, vehicle

# Columns: new, oem-spec, exchange, send-in, used, uprated, economy, stand-in,
# refinish, workshop; . allowed, ? only where the owner allows it, x never.
RULES = {
    System.BRAKES: "....?.??x.",
    System.STEERING: "....?.??x.",
    System.TYRES: "....?.??x.",
    System.RESTRAINT: "....x.xxx.",
    System.FUEL: "....?.??x.",
    System.ENGINE: "..........",
    System.ELECTRICS: "..........",
    System.DRIVELINE: "..........",
    System.COOLING: "..........",
    System.EXHAUST: "..........",
    System.SUSPENSION: "..........",
    System.BODY: "..........",
    System.INTERIOR: "..........",
    System.OTHER: "..........",
}


def one_option(system: System, route: Route, *, risky: bool) -> Garage:
    within = 1 if route is Route.STAND_IN else None
    return garage(
        allow_risky_routes=risky,
        faults=(fault(system=system),),
        options=(option(route=route, followup_within=within),),
    )


def test_every_system_and_route_has_its_rule() -> None:
    assert list(RULES) == list(System)
    assert {len(row) for row in RULES.values()} == {len(Route)}


@pytest.mark.parametrize("risky", [False, True])
@pytest.mark.parametrize("system", list(System))
def test_routes_of_a_system(system: System, risky: bool) -> None:
    for route, rule in zip(Route, RULES[system], strict=True):
        made = one_option(system, route, risky=risky)
        barred = rule == "x" or (rule == "?" and not risky)
        reason = RouteRule(option="o1", route=route, system=system)
        assert bars(made, made.options[0]) == ((reason,) if barred else ()), route


@pytest.mark.parametrize("system", list(System))
def test_work_that_others_lives_hang_on_is_flagged(system: System) -> None:
    """Common practice, no source: who is not licensed has it checked."""
    watched = {System.BRAKES, System.STEERING, System.FUEL, System.RESTRAINT}
    for route, rule in zip(Route, RULES[system], strict=True):
        made = one_option(system, route, risky=True)
        licensed = system in watched or rule == "?"
        assert flagged(made, made.options[0]) == licensed, route


def test_every_fault_that_an_option_names_has_its_say() -> None:
    made = garage(
        faults=(fault(), fault("f2", system=System.RESTRAINT)),
        options=(option("o1", "f1", "f2", route=Route.USED),),
    )
    reason = RouteRule(option="o1", route=Route.USED, system=System.RESTRAINT)
    assert bars(made, made.options[0]) == (reason,)


@pytest.mark.parametrize("months_until_driven", [None, 0, 24])
def test_not_road_legal_is_barred_unless_never_driven(
    months_until_driven: int | None,
) -> None:
    made = garage(options=(option(road_legal=False),))
    driven_from = (
        None if months_until_driven is None else made.month(months_until_driven)
    )
    made = garage(options=made.options, vehicles=(vehicle(driven_from=driven_from),))
    barred = (NotRoadLegal(option="o1"),) if driven_from else ()
    assert bars(made, made.options[0]) == barred
