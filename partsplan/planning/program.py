"""A mixed-integer linear program in plain lists, with names for people."""

from collections.abc import Iterable
from dataclasses import dataclass, field

Terms = Iterable[tuple[int, float]]


@dataclass(frozen=True, slots=True)
class Column:
    """A variable from 0 to ``high``; whole if ``integer``."""

    name: str
    high: float | None
    integer: bool


@dataclass(frozen=True, slots=True)
class Row:
    """low <= sum of coefficient x column <= high; None leaves a side open."""

    name: str
    columns: tuple[int, ...]
    coefficients: tuple[float, ...]
    low: float | None
    high: float | None


@dataclass(slots=True)
class Program:
    """Columns and rows; the objective is given with each run."""

    columns: list[Column] = field(default_factory=list)
    rows: list[Row] = field(default_factory=list)

    def binary(self, name: str) -> int:
        """A new yes-or-no column; returns its index."""
        self.columns.append(Column(name, 1.0, True))
        return len(self.columns) - 1

    def share(self, name: str, high: float | None = 1.0) -> int:
        """A new continuous column from 0 to ``high``; returns its index."""
        self.columns.append(Column(name, high, False))
        return len(self.columns) - 1

    def row(
        self,
        name: str,
        terms: Terms,
        *,
        low: float | None = None,
        high: float | None = None,
    ) -> None:
        """A new row; terms of the same column are summed, zeros are dropped."""
        listed = list(terms)
        kept = dict(listed)
        if len(kept) < len(listed):
            kept = dict.fromkeys(kept, 0.0)
            for column, coefficient in listed:
                kept[column] += coefficient
        if not all(kept.values()):
            kept = {column: value for column, value in kept.items() if value}
        self.rows.append(Row(name, tuple(kept), tuple(kept.values()), low, high))
