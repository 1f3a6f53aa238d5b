"""Begins a garage."""

from pathlib import Path

from partsplan.domain import Month


def start(folder: Path, first: Month) -> None:
    """Write a commented garage that begins in ``first`` into a new or empty folder.

    Raises
    ------
    InvalidRequest
        If there is anything in the folder.
    """
    from partsplan.intake import write_starter

    write_starter(folder, first)
