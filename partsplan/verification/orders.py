"""Rules that each chosen option keeps by itself."""

from collections.abc import Iterator

from partsplan.domain import Coding, FaultStatus, Option, Route, System
from partsplan.verification.facts import Facts
from partsplan.verification.violation import Violation

NEVER_ON_RESTRAINT = {Route.USED, Route.ECONOMY, Route.STAND_IN, Route.REFINISH}
ONLY_WITH_CONSENT = {Route.USED, Route.ECONOMY, Route.STAND_IN}
NEEDS_CARE = {System.BRAKES, System.STEERING, System.TYRES, System.FUEL}


def known(facts: Facts) -> Iterator[Violation]:
    """Only options and tools that there are, in months that there are."""
    months = range(facts.garage.months)
    for what, names, have in (
        ("option", facts.choices.orders, facts.garage.option),
        ("tool", facts.choices.tools, facts.garage.tool),
    ):
        for name, month in names.items():
            if name not in have:
                yield Violation("known", f'no {what} "{name}"')
            if month not in months:
                yield Violation("known", f"{what} {name} in month {month}")


def in_time(facts: Facts) -> Iterator[Violation]:
    """Ordered while the quote holds, fitted while it is allowed."""
    garage = facts.garage
    for option in facts.chosen:
        fitted, ordered = facts.fitted(option), facts.ordered(option)
        month = garage.month(fitted)
        late = [
            fitted >= garage.months,
            fitted >= facts.vehicle(option).keep_months,
            option.not_before is not None and month < option.not_before,
            option.not_after is not None and month > option.not_after,
            option.valid_until is not None
            and garage.month(ordered) > option.valid_until,
        ]
        if any(late):
            yield Violation("in time", f"{option.id} fitted in {month}")


def warm_enough(facts: Facts) -> Iterator[Violation]:
    """No job in a month too cold for it."""
    means = facts.garage.mean_temperature
    for option in facts.chosen:
        month = facts.garage.month(facts.fitted(option))
        if means and option.min_temp is not None:
            mean = means[month.month - 1]
            if mean < option.min_temp:
                yield Violation("warm enough", f"{option.id} in {month}")


def coded(facts: Facts) -> Iterator[Violation]:
    """Own coding needs a coding tool."""
    for option in facts.chosen:
        if option.coding is Coding.SELF and not facts.garage.coding_tool:
            yield Violation("coded", f"{option.id} needs a coding tool")


def by_allowed_route(facts: Facts) -> Iterator[Violation]:
    """Route rules, by the system of every fault that an option names."""
    for option in facts.chosen:
        for cure in option.fixes:
            system = facts.garage.fault[cure.fault].system
            if not _allowed(facts, option, system):
                detail = f"{option.id}: {option.route} on {system}"
                yield Violation("by allowed route", detail)
        if not option.road_legal and facts.vehicle(option).driven_from is not None:
            yield Violation("by allowed route", f"{option.id} is not road legal")


def for_open_faults(facts: Facts) -> Iterator[Violation]:
    """Nothing is bought for faults that are all fixed or watched."""
    for option in facts.chosen:
        statuses = {facts.garage.fault[cure.fault].status for cure in option.fixes}
        if FaultStatus.OPEN not in statuses:
            yield Violation("for open faults", f"{option.id} has none")


def not_bought_twice(facts: Facts) -> Iterator[Violation]:
    """No lasting part where others that were bought cure all that it would."""
    waiting = {
        cure.fault
        for option in facts.garage.options
        if option.bought and option.lasting
        for cure in option.fixes
        if cure.cures
    }
    for option in facts.chosen:
        named = {cure.fault for cure in option.fixes}
        if option.lasting and not option.bought and named <= waiting:
            yield Violation("not bought twice", option.id)


def _allowed(facts: Facts, option: Option, system: System) -> bool:
    if system is System.RESTRAINT:
        return option.route not in NEVER_ON_RESTRAINT
    if system in NEEDS_CARE:
        if option.route is Route.REFINISH:
            return False
        return option.route not in ONLY_WITH_CONSENT or facts.garage.allow_risky_routes
    return True
