"""Why a plan is what it is."""

from partsplan.explanation.shortfalls import shortfalls
from partsplan.explanation.skips import skips

__all__ = ["shortfalls", "skips"]
