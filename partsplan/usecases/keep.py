"""Keeps a plan that its owner means to follow."""

from datetime import datetime
from pathlib import Path

from partsplan.errors import InvalidRequest
from partsplan.usecases.plan import PlanAnswer


def keep(folder: Path, answer: PlanAnswer, *, now: datetime) -> int:
    """Write the plan into the logbook beside the garage; its number among kept plans.

    Raises
    ------
    DamagedLogbook, LogbookUnavailable
    InvalidRequest
        If there is no plan to keep, or no garage to keep it with.
    """
    from partsplan.domain import Needs
    from partsplan.logbook import beside, keep_plan
    from partsplan.reports import plan_json

    if isinstance(answer.plan, Needs):
        raise InvalidRequest("--keep: there is no plan to keep")
    if not folder.exists():
        raise InvalidRequest(f"--keep: expected a garage, got {folder}")
    text = plan_json(answer.garage, answer.plan, answer.skips, answer.shortfalls)
    return keep_plan(beside(folder), text, start=answer.garage.start, now=now).number
