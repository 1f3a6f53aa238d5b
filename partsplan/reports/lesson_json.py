"""How good estimates were as JSON, schema version 1."""

from partsplan.domain import Garage, Lessons
from partsplan.reports.plain_data import dumped, head, plain


def lesson_json(garage: Garage, found: Lessons) -> str:
    """Delays in days, chances and ratios as numbers, norms with their cases."""
    return dumped(
        {
            **head(garage),
            "today": found.today.isoformat(),
            "fewest_cases": found.fewest,
            "lessons": plain(found.lessons),
            "norms": plain(found.norms),
        }
    )
