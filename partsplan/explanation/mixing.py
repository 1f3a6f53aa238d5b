"""One garage with a few inputs of another."""

from collections.abc import Iterable, Mapping
from dataclasses import replace
from typing import Any

from partsplan.domain import Fault, Garage, Input, Milestone, Option, Vehicle
from partsplan.explanation.inputs import (
    BOUGHT,
    NAMED_BY_OPTIONS,
    SETTINGS,
    comes_along,
    rows,
)


def with_inputs(garage: Garage, other: Garage, inputs: Iterable[Input]) -> Garage:
    """The first garage with these inputs as the second has them.

    A new vehicle brings its faults and a new fault its options, as far as all that they
    name is there; what goes takes along what names it.
    """
    taken = tuple(inputs)
    settings = {
        one.column: getattr(other, one.column) for one in taken if one.table == SETTINGS
    }
    rates = {**other.rates, **settings.pop("rates", garage.rates)}
    tables: dict[str, Mapping[str, Any]] = {
        table: {**rows(other, table), **_mixed(garage, other, table, taken)}
        for table in NAMED_BY_OPTIONS
    }
    vehicles = _mixed(garage, other, "vehicles", taken)
    faults = _faults(garage, other, vehicles, _mixed(garage, other, "faults", taken))
    tables["vehicles"] = _all_named(other, vehicles, faults)
    tables["faults"] = faults
    options = _mixed(garage, other, "options", taken)
    tables["options"] = _options(garage, other, faults, options)
    tables["milestones"] = {
        name: _milestone(one, faults)
        for name, one in _mixed(garage, other, "milestones", taken).items()
    }
    changes: dict[str, Any] = {**settings, "rates": rates}
    for table, found in tables.items():
        changes[table] = tuple(_in_order(garage, other, table, found))
    return replace(garage, **changes)


def _mixed(
    garage: Garage, other: Garage, table: str, taken: tuple[Input, ...]
) -> dict[str, Any]:
    """The rows of a table with the inputs that were taken."""
    found, theirs = dict(rows(garage, table)), rows(other, table)
    for one in taken:
        if one.table != table:
            continue
        if one.row not in theirs:
            del found[one.row]
        elif one.column and one.column != BOUGHT:
            cell = {one.column: getattr(theirs[one.row], one.column)}
            found[one.row] = replace(found[one.row], **cell)
        else:
            found[one.row] = theirs[one.row]
    return found


def _faults(
    garage: Garage,
    other: Garage,
    vehicles: Mapping[str, Vehicle],
    faults: Mapping[str, Fault],
) -> dict[str, Fault]:
    gone = garage.vehicle.keys() - vehicles.keys()
    brought = {
        one.id: one
        for one in other.faults
        if comes_along(garage, one)
        and one.id not in garage.fault
        and one.vehicle in vehicles
    }
    kept = {
        name: one
        for name, one in {**faults, **brought}.items()
        if one.vehicle not in gone
    }
    return {
        name: replace(
            one,
            after=_there(one.after, kept),
            pair_with=_there(one.pair_with, kept),
        )
        for name, one in kept.items()
    }


def _all_named(
    other: Garage, vehicles: Mapping[str, Vehicle], faults: Mapping[str, Fault]
) -> dict[str, Vehicle]:
    missing = dict.fromkeys(
        one.vehicle for one in faults.values() if one.vehicle not in vehicles
    )
    return {**vehicles, **{name: other.vehicle[name] for name in missing}}


def _options(
    garage: Garage,
    other: Garage,
    faults: Mapping[str, Fault],
    options: Mapping[str, Option],
) -> dict[str, Option]:
    brought = {
        one.id: one
        for one in other.options
        if comes_along(garage, one)
        and one.id not in garage.option
        and all(cure.fault in faults for cure in one.fixes)
    }
    return {
        name: replace(one, fixes=fixes)
        for name, one in {**options, **brought}.items()
        if (fixes := tuple(cure for cure in one.fixes if cure.fault in faults))
    }


def _milestone(milestone: Milestone, faults: Mapping[str, Fault]) -> Milestone:
    return replace(milestone, faults=_there(milestone.faults, faults))


def _there(names: tuple[str, ...], faults: Mapping[str, Fault]) -> tuple[str, ...]:
    return tuple(name for name in names if name in faults)


def _in_order(
    garage: Garage, other: Garage, table: str, found: Mapping[str, Any]
) -> list[Any]:
    """The second garage's order first, so that with all inputs it is its table."""
    places = [*rows(other, table), *rows(garage, table)]
    return sorted(found.values(), key=lambda one: places.index(one.id))
