"""Where the logbook of a garage lies."""

from pathlib import Path

from partsplan.logbook.entries import FILE


def beside(garage: Path) -> Path:
    """In a garage's folder; or next to its workbook, NAME.logbook.sqlite."""
    return garage / FILE if garage.is_dir() else garage.with_suffix(f".{FILE}")
