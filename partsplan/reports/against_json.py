"""A kept plan against life as JSON: money in minor units, months as ``YYYY-MM``."""

from typing import Any

from partsplan.domain import Garage, JobAgainst, JobDone, MonthAgainst, PlanAgainst
from partsplan.reports.plain_data import dumped, head, plain


def against_json(garage: Garage, found: PlanAgainst) -> str:
    """Each job and month as planned and as it was, with the differences."""
    plan = found.plan
    return dumped(
        {
            **head(garage),
            "plan": plan.number,
            "kept": plan.kept.isoformat(),
            "plan_start": str(plan.start),
            "plan_end": str(plan.end),
            "today": found.today.isoformat(),
            "jobs": [_job(one) for one in found.jobs],
            "not_planned": [_done(one) for one in found.unplanned],
            "months": [_month(one) for one in found.months],
            "so_far": {
                "planned_out": found.planned_out,
                "spent": found.spent,
                "planned_hours": plain(found.planned_hours),
                "hours": plain(found.hours),
            },
        }
    )


def _job(one: JobAgainst) -> dict[str, Any]:
    return {
        "planned": plain(one.planned),
        "done": _done(one.done) if one.done else None,
        "late_months": one.late,
        "more_money": one.more_money,
        "more_hours": plain(one.more_hours),
        "instead": plain(one.instead),
    }


def _done(one: JobDone) -> dict[str, Any]:
    return {
        **plain(one),
        "ordered": one.ordered.isoformat(),
        "fitted": one.fitted.isoformat() if one.fitted else None,
    }


def _month(one: MonthAgainst) -> dict[str, Any]:
    planned = one.planned
    return {
        "month": str(planned.month),
        "begun": one.begun,
        "planned_out": planned.out,
        "spent": one.spent,
        "planned_in": planned.back,
        "received": one.received,
        "planned_hours": plain(planned.hours),
        "hours": plain(one.hours),
    }
