"""Which offers to take, by a linear program whose answer is proven or bounded."""

from partsplan.planning.force import Force
from partsplan.planning.limits import Limits
from partsplan.planning.planner import Planner, must_be, plan, replan

__all__ = ["Force", "Limits", "Planner", "must_be", "plan", "replan"]
