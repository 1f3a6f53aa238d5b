"""What to check before buying as JSON, schema version 1: money in minor units."""

from collections.abc import Sequence
from typing import Any

from partsplan.domain import CheckStep, Diagnosis, Garage, Lamp, SharedCause
from partsplan.reports.plain_data import dumped, head, plain


def diagnosis_json(
    garage: Garage,
    diagnoses: Sequence[Diagnosis],
    shared: Sequence[SharedCause],
    lamps: Sequence[Lamp],
) -> str:
    """The orders with their expected costs, shared causes and lamps."""
    return dumped(
        {
            **head(garage),
            "faults": [_diagnosis(garage, one) for one in diagnoses],
            "shared_causes": plain(shared),
            "lamps": [
                {"vehicle": one.vehicle, "lamp": one.name, "lit_by": plain(one.lit_by)}
                for one in lamps
            ],
        }
    )


def _diagnosis(garage: Garage, one: Diagnosis) -> dict[str, Any]:
    fault = garage.fault[one.fault]
    return {
        "fault": fault.id,
        "title": fault.title,
        "vehicle": fault.vehicle,
        "steps": [_step(step) for step in one.steps],
        "ruled_out": plain(one.ruled_out),
        "something_else": plain(one.something_else),
        "expected_checks": one.checks,
        "expected_cost": one.expected,
        "expected_cost_at_once": one.at_once,
        "trials": [
            {
                "causes": plain(trial.causes),
                "cure": trial.cure,
                "cost": round(trial.cost),
            }
            for trial in one.trials
        ],
        "expected_on_suspicion": one.on_suspicion,
        "saving": one.saving,
        "several_at_work": {
            "order": plain(one.several),
            "expected_checks": one.first_find,
        },
    }


def _step(step: CheckStep) -> dict[str, Any]:
    return {
        "cause": step.cause.cause,
        "chance": plain(step.cause.chance),
        "chance_at_its_turn": plain(step.chance),
        "checked": step.checked,
        "check_cost": round(step.check),
        "check_hours": plain(step.cause.check_hours),
        "cure": step.cause.cure,
        "cure_cost": step.cure_cost,
        "sure_enough": plain(step.sure_enough),
        "skips_check": step.skips_check,
        "barred": plain(step.bars),
    }
