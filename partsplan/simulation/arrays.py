"""Arrays over futures, and over futures and months."""

from typing import Any, TypeAlias

import numpy as np
from numpy.typing import NDArray

Counts: TypeAlias = NDArray[np.int64]
"""Whole numbers: money [minor units], months, duds."""
Flags: TypeAlias = NDArray[np.bool_]
Figures: TypeAlias = NDArray[np.float64]


def add(table: Counts, month: Counts | int, amount: Counts | int) -> None:
    """Add an amount in each future's month; what lies past the horizon is left out.

    ``table`` has a row a future and a column a month.
    """
    futures, months = table.shape
    at = np.broadcast_to(month, futures)
    row = np.flatnonzero(at < months)
    table[row, at[row]] += np.broadcast_to(amount, futures)[row]


def whole(figures: NDArray[Any]) -> Counts:
    """Rounded to whole numbers, half to even."""
    rounded: Counts = np.rint(figures).astype(np.int64)
    return rounded
