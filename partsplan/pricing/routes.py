"""Which routes parts of a system may come by."""

from partsplan.domain import Garage, NotRoadLegal, Option, Route, RouteRule, System

DOUBTFUL = frozenset({Route.USED, Route.ECONOMY, Route.STAND_IN})
LICENSED_SYSTEMS = frozenset(
    {System.BRAKES, System.STEERING, System.FUEL, System.RESTRAINT}
)
RISKY_SYSTEMS = frozenset({System.BRAKES, System.STEERING, System.TYRES, System.FUEL})


def route_bar(garage: Garage, option: Option) -> RouteRule | NotRoadLegal | None:
    """The route rule that bars an option, if one does.

    Restraint parts are never used, economy, stand-in or refinished; brake, steering,
    tyre and fuel parts never refinished, and the others only where the owner allows
    it. What is not road legal never goes on a vehicle that is driven. Common practice,
    no source; local law decides.
    """
    for cure in option.fixes:
        fault = garage.fault[cure.fault]
        if _barred(garage, option.route, fault.system):
            return RouteRule(option=option.id, route=option.route, system=fault.system)
        vehicle = garage.vehicle[fault.vehicle]
        if not option.road_legal and vehicle.driven_from is not None:
            return NotRoadLegal(option=option.id)
    return None


def flagged(garage: Garage, option: Option) -> bool:
    """Whether the job is for, or to be checked by, a licensed person.

    All work on brakes, steering, fuel and restraint, and doubtful parts on tyres too.
    Common practice, no source; local law decides.
    """
    systems = {garage.fault[cure.fault].system for cure in option.fixes}
    risky = option.route in DOUBTFUL and bool(systems & RISKY_SYSTEMS)
    return bool(systems & LICENSED_SYSTEMS) or risky


def _barred(garage: Garage, route: Route, system: System) -> bool:
    if system is System.RESTRAINT:
        return route in DOUBTFUL or route is Route.REFINISH
    if system in RISKY_SYSTEMS:
        doubtful = route in DOUBTFUL and not garage.allow_risky_routes
        return doubtful or route is Route.REFINISH
    return False
