"""Blanks that the catalogue fills, where a fault names its kind.

The kind fills the blanks of the fault's own row; the norms for its system and the route
fill blanks of the options that cure it. Each value that is filled in is noted.
"""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field, fields, replace
from fractions import Fraction
from typing import Any

from partsplan import catalogue
from partsplan.catalogue import FaultKind, RouteNorm
from partsplan.domain import Assumed, Route, System
from partsplan.errors import Problem
from partsplan.intake.currency import EUR, currency
from partsplan.intake.rows import Row, Rows
from partsplan.intake.settings import Settings
from partsplan.intake.settings_file import SettingsFile
from partsplan.intake.suggest import Suggester
from partsplan.sheets.quoting import shown

_MONEY = ("loss_per_month", "damage_cost")

FROM_KIND = (
    "system",
    "severity",
    "likelihood",
    "inspection",
    "drivability",
    *_MONEY,
    "damage_chance",
    "enjoyment",
    "growth",
    "lamps",
)
"""Columns of a fault that its kind fills."""

FROM_NORM = tuple(one.name for one in fields(RouteNorm))
"""Columns of an option that a route norm fills."""


@dataclass(frozen=True, slots=True)
class _Blanks:
    """What could stand in the blanks of one row, and where it comes from."""

    values: Mapping[str, Any] = field(default_factory=dict)
    source: str = ""


def fill(
    faults: Rows, options: Rows, file: SettingsFile
) -> tuple[Rows, Rows, tuple[Assumed, ...]]:
    """Both tables with their blanks filled, and what was filled in.

    Kinds that the catalogue does not have become problems; a missing rate for the euro,
    in which the catalogue's figures are, becomes a warning.
    """
    if not any("kind" in row.values for row in faults.rows):
        return faults, options, ()
    kinds, settings = catalogue.fault_kinds(), file.settings
    faults = replace(
        faults,
        problems=(*faults.problems, *_unknown_kinds(faults, kinds)),
        warnings=(*faults.warnings, *_missing_rate(file)),
    )

    def from_kind(row: Row) -> _Blanks:
        kind = kinds.get(row.values.get("kind", ""))
        return _from_kind(kind, settings) if kind else _Blanks()

    faults, assumed = _filled(faults, from_kind, settings)
    systems = {
        row.key[0]: row.values.get("system", System.OTHER)
        for row in faults.rows
        if row.values.get("kind") in kinds
    }
    options, more = _filled(options, lambda row: _from_norm(row, systems), settings)
    return faults, options, assumed + more


def _unknown_kinds(faults: Rows, kinds: Mapping[str, FaultKind]) -> Iterator[Problem]:
    names = Suggester(kinds)
    for row in faults.rows:
        kind = row.values.get("kind")
        if kind and kind not in kinds:
            message = f"no fault kind {shown(kind)} in the catalogue{names.hint(kind)}"
            yield Problem(faults.file, row.line, "kind", message)


def _missing_rate(file: SettingsFile) -> Iterator[Problem]:
    if EUR not in file.settings.minor_rates:
        message = (
            f"no rate for {EUR}, the currency of the catalogue: "
            f"blanks in {' and '.join(_MONEY)} stay 0"
        )
        yield Problem(file.document.file, 0, "rates", message)


def _from_kind(kind: FaultKind, settings: Settings) -> _Blanks:
    values = {name: getattr(kind, name) for name in FROM_KIND}
    rate = settings.minor_rates.get(EUR, Fraction(0)) * currency(EUR).unit
    values |= {name: round(values[name] * rate) for name in _MONEY}
    return _Blanks(values, f"fault kind {kind.key}")


def _from_norm(row: Row, systems: Mapping[str, System]) -> _Blanks:
    """Norms for the system of the first fault that has a kind."""
    named = (cure.fault for cure in row.values.get("fixes", ()))
    system = next((systems[fault] for fault in named if fault in systems), None)
    route = row.values.get("route")
    if system is None or route is None:
        return _Blanks()
    norm = catalogue.route_norm(route, system)
    values = {name: getattr(norm, name) for name in FROM_NORM}
    if route is Route.STAND_IN:
        del values["life_months"]
    if not row.values.get("core_deposit"):
        del values["core_days"]
    return _Blanks(values, f"norm for {route}, {system}")


def _filled(
    rows: Rows, blanks_of: Callable[[Row], _Blanks], settings: Settings
) -> tuple[Rows, tuple[Assumed, ...]]:
    """The rows with their blanks filled; what a blank means anyway is not noted."""
    columns = {column.name: column for column in rows.table.columns}
    usual = {one.name: one.default for one in fields(rows.table.makes)}
    filled = []
    assumed = []
    for row in rows.rows:
        blanks = blanks_of(row)
        new = {
            name: value
            for name, value in blanks.values.items()
            if name not in row.values.keys() | row.wrong
            and value not in (None, usual[name])
        }
        filled.append(replace(row, values={**row.values, **new}) if new else row)
        for name, value in new.items():
            text = columns[name].kind.write(value, settings.currency)
            assumed.append(
                Assumed(
                    table=rows.table.name,
                    row=row.key[0],
                    column=name,
                    value=text,
                    source=blanks.source,
                )
            )
    return replace(rows, rows=tuple(filled)), tuple(assumed)
