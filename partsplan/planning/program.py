"""A mixed-integer linear program in plain lists, with names for people."""

from collections.abc import Iterable
from dataclasses import dataclass, field

Terms = Iterable[tuple[int, float]]


@dataclass(frozen=True, slots=True)
class Column:
    """A variable from 0 to ``high``; whole if ``integer``.

    A ``common`` one is no job's own: an order's shipping, a tool, a balance.
    """

    name: str
    high: float | None
    integer: bool
    common: bool = False


@dataclass(frozen=True, slots=True)
class Row:
    """low <= sum of coefficient x column <= high; None leaves a side open.

    A ``common`` row is one in which all jobs meet: a month's money, or its hours.
    """

    name: str
    columns: tuple[int, ...]
    coefficients: tuple[float, ...]
    low: float | None
    high: float | None
    common: bool = False


@dataclass(slots=True)
class Program:
    """Columns and rows; the objective is given with each run."""

    columns: list[Column] = field(default_factory=list)
    rows: list[Row] = field(default_factory=list)

    def binary(self, name: str, *, common: bool = False) -> int:
        """A new yes-or-no column; returns its index."""
        self.columns.append(Column(name, 1.0, True, common))
        return len(self.columns) - 1

    def share(
        self, name: str, high: float | None = 1.0, *, common: bool = False
    ) -> int:
        """A new continuous column from 0 to ``high``; returns its index."""
        self.columns.append(Column(name, high, False, common))
        return len(self.columns) - 1

    def row(
        self,
        name: str,
        terms: Terms,
        *,
        low: float | None = None,
        high: float | None = None,
        common: bool = False,
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
        columns, coefficients = tuple(kept), tuple(kept.values())
        self.rows.append(Row(name, columns, coefficients, low, high, common))
