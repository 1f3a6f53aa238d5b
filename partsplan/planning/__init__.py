"""Which offers to take, by a linear program whose answer is proven or bounded."""

from partsplan.planning.planner import plan

__all__ = ["plan"]
