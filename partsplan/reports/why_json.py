"""The defence of a plan as JSON, schema version 1; money in minor units."""

from collections.abc import Sequence
from dataclasses import fields, is_dataclass
from typing import Any

from partsplan.domain import Garage, Moved, Plan, Reason, WhyChosen, WhyNot
from partsplan.reports.plain_data import dumped, head, plain, reason_data


def why_json(
    garage: Garage,
    plan: Plan,
    answers: Sequence[tuple[str, tuple[WhyChosen | WhyNot, ...]]],
) -> str:
    """Every answer with its figures."""
    return dumped(
        {
            **head(garage),
            "status": plan.status.value,
            "gap": plan.gap,
            "answers": [
                {"subject": subject, "why": [_data(garage, one) for one in defence]}
                for subject, defence in answers
            ],
        }
    )


def _data(garage: Garage, value: object) -> Any:
    """Facts as plain data; months as ``YYYY-MM``."""
    if isinstance(value, Reason):
        return reason_data(value)
    if isinstance(value, Moved):
        return {
            "option": value.option,
            "before": str(garage.month(value.before)),
            "after": str(garage.month(value.after)),
        }
    if isinstance(value, tuple):
        return [_data(garage, one) for one in value]
    if is_dataclass(value) and not isinstance(value, type):
        found = {
            one.name: _data(garage, getattr(value, one.name)) for one in fields(value)
        }
        if isinstance(value, WhyNot) and value.later is not None:
            found["later"] = str(garage.month(value.later))
        return found
    return plain(value)
