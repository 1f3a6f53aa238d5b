"""Learns from the logbook how good the quotes were."""

from datetime import date
from pathlib import Path

from partsplan.domain import Garage, Lessons
from partsplan.usecases.logged import logged, quotes


def lessons(folder: Path, *, today: date) -> tuple[Garage, Lessons]:
    """Delays, bad parts, prices and hours against the quotes of a garage.

    Raises
    ------
    InvalidGarage, DamagedLogbook, LogbookUnavailable
    """
    from partsplan.intake import read_garage
    from partsplan.ledger import lessons as learned

    garage = read_garage(folder)
    return garage, learned(garage, quotes(garage), logged(folder, garage), today)
