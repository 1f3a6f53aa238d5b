"""The garage from which a plan starts: as written, or after what its logbook says."""

from datetime import date
from pathlib import Path

from partsplan.domain import Garage, Ledger, Month, Standing
from partsplan.errors import InvalidRequest


def opening_garage(folder: Path, from_month: str | None = None) -> Garage:
    """The garage in ``folder`` as it stands in a month (``YYYY-MM``).

    Without one it is the month of the latest entry of the logbook; without a logbook
    it is the garage as it is written. A month ahead supposes that nothing else happens
    until then. No clock is asked: same files, same plan.

    Raises
    ------
    InvalidGarage, DamagedLogbook, LogbookUnavailable
    InvalidRequest
        If the month is none, lies before the garage's first, or before an entry.
    """
    from partsplan.usecases.where_it_stands import where_it_stands

    return opened(where_it_stands(folder), from_month)


def opened(stands: Standing, from_month: str | None) -> Garage:
    """The same for a garage that was read with its logbook.

    Raises
    ------
    InvalidRequest
    """
    from partsplan.ledger import next_garage

    garage, ledger = stands.garage, stands.ledger
    if from_month is None and ledger.last is None:
        return garage
    month = _month(garage, ledger, from_month)
    today = max(date(*month, 1), ledger.last or date.min)
    return next_garage(garage, ledger, month, today)


def _month(garage: Garage, ledger: Ledger, asked: str | None) -> Month:
    last = Month.of(ledger.last) if ledger.last else garage.start
    if asked is None:
        return max(garage.start, last)
    try:
        month = Month.parse(asked)
    except ValueError as error:
        raise InvalidRequest(f"--from: {error}") from error
    if month < garage.start:
        raise InvalidRequest(
            f"--from: expected the garage's first month, {garage.start}, or later, "
            f"got {month}"
        )
    if month < last:
        raise InvalidRequest(
            f"--from: expected {last} or later, since the logbook goes up to "
            f"{ledger.last}, got {month}"
        )
    return month
