"""Hands out all that a logbook holds, as text for other programs."""

from pathlib import Path


def export(folder: Path, *, as_csv: bool = False) -> str:
    """Entries and kept plans as JSON, from which ``restore`` makes the same logbook.

    Or the entries alone as a CSV table.

    Raises
    ------
    InvalidGarage
    DamagedLogbook, LogbookUnavailable
    """
    from partsplan import logbook
    from partsplan.intake import read_garage

    currency, path = read_garage(folder).currency, logbook.beside(folder)
    entries = logbook.read(path)
    if as_csv:
        return logbook.as_csv(entries, currency)
    return logbook.as_json(
        logbook.Export(
            currency=currency.code, entries=entries, plans=logbook.kept_plans(path)
        )
    )
