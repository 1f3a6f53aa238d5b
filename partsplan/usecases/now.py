"""Tells where things stand on a day, and what is to be done."""

from datetime import date
from pathlib import Path

from partsplan.domain import Month, Now, Standing


def now(folder: Path, today: date) -> Now:
    """Where the garage in ``folder`` stands after all that its logbook says.

    Raises
    ------
    InvalidGarage
    DamagedLogbook, LogbookUnavailable
    """
    from partsplan.usecases.where_it_stands import where_it_stands

    return on_day(where_it_stands(folder), today)


def on_day(standing: Standing, today: date) -> Now:
    """What a day makes of where things stand."""
    from partsplan.ledger import duties, money_now, owed
    from partsplan.scoring import forbids_driving

    garage, ledger, month = standing.garage, standing.ledger, Month.of(today)
    forbidden = {fault.id for fault in garage.faults if forbids_driving(fault)}
    begun = garage.index(month) >= 0
    return Now(
        standing=standing,
        today=today,
        duties=duties(garage, ledger, today, forbidden),
        money=money_now(garage, ledger, month, today) if begun else None,
        dues=owed(ledger, today),
    )
