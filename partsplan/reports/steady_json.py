"""How steady the next purchases are, as JSON, schema version 1."""

from typing import Any

from partsplan.domain import End, Garage, Sensitivity
from partsplan.reports.plain_data import dumped, head, plain


def steady_json(garage: Garage, found: Sensitivity) -> str:
    """The ranges of the settings; money in minor units, weights as they are."""
    return dumped(
        {
            **head(garage),
            "purchases": list(found.purchases),
            "plans": found.plans,
            "proven": found.proven,
            "interrupted": found.interrupted,
            "settings": [
                {
                    "setting": one.setting.value,
                    "now": plain(one.now),
                    "step": plain(one.step),
                    "low": _end(one.low),
                    "high": _end(one.high),
                }
                for one in found.ranges
            ],
        }
    )


def _end(end: End) -> dict[str, Any]:
    return {
        "holds": plain(end.holds),
        "breaks": plain(end.breaks),
        "adds": list(end.adds),
        "drops": list(end.drops),
        "possible": end.possible,
    }
