"""Ranks the faults of a garage."""

from pathlib import Path

from partsplan.domain import FaultScores, Garage


def faults(folder: Path) -> tuple[Garage, tuple[FaultScores, ...]]:
    """The open and watched faults of its first month, the most urgent first.

    Raises
    ------
    InvalidGarage
    """
    from partsplan.intake import read_garage
    from partsplan.scoring import ranking

    garage = read_garage(folder)
    return garage, ranking(garage)
