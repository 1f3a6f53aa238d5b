"""Two plans side by side as JSON, schema version 1."""

from collections.abc import Sequence
from dataclasses import fields
from typing import Any

from partsplan.domain import (
    Change,
    Garage,
    Input,
    JobShift,
    Needs,
    Parking,
    Plan,
    PlanDifference,
    Skip,
    Stage,
    StageDifference,
    ToolBuy,
    TwoPlans,
    Why,
)
from partsplan.reports.change_words import change_words
from partsplan.reports.difference_text import in_one_sentence
from partsplan.reports.plain_data import dumped, head, plain, reason_data
from partsplan.reports.plan_json import job_data, ledger_data, stages_data


def whatif_json(changes: Sequence[Change], plans: TwoPlans) -> str:
    """What becomes of a plan with some changes."""
    return dumped(
        {
            **head(plans.garage),
            "changes": [_change(plans.garage, one) for one in changes],
            **_body(plans),
        }
    )


def beside_json(plans: TwoPlans) -> str:
    """Two garages' plans; the second's name and start stand beside the first's."""
    other = plans.other_garage
    return dumped(
        {
            **head(plans.garage),
            "other_garage": other.name,
            "other_start": str(other.start),
            **_body(plans),
        }
    )


def _body(plans: TwoPlans) -> dict[str, Any]:
    garage, other = plans.garage, plans.other_garage
    return {
        "before": _plan(garage, plans.plan),
        "after": _plan(other, plans.other_plan),
        "difference": None
        if plans.difference is None
        else _difference(plans, plans.difference),
        "why": None if plans.why is None else _why(garage, plans.why),
        "better_parked": {
            "before": [_parking(garage, one) for one in plans.parking],
            "after": [_parking(other, one) for one in plans.other_parking],
        },
        "spared_by_parking": [_parking(other, one) for one in plans.spared],
    }


def _plan(garage: Garage, plan: Plan | Needs | None) -> dict[str, Any]:
    if plan is None:
        return {"status": "infeasible", "needs": None}
    if isinstance(plan, Needs):
        needs = {"month": str(plan.month), "money": plan.money}
        return {"status": "infeasible", "needs": needs}
    return {
        "status": plan.status.value,
        "gap": plan.gap,
        "bound": plan.bound,
        "months": garage.months,
        "stages": stages_data(plan.stages),
        "stage_bounds": stages_data(plan.stage_bounds),
        "jobs": [job_data(garage, job) for job in plan.jobs],
    }


def _difference(plans: TwoPlans, difference: PlanDifference) -> dict[str, Any]:
    garage, other = plans.garage, plans.other_garage
    return {
        "sentence": in_one_sentence(garage.currency, difference),
        "leave": [job_data(garage, job) for job in difference.leave],
        "enter": [job_data(other, job) for job in difference.enter],
        "shifts": [_shift(plans, shift) for shift in difference.shifts],
        "tools_leave": [_tool(garage, buy) for buy in difference.tools_leave],
        "tools_enter": [_tool(other, buy) for buy in difference.tools_enter],
        "stages": [
            {**plain(one), "difference": _change_of(difference, one)}
            for one in difference.stages
        ],
        "money": [
            {
                "month": str(one.month),
                "before": one.before and ledger_data(garage, one.before),
                "after": one.after and ledger_data(other, one.after),
            }
            for one in difference.money
        ],
        "left_alone": [_skip(skip) for skip in difference.left],
        "no_longer_left_alone": [skip.fault for skip in difference.taken_up],
        "net_worths_comparable": not difference.otherwise_worth,
        "otherwise_worth": list(difference.otherwise_worth),
    }


def _change_of(difference: PlanDifference, one: StageDifference) -> int | None:
    """What the second plan has more; None where that says nothing."""
    comparable = one.stage is not Stage.WORTH or not difference.otherwise_worth
    return one.change if one.certain and comparable else None


def _shift(plans: TwoPlans, shift: JobShift) -> dict[str, Any]:
    return {
        "before": job_data(plans.garage, shift.before),
        "after": job_data(plans.other_garage, shift.after),
        "facts": [fact.value for fact in shift.facts],
    }


def _why(garage: Garage, why: Why) -> dict[str, Any]:
    return {
        "found": why.found.value,
        "parts": [
            plain(part) if isinstance(part, Input) else _change(garage, part)
            for part in why.parts
        ],
        "among": why.among,
        "tries": why.tries,
    }


def _change(garage: Garage, change: Change) -> dict[str, Any]:
    own = {one.name: plain(getattr(change, one.name)) for one in fields(change)}
    return {"change": change.code, "words": change_words(garage, change), **own}


def _parking(garage: Garage, one: Parking) -> dict[str, Any]:
    return {
        "vehicle": one.vehicle,
        "months": [str(garage.month(month)) for month in one.months],
        "until": None if one.until is None else str(one.until),
    }


def _tool(garage: Garage, buy: ToolBuy) -> dict[str, Any]:
    return {"tool": buy.tool, "month": str(garage.month(buy.month)), "price": buy.price}


def _skip(skip: Skip) -> dict[str, Any]:
    return {"fault": skip.fault, "reason": reason_data(skip.reason)}
