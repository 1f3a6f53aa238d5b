"""What can usually be expected of a part, by the route it comes from."""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from types import MappingProxyType

from partsplan.catalogue.tables import Row, read_table
from partsplan.domain import Route, System

ALL_SYSTEMS = "*"


@dataclass(frozen=True, slots=True, kw_only=True)
class RouteNorm:
    """Usual figures of a route; None where there is no norm.

    Attributes
    ----------
    life_months
        [months]
    dud_chance
        Chance that a part is bad out of the box. [0-1)
    warranty_months
        What one can count on in practice. [months]
    core_days
        From fitting to the credit for the old unit. [days]
    lead_days
        From order to delivery, or to the date a workshop gives. [days]
    """

    life_months: int | None = None
    dud_chance: Fraction | None = None
    warranty_months: int | None = None
    core_days: int | None = None
    lead_days: int | None = None


def route_norm(route: Route, system: System) -> RouteNorm:
    """The norms of a route for parts of a system.

    A row of its own for the system stands instead of the whole row for all systems.
    Common practice from memory, no source.
    """
    norms = _norms()
    return norms.get((route, system)) or norms.get((route, None), RouteNorm())


@cache
def _norms() -> Mapping[tuple[Route, System | None], RouteNorm]:
    return MappingProxyType(dict(read_table("route_norms.csv", _norm)))


def _norm(row: Row) -> tuple[tuple[Route, System | None], RouteNorm]:
    everywhere = row.text("system") == ALL_SYSTEMS
    place = (
        row.member("route", Route),
        None if everywhere else row.member("system", System),
    )
    return place, RouteNorm(
        life_months=row.optional("life_months", row.whole),
        dud_chance=row.optional("dud_chance", lambda at: row.number(at, most=1)),
        warranty_months=row.optional("warranty_months", row.whole),
        core_days=row.optional("core_days", row.whole),
        lead_days=row.optional("lead_days", row.whole),
    )
