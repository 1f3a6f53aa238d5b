"""What rivals look for, stage by stage, in the words of the model."""

from dataclasses import dataclass

from partsplan.domain import Stage
from partsplan.planning.model import Model

COUNT_GAP = 0.99
"""Counts are whole, so a bound closer than one proves them: every rival may stop there.
"""
PROVEN = "proven"
OUT_OF_TIME = "out of time"


@dataclass(frozen=True, slots=True, kw_only=True)
class Goal:
    """The figure of a stage: terms and a constant, to be as high or as low as can be.

    Attributes
    ----------
    terms
        As (column, coefficient); the coefficients are whole.
    """

    stage: Stage
    terms: tuple[tuple[int, float], ...]
    constant: int
    highest: bool


def goal(model: Model, stage: Stage) -> Goal:
    """Net worth is to be high, counts of unmet demands are to be low."""
    if stage is Stage.WORTH:
        return Goal(stage=stage, terms=model.worth, constant=0, highest=True)
    return Goal(
        stage=stage,
        terms=tuple((column, 1.0) for column in model.unmet_of(stage)),
        constant=model.hopeless_of(stage),
        highest=False,
    )
