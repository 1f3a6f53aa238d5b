"""Three figures a fault, and what a month without it is worth."""

from partsplan.scoring.drivability import drivability, stops_driving
from partsplan.scoring.points import benefit, points, worth
from partsplan.scoring.ranking import ranking, scores
from partsplan.scoring.safety import forbids_driving, risk_level, safety
from partsplan.scoring.waiting import loss, waiting

__all__ = [
    "benefit",
    "drivability",
    "forbids_driving",
    "loss",
    "points",
    "ranking",
    "risk_level",
    "safety",
    "scores",
    "stops_driving",
    "waiting",
    "worth",
]
