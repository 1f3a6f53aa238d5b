"""A whole garage as JSON: every setting and every row, blanks filled.

Sums are in minor units: those of quotes in the currency of their row, all others in the
garage's. ``data/garage.schema.json`` describes it.
"""

from dataclasses import fields
from typing import Any

from partsplan.domain import Garage
from partsplan.reports.plain_data import head, plain

TABLES = (
    "vehicles",
    "faults",
    "options",
    "suppliers",
    "access",
    "tools",
    "causes",
    "milestones",
)
SETTINGS = (
    "budget",
    "hours",
    "opening_cash",
    "carry_over",
    "reserve",
    "money_per_point",
    "hour_value",
    "tax_rate",
    "look_beyond",
    "core_trust",
    "allow_risky_routes",
    "discount_rate",
    "weights",
    "rates",
    "mean_temperature",
    "coding_tool",
    "priority",
)
FROM_LOGBOOK = frozenset({"bought", "fitted"})
"""Fields of rows that nobody writes into a table."""


def garage_data(garage: Garage) -> dict[str, Any]:
    """All that was written down, and what the catalogue filled in."""
    return {
        **head(garage),
        "months": garage.months,
        "settings": {name: plain(getattr(garage, name)) for name in SETTINGS},
        "rows": {
            table: [_row(fact) for fact in getattr(garage, table)] for table in TABLES
        },
    }


def _row(fact: Any) -> dict[str, Any]:
    names = (one.name for one in fields(fact))
    return {
        name: plain(getattr(fact, name)) for name in names if name not in FROM_LOGBOOK
    }
