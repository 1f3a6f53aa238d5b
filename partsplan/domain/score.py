"""Scores of a fault, each with its reasons."""

from dataclasses import dataclass
from fractions import Fraction

from partsplan.domain.reasons import Reason


@dataclass(frozen=True, slots=True)
class Score:
    """A figure and why it is what it is. [0-100]"""

    points: Fraction
    reasons: tuple[Reason, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class FaultScores:
    """The figures of one fault in one month.

    Attributes
    ----------
    waiting
        The cost of waiting as a share of the mean monthly budget, capped. [0-100]
    loss
        The cost of waiting. [minor units a month]
    points
        Weighted scores, or the owner's own figure, grown. [0-100]
    worth
        Worth of that month without the fault. [minor units]
    do_not_drive
        Uncured, the vehicle must not be driven in that month.
    not_drivable
        Uncured, the vehicle cannot be driven in that month.
    """

    fault: str
    month: int
    safety: Score
    drivability: Score
    waiting: Score
    enjoyment: Score
    loss: Fraction
    points: Score
    worth: Fraction
    do_not_drive: bool
    not_drivable: bool
