"""What two garages say differently that may make their plans differ."""

from collections.abc import Iterator, Mapping
from dataclasses import fields
from typing import Any

from partsplan.domain import Fault, Garage, Input, Option

SETTINGS = "garage"
OF_A_PLAN = ("vehicles", "faults", "options", "milestones")
"""Tables of which a row more or less is an input."""
NAMED_BY_OPTIONS = ("suppliers", "access", "tools")
"""Tables whose rows count only where an option names them."""
SILENT = frozenset(
    {"id", "name", "title", "notes", "year", "value", "part_no", "codes", "lamps"}
    | {"kind", "quoted_on", "price_low", "price_high"}
)
"""Columns that no plan depends on."""
BOUGHT = "bought"
"""The column in which options that are bought differ from others: its price, supplier
and months come with it, since those of a part that is paid for are of no other use."""
NO_SETTINGS = frozenset(
    {"name", "currency", "discount_rate", "causes", "assumed", "warnings"}
    | {*OF_A_PLAN, *NAMED_BY_OPTIONS}
)
"""Fields of a garage that are tables, or that no plan depends on."""
USUAL = (
    ("options", BOUGHT),
    ("options", "price"),
    ("faults", "fix_by"),
    ("milestones", ""),
    (SETTINGS, "budget"),
    (SETTINGS, "hours"),
    ("faults", ""),
    ("options", "route"),
    ("options", ""),
    (SETTINGS, ""),
)
"""Kinds of inputs in the order in which people think of them; the rest comes last."""


def differing_inputs(garage: Garage, other: Garage) -> tuple[Input, ...]:
    """Everything that may make the plans of two garages differ, the usual first.

    The options of a new fault come with it, and so do the faults of a new vehicle: they
    are no inputs of their own.
    """
    found = list(_settings(garage, other))
    for table in (*OF_A_PLAN, *NAMED_BY_OPTIONS):
        found += _rows(garage, other, table)
    return tuple(sorted(found, key=_turn))


def rows(garage: Garage, table: str) -> Mapping[str, Any]:
    """The rows of a table by id."""
    return {one.id: one for one in getattr(garage, table)}


def comes_along(garage: Garage, row: object) -> bool:
    """Whether a row comes with another one that the garage has not got."""
    if isinstance(row, Fault):
        return row.vehicle not in garage.vehicle
    if isinstance(row, Option):
        return any(cure.fault not in garage.fault for cure in row.fixes)
    return False


def _settings(garage: Garage, other: Garage) -> Iterator[Input]:
    for field in fields(Garage):
        before, after = (_setting(one, field.name) for one in (garage, other))
        if field.name not in NO_SETTINGS and before != after:
            yield Input(table=SETTINGS, column=field.name, before=before, after=after)


def _setting(garage: Garage, name: str) -> Any:
    """A setting; of a list that repeats its last value only what counts."""
    value = getattr(garage, name)
    if name in ("budget", "hours"):
        while len(value) > 1 and value[-1] == value[-2]:
            value = value[:-1]
    return value


def _rows(garage: Garage, other: Garage, table: str) -> Iterator[Input]:
    before, after = rows(garage, table), rows(other, table)
    for row in dict.fromkeys((*before, *after)):
        if row in before and row in after:
            yield from _cells(table, before[row], after[row])
        elif table in OF_A_PLAN:
            lacks = other if row in before else garage
            one, two = before.get(row), after.get(row)
            if not comes_along(lacks, one or two):
                yield Input(table=table, row=row, before=one, after=two)


def _cells(table: str, before: Any, after: Any) -> Iterator[Input]:
    names = [field.name for field in fields(before)]
    if table == "options" and before.bought != after.bought:
        names = [BOUGHT]
    for name in names:
        one, two = getattr(before, name), getattr(after, name)
        if name not in SILENT and one != two:
            yield Input(table=table, row=before.id, column=name, before=one, after=two)


def _turn(one: Input) -> int:
    kinds = ((one.table, one.column), (one.table, ""))
    return next((USUAL.index(kind) for kind in kinds if kind in USUAL), len(USUAL))
