"""The smaller answers as JSON, schema version 1: money in minor units."""

from collections.abc import Sequence
from typing import Any

from partsplan.domain import Candidate, Comparison, FaultScores, Garage, Standing
from partsplan.reports.assumptions import assumed_line
from partsplan.reports.check_text import all_warnings, unquoted
from partsplan.reports.fault_tables import reasons
from partsplan.reports.garage_json import garage_data
from partsplan.reports.plain_data import dumped, head, plain, reason_data


def check_json(standing: Standing, *, rows: bool = False) -> str:
    """What was found in a garage and its logbook; maybe all its ``rows``, too."""
    garage = standing.garage
    whole = garage_data(garage)
    return dumped(
        {
            **(whole if rows else {**head(garage), "months": garage.months}),
            "found": {
                **{table: len(found) for table, found in whole["rows"].items()},
                "entries": len(standing.entries),
            },
            "without_option": list(unquoted(garage)),
            "assumed": [assumed_line(one) for one in garage.assumed],
            "warnings": list(all_warnings(standing)),
        }
    )


def faults_json(garage: Garage, ranking: Sequence[FaultScores]) -> str:
    """The faults in their order, with figures and reasons."""
    return dumped({**head(garage), "faults": [_fault(garage, one) for one in ranking]})


def comparison_json(garage: Garage, comparison: Comparison) -> str:
    """Every option of one fault, and the break-evens."""
    return dumped(
        {
            **head(garage),
            **options_data(garage, comparison),
            "break_evens": plain(comparison.break_evens),
        }
    )


def options_data(garage: Garage, comparison: Comparison) -> dict[str, Any]:
    """The options of a fault."""
    return {
        "fault": comparison.fault,
        "options": [_candidate(garage, one) for one in comparison.candidates],
    }


def _fault(garage: Garage, one: FaultScores) -> dict[str, Any]:
    fault = garage.fault[one.fault]
    relieved = garage.relieved(fault, one.month)
    return {
        "fault": one.fault,
        "title": fault.title,
        "vehicle": fault.vehicle,
        "status": fault.status.value,
        "safety": plain(one.safety.points),
        "drivability": plain(one.drivability.points),
        "waiting": plain(one.waiting.points),
        "enjoyment": plain(one.enjoyment.points),
        "points": plain(one.points.points),
        "loss_per_month": plain(one.loss),
        "do_not_drive": one.do_not_drive,
        "not_drivable": one.not_drivable,
        **({"relieved": plain(relieved)} if relieved else {}),
        "reasons": [reason_data(reason) for reason in reasons(one)],
    }


def _candidate(garage: Garage, one: Candidate) -> dict[str, Any]:
    option = one.option
    return {
        "option": option.id,
        "route": option.route.value,
        "supplier": option.supplier,
        "ordered": None if one.ordered is None else str(garage.month(one.ordered)),
        "fitted": None if one.fitted is None else str(garage.month(one.fitted)),
        **plain(one.price),
        "cash_now": one.cash_now,
        "cash_back": one.cash_back,
        "service_months": one.service,
        "cost_per_month": one.per_month,
        "hours": plain(option.hours),
        "coding_by": option.coding.value,
        "core_chance": plain(option.core_chance),
        "dud_chance": plain(option.dud_chance),
        "price_low": option.price_low,
        "price_high": option.price_high,
        "price_currency": option.currency,
        "lead_days": option.lead_days,
        "licensed_work": one.flagged,
        "barred": [reason_data(bar) for bar in one.bars],
        "assumed": [assumed_line(part) for part in one.assumed],
    }
