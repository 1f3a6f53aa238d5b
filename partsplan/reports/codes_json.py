"""What a text of a scan tool comes to as JSON, schema version 1."""

from typing import Any

from partsplan.catalogue import code_range, kind_checks, trouble_codes
from partsplan.domain import FoundCode, Proposal, Reading
from partsplan.reports.codes_tables import forbidding
from partsplan.reports.plain_data import dumped, head, plain


def codes_json(
    reading: Reading, *, lost: tuple[str, ...] = (), appended: bool = False
) -> str:
    """Signs, proposed faults, what is seen together, what was known."""
    return dumped(
        {
            **head(reading.garage),
            "vehicle": reading.vehicle,
            "codes": [_code(one) for one in reading.signs.codes],
            "lamps": plain(reading.signs.lamps),
            "silent_units": plain(reading.signs.units),
            "proposed": [_proposal(one) for one in reading.proposals],
            "together": plain(reading.together),
            "known": [{"sign": sign, "fault": fault} for sign, fault in reading.known],
            "appended": appended,
            "columns_missing": plain(lost),
        }
    )


def _code(one: FoundCode) -> dict[str, Any]:
    found = code_range(one.code)
    known = trouble_codes().get(one.code)
    return {
        **plain(one),
        "meaning": known.meaning if known else None,
        "owner": plain(found.owner),
        "range": found.name,
    }


def _proposal(one: Proposal) -> dict[str, Any]:
    fault = one.fault
    return {
        "id": fault.id,
        "title": fault.title,
        "system": plain(fault.system),
        "confidence": plain(one.confidence),
        "kind": fault.kind or None,
        "may_be": plain(one.kinds),
        "do_not_drive_if": [kind.key for kind in forbidding(one)],
        "codes": plain(fault.codes),
        "lamps": plain(fault.lamps),
        "silent_units": plain(one.units),
        "pair_with": plain(fault.pair_with),
        "after": plain(fault.after),
        "akin": plain(one.akin),
        "came_back": plain(one.came_back),
        "checks": plain(kind_checks().get(fault.kind, ())),
    }
