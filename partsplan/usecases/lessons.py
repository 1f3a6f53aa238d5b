"""Learns from the logbook how good the quotes were."""

from datetime import date
from pathlib import Path

from partsplan.domain import Garage, Lessons
from partsplan.usecases.where_it_stands import where_it_stands


def lessons(folder: Path, *, today: date) -> tuple[Garage, Lessons]:
    """Delays, bad parts, prices and hours against the quotes of a garage.

    Raises
    ------
    InvalidGarage, DamagedLogbook, LogbookUnavailable
    """
    from partsplan.ledger import lessons as learned

    stands = where_it_stands(folder)
    learnt = learned(stands.garage, stands.quotes, stands.ledger, today)
    return stands.garage, learnt
