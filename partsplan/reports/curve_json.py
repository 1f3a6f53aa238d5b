"""The budget curve as JSON, schema version 1: money in minor units."""

from typing import Any

from partsplan.domain import BudgetCurve, BudgetPoint, Garage, Needs, Stay
from partsplan.reports.plain_data import dumped, head, plain


def curve_json(garage: Garage, curve: BudgetCurve, usual: int | None = None) -> str:
    """Every sum that was tried and what it buys, and where each job stays."""
    told = {**head(garage), "months": garage.months}
    return dumped({**told, **curve_data(garage, curve, usual)})


def curve_data(garage: Garage, curve: BudgetCurve, usual: int | None) -> dict[str, Any]:
    """The same without what is told of the garage."""
    changes = set(curve.changes)
    return {
        "usual": usual,
        "resolution": curve.resolution,
        "finished": curve.finished,
        "interrupted": curve.interrupted,
        "points": [
            {**_point(point), "changes": point in changes} for point in curve.points
        ],
        "jobs": [
            {
                "option": option.id,
                "faults": [cure.fault for cure in option.fixes],
                "stays": [
                    _stay(stay) for stay in curve.stays if stay.option == option.id
                ],
            }
            for option in garage.options
            if any(stay.option == option.id for stay in curve.stays)
        ],
    }


def _point(point: BudgetPoint) -> dict[str, Any]:
    found = point.found
    if isinstance(found, Needs):
        return {
            "budget": point.budget,
            "status": "infeasible",
            "needs": plain(found),
        }
    return {
        "budget": point.budget,
        "status": "proven" if found.proven else "feasible",
        "gap": found.gap,
        "stages": plain(found.stages),
        "open_faults": list(found.open_faults),
        "jobs": list(found.jobs),
    }


def _stay(stay: Stay) -> dict[str, int | None]:
    return {
        "not_at": stay.below,
        "from": stay.first,
        "to": stay.last,
        "no_more_at": stay.above,
    }
