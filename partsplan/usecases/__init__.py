"""What somebody can ask for, one verb a file; nothing here prints."""

from partsplan.usecases.check import check
from partsplan.usecases.compare import compare, fault_ids
from partsplan.usecases.faults import faults
from partsplan.usecases.kinds import kinds
from partsplan.usecases.plan import PlanAnswer, Progress, plan
from partsplan.usecases.start import start
from partsplan.usecases.words import words

__all__ = [
    "PlanAnswer",
    "Progress",
    "check",
    "compare",
    "fault_ids",
    "faults",
    "kinds",
    "plan",
    "start",
    "words",
]
