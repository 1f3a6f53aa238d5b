"""Keeps the plan of a garage on disk, and writes down what happened."""

from datetime import UTC, datetime
from pathlib import Path

from partsplan import reports, usecases
from partsplan.domain import Plan
from partsplan.logbook import FILE, append, keep_plan
from tests.support.small_logbook import happening

NOW = datetime(2027, 1, 2, 9, tzinfo=UTC)


def keep(folder: Path) -> Plan:
    """Plan a garage, and keep the text of the plan."""
    answer = usecases.plan(folder)
    plan = answer.plan
    assert isinstance(plan, Plan)
    text = reports.plan_json(answer.garage, plan, answer.skips, answer.shortfalls)
    keep_plan(folder / FILE, text, start=plan.start, now=NOW)
    return plan


def enter(folder: Path, *lines: str) -> None:
    """Write entries into the logbook, a line each."""
    append(folder / FILE, map(happening, lines), now=NOW)
