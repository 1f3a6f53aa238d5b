"""Ranks the faults of a garage."""

from pathlib import Path

from partsplan.domain import FaultScores, Garage


def faults(folder: Path) -> tuple[Garage, tuple[FaultScores, ...]]:
    """The open and watched faults of its first month, the most urgent first.

    Raises
    ------
    InvalidGarage
    """
    from partsplan.scoring import ranking
    from partsplan.usecases.opening import opening_garage

    garage = opening_garage(folder)
    return garage, ranking(garage)
