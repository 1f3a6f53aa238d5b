"""Reads a garage and checks all of it."""

from pathlib import Path

from partsplan.domain import Garage


def check(folder: Path) -> Garage:
    """The garage in ``folder``, with what was assumed and what looks doubtful.

    Raises
    ------
    InvalidGarage
        With every problem at once.
    """
    from partsplan.intake import read_garage

    return read_garage(folder)
