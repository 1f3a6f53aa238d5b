"""Kinds of faults with their usual figures."""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from types import MappingProxyType

from partsplan.catalogue.tables import Row, read_table
from partsplan.domain import Inspection, Likelihood, Severity, System


@dataclass(frozen=True, slots=True, kw_only=True)
class FaultKind:
    """What a fault of this kind usually means; the fields are those of a fault.

    The figures are rough: an older small or middle-sized car, 1,000 km a month. They
    stand for the fault while it stays, in a vehicle that is used.

    Attributes
    ----------
    severity, likelihood
        Of the harm it can do, after MIL-STD-882E; None and F when it can do none.
    inspection, inspection_ref
        Class by Directive 2014/45/EU, and the item of its Annex I; the item is blank
        where the class is common practice.
    drivability
        0 none, 1 nuisance, 2 hampers, 3 hardly drivable, 4 not drivable.
    loss_per_month
        Fuel, fluids and wear it wastes. [EUR a month]
    damage_chance
        Chance of further damage. [0-1 a month]
    damage_cost
        Parts that such damage would take besides the repair itself. [EUR]
    enjoyment
        What its cure is worth to somebody who likes the vehicle. [0-10]
    growth
        By how much its points grow. [share a month]
    lamps
        Lamps on the dash that it lights.
    hours
        Own work at home with hand tools; None where it is no work for home. [hours]
    source
        What the class of inspection rests on; see data/SOURCES.md.
    """

    key: str
    title: str
    system: System
    severity: Severity | None
    likelihood: Likelihood
    inspection: Inspection
    inspection_ref: str
    drivability: int
    loss_per_month: Fraction
    damage_chance: Fraction
    damage_cost: Fraction
    enjoyment: Fraction
    growth: Fraction
    lamps: tuple[str, ...]
    hours: Fraction | None
    source: str


@cache
def fault_kinds() -> Mapping[str, FaultKind]:
    """All fault kinds by key, in file order.

    Common practice from memory, no source, but for the classes of inspection; see
    data/SOURCES.md.
    """
    kinds = read_table("fault_kinds.csv", _fault_kind)
    return MappingProxyType({kind.key: kind for kind in kinds})


def _fault_kind(row: Row) -> FaultKind:
    return FaultKind(
        key=row.text("key"),
        title=row.text("title"),
        system=row.member("system", System),
        severity=row.optional("severity", lambda at: row.member(at, Severity)),
        likelihood=row.member("likelihood", Likelihood),
        inspection=row.member("inspection", Inspection),
        inspection_ref=row.text("inspection_ref"),
        drivability=row.whole("drivability", most=4),
        loss_per_month=row.number("loss_per_month"),
        damage_chance=row.number("damage_chance", most=1),
        damage_cost=row.number("damage_cost"),
        enjoyment=row.number("enjoyment", most=10),
        growth=row.number("growth", most=1),
        lamps=row.words("lamps"),
        hours=row.optional("hours", row.number),
        source=row.text("source"),
    )
