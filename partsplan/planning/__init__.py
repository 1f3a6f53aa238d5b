"""Which offers to take, by a linear program whose answer is proven or bounded."""

from partsplan.planning.force import Force
from partsplan.planning.planner import Planner, must_be, plan, replan
from partsplan.planning.stages import Limits

__all__ = ["Force", "Limits", "Planner", "must_be", "plan", "replan"]
