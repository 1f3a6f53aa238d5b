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
        If there is no plan to keep, or no folder to keep it in.
    """
    from partsplan.domain import Needs
    from partsplan.logbook import FILE, keep_plan
    from partsplan.reports import plan_json

    if isinstance(answer.plan, Needs):
        raise InvalidRequest("--keep: there is no plan to keep")
    if not folder.is_dir():
        raise InvalidRequest(f"--keep: expected a garage folder, got {folder}")
    text = plan_json(answer.garage, answer.plan, answer.skips, answer.shortfalls)
    return keep_plan(folder / FILE, text, start=answer.garage.start, now=now).number
