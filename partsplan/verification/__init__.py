"""Checks a plan from the garage and the choices alone, without the model."""

from partsplan.verification.verify import broken_rules, cured, violations
from partsplan.verification.violation import Violation

__all__ = ["Violation", "broken_rules", "cured", "violations"]
