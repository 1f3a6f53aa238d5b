"""Checks a plan from the garage and the choices alone, without the model."""

from partsplan.verification.facts import Facts
from partsplan.verification.verify import broken_rules, violations
from partsplan.verification.violation import Violation

__all__ = ["Facts", "Violation", "broken_rules", "violations"]
