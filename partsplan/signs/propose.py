"""Faults that the signs of a text suggest, as rows that could be added."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from partsplan.catalogue import CodeOwner, Link
from partsplan.domain import (
    UNNAMED,
    Fault,
    FaultStatus,
    Garage,
    Proposal,
    Reading,
    Signs,
    System,
)
from partsplan.signs.groups import matches
from partsplan.signs.known import against_garage
from partsplan.signs.leads import Lead, gathered
from partsplan.signs.row_ids import row_id
from partsplan.signs.tables import SignTables


def propose(garage: Garage, vehicle: str, signs: Signs, tables: SignTables) -> Reading:
    """What the signs suggest for a vehicle, by system, brakes first.

    Signs that an open or watched fault of the vehicle has already suggest nothing new.
    """
    seen = against_garage(garage, vehicle, signs, tables)
    together = matches(signs, tables)
    taken = set(garage.fault)
    proposals = []
    for lead in gathered(seen.new, tables, together):
        fault = _fault(lead, vehicle, tables, taken)
        taken.add(fault.id)
        back = [name for one in lead.codes for name in seen.fixed.get(one.code, ())]
        proposals.append(
            Proposal(
                fault=fault,
                confidence=lead.confidence(tables),
                kinds=tuple(lead.kinds),
                cautious=_cautious(lead, tables),
                codes=tuple(lead.codes),
                units=tuple(lead.units),
                came_back=tuple(dict.fromkeys(back)),
            )
        )
    order = list(System)
    proposals.sort(key=lambda one: order.index(one.fault.system))
    return Reading(
        garage=garage,
        vehicle=vehicle,
        signs=signs,
        proposals=tuple(_linked(garage, vehicle, proposals, tables)),
        together=tuple(one.together for one in together),
        known=seen.known,
    )


def _fault(lead: Lead, vehicle: str, tables: SignTables, taken: set[str]) -> Fault:
    return Fault(
        id=row_id(lead, vehicle, taken),
        vehicle=vehicle,
        title=_title(lead, tables),
        kind=lead.kinds[0] if lead.kinds else "",
        system=_system(lead, tables),
        lamps=tuple(lead.lamps),
        codes=tuple(one.code for one in lead.codes),
    )


def _system(lead: Lead, tables: SignTables) -> System:
    """That of the kind; else of the lamp, or of the code's range if that is one."""
    if lead.kinds:
        return tables.kinds[lead.kinds[0]].system
    if lead.units:
        return System.ELECTRICS
    if lead.lamps:
        return tables.lamps[lead.lamps[0]].system
    systems = _cautious(lead, tables)
    return systems[0] if len(systems) == 1 else System.OTHER


def _cautious(lead: Lead, tables: SignTables) -> tuple[System, ...]:
    """Systems of every kind it may be, and of the ranges of codes without a kind."""
    of_kinds = [tables.kinds[kind].system for kind in lead.kinds]
    of_ranges = [
        system
        for one in lead.codes
        if not tables.kinds_of_code(one.code)
        for system in tables.range_of(one.code).systems
    ]
    return tuple(dict.fromkeys((*of_kinds, *of_ranges)))


def _title(lead: Lead, tables: SignTables) -> str:
    """What the signs say, never what may be behind them."""
    codes = ", ".join(one.code for one in lead.codes)
    if lead.codes and lead.codes[0].code in tables.codes:
        meaning = tables.codes[lead.codes[0].code].meaning
        return f"{meaning[0].upper()}{meaning[1:]} ({codes})"
    if lead.codes:
        return f"Code {codes}: {_range(lead.codes[0].code, tables)}"
    if lead.units:
        silent = lead.units[0]
        if silent == UNNAMED:
            return "A control unit does not answer"
        meaning = tables.codes[tables.silence(silent)].meaning
        return f"{meaning[0].upper()}{meaning[1:]}"
    names = " and ".join(f"{tables.lamps[lamp].name} lamp" for lamp in lead.lamps)
    return f"{names[0].upper()}{names[1:]} lit"


def _range(code: str, tables: SignTables) -> str:
    found = tables.range_of(code)
    owner = {
        CodeOwner.MAKER: "the maker's own",
        CodeOwner.RESERVED: "of a reserved range",
        CodeOwner.GENERIC: "generic, its meaning not known here",
    }
    return f"{owner[found.owner]}; {found.name}"


def _linked(
    garage: Garage, vehicle: str, proposals: Sequence[Proposal], tables: SignTables
) -> Iterator[Proposal]:
    """With what is usually mended together, or before, on the same vehicle."""
    there = [
        one
        for one in garage.faults
        if one.vehicle == vehicle and one.status is FaultStatus.OPEN
    ]
    new = [one.fault for one in proposals]
    kept = [one for one in garage.faults if one.vehicle == vehicle]
    for place, one in enumerate(proposals):
        fault = one.fault
        partners = _named(fault, [*there, *new[:place]], Link.PAIR, tables)
        before = _named(fault, [*there, *new], Link.AFTER, tables)
        akin = [
            other.id
            for other in kept
            if fault.kind
            and other.kind == fault.kind
            and other.status is not FaultStatus.FIXED
        ]
        yield replace(
            one,
            fault=replace(fault, pair_with=partners, after=before),
            akin=tuple(akin),
        )


def _named(
    fault: Fault, others: Sequence[Fault], link: Link, tables: SignTables
) -> tuple[str, ...]:
    kinds = {
        one.other for one in tables.links if _from(one.kind, one.link, fault, link)
    }
    if link is Link.PAIR:
        kinds |= {
            one.kind for one in tables.links if _from(one.other, one.link, fault, link)
        }
    return tuple(one.id for one in others if one.kind in kinds and one.id != fault.id)


def _from(kind: str, have: Link, fault: Fault, link: Link) -> bool:
    return bool(fault.kind) and kind == fault.kind and have is link
