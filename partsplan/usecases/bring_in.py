"""Takes over what was spent before there was a logbook."""

from collections.abc import Iterator, Mapping
from datetime import date, datetime
from pathlib import Path

from partsplan.domain import BroughtIn, Happening
from partsplan.errors import InvalidSpending, Problem


def bring_in(
    folder: Path,
    spending: Path,
    columns: Mapping[str, str],
    *,
    day_format: str = "",
    decimal_comma: bool = False,
    today: date,
    now: datetime,
) -> BroughtIn:
    """Write the rows of a CSV file into a garage's logbook, all or none.

    ``columns`` names the table's column for each thing told, such as ``day``;
    ``day_format`` is one of ``strptime``.

    Raises
    ------
    InvalidGarage
    InvalidSpending
        With everything that is wrong in the table.
    InvalidRequest
        If the columns or the format of days make no sense.
    DamagedLogbook, LogbookUnavailable
    """
    from partsplan import logbook
    from partsplan.intake import read_garage
    from partsplan.ledger import form_objections

    garage = read_garage(folder)

    def objections(what: Happening) -> Iterator[str]:
        return (one.message for one in form_objections(garage, what, today))

    rows = logbook.read_spending(
        spending,
        columns,
        garage.currency,
        day_format=day_format,
        decimal_comma=decimal_comma,
        objections=objections,
    )
    if not rows:
        message = "expected rows below the header, got none"
        raise InvalidSpending([Problem(spending.name, 0, "", message)])
    entries = logbook.append(logbook.beside(folder), rows, now=now, as_batch=True)
    return BroughtIn(garage=garage, batch=entries[0].what.batch, entries=entries)
