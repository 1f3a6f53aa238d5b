"""Reads a garage and its logbook, and checks all of it."""

from pathlib import Path

from partsplan.domain import Standing


def check(folder: Path) -> Standing:
    """The garage in ``folder``, with what was assumed and what looks doubtful.

    With what its logbook says, whose flags tell what does not fit.

    Raises
    ------
    InvalidGarage
        With every problem at once.
    DamagedLogbook, LogbookUnavailable
    """
    from partsplan.usecases.where_it_stands import where_it_stands

    return where_it_stands(folder)
