"""A plan as JSON, schema version 1: money in minor units, months as ``YYYY-MM``."""

from collections.abc import Sequence
from typing import Any

from partsplan.domain import (
    Faithfulness,
    Garage,
    Job,
    LedgerLine,
    Needs,
    Plan,
    Shortfall,
    Skip,
    Stages,
)
from partsplan.reports.assumptions import assumed_line
from partsplan.reports.departures import faith_data
from partsplan.reports.plain_data import dumped, head, plain, reason_data
from partsplan.reports.plan_notes import shortfall_line
from partsplan.reports.suspicions import unchecked


def plan_json(
    garage: Garage,
    plan: Plan,
    skips: Sequence[Skip],
    shortfalls: Sequence[Shortfall] = (),
    faith: Faithfulness | None = None,
) -> str:
    """The whole plan for other programs; warnings tell what it misses, too.

    Only where a plan was kept before it is there a ``since_kept``.
    """
    return dumped(plan_data(garage, plan, skips, shortfalls, faith))


def plan_data(
    garage: Garage,
    plan: Plan,
    skips: Sequence[Skip],
    shortfalls: Sequence[Shortfall],
    faith: Faithfulness | None,
) -> dict[str, Any]:
    """The same as plain data."""
    return {
        **head(garage),
        "months": garage.months,
        "status": plan.status.value,
        "gap": plan.gap,
        "bound": plan.bound,
        "stages": stages_data(plan.stages),
        "stage_bounds": stages_data(plan.stage_bounds),
        "jobs": [job_data(garage, job) for job in plan.jobs],
        "tools": [
            {
                "tool": buy.tool,
                "month": str(garage.month(buy.month)),
                "price": buy.price,
            }
            for buy in plan.tools
        ],
        "orders": [
            {
                "supplier": order.supplier,
                "month": str(garage.month(order.month)),
                "goods": order.goods,
                "shipping": order.shipping,
            }
            for order in plan.orders
        ],
        "ledger": [ledger_data(garage, line) for line in plan.ledger],
        "skipped": [
            {"fault": skip.fault, "reason": reason_data(skip.reason)} for skip in skips
        ],
        "assumed": [assumed_line(one) for one in garage.assumed],
        "warnings": [
            *garage.warnings,
            *(shortfall_line(garage, one) for one in shortfalls),
            *unchecked(garage, plan),
        ],
        **({"since_kept": faith_data(garage, faith)} if faith else {}),
    }


def needs_json(garage: Garage, needs: Needs) -> str:
    """What it would take to make a plan possible."""
    return dumped(
        {
            **head(garage),
            "status": "infeasible",
            "needs": {"month": str(needs.month), "money": needs.money},
        }
    )


def stages_data(stages: Stages) -> dict[str, Any]:
    return {
        "missed_deadlines": stages.missed_deadlines,
        "unsafe_vehicle_months": stages.unsafe_vehicle_months,
        "undrivable_vehicle_months": stages.undrivable_vehicle_months,
        "net_worth": stages.net_worth,
    }


def job_data(garage: Garage, job: Job) -> dict[str, Any]:
    return {
        "option": job.option,
        "faults": list(job.faults),
        "route": job.route.value,
        "supplier": job.supplier,
        "ordered": str(garage.month(job.ordered)),
        "fitted": str(garage.month(job.fitted)),
        "landed": job.landed,
        "deposit": job.deposit,
        "charge": job.charge,
        "hours": plain(job.hours),
        **({"bought": True} if job.bought else {}),
    }


def ledger_data(garage: Garage, line: LedgerLine) -> dict[str, Any]:
    return {
        "month": str(garage.month(line.month)),
        "budget": line.budget,
        "out": line.out,
        "in": line.back,
        "balance": line.balance,
        "hours": plain(line.hours),
    }
