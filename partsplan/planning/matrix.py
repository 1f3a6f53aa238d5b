"""A program as arrays, for work on many columns at once."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

import numpy as np
import numpy.typing as npt
from scipy import sparse

from partsplan.planning.program import Program, Terms

Floats = npt.NDArray[np.float64]
Places = npt.NDArray[np.intp]
Flags = npt.NDArray[np.bool_]


@dataclass(frozen=True)
class Cut:
    """A row that every plan keeps: figures @ columns <= high."""

    columns: Places
    figures: Floats
    high: float


def at_most(terms: Terms, high: float) -> Cut:
    """Terms that stay at or below a figure."""
    listed = list(terms)
    return Cut(
        columns=np.array([column for column, _ in listed], dtype=np.int64),
        figures=np.array([value for _, value in listed], dtype=float),
        high=high,
    )


@dataclass(frozen=True)
class Matrix:
    """low <= rows @ columns <= high, and columns from 0 to ``upper``.

    Attributes
    ----------
    rows
        Shape: rows x columns.
    low, high
        One figure a row; infinite where a side is open.
    upper
        One figure a column.
    whole
        The columns that must be whole.
    common_rows, common_columns
        Where all jobs meet, see ``Row`` and ``Column``.
    """

    rows: sparse.csr_array
    low: Floats
    high: Floats
    upper: Floats
    whole: Flags
    common_rows: Flags
    common_columns: Flags

    @classmethod
    def of(cls, program: Program) -> "Matrix":
        """The same program."""
        rows, columns = program.rows, program.columns
        lengths = np.fromiter((len(row.columns) for row in rows), np.int64, len(rows))
        starts = np.concatenate(([0], np.cumsum(lengths)))
        inf = np.inf
        return cls(
            rows=sparse.csr_array(
                (
                    np.fromiter((c for r in rows for c in r.coefficients), float),
                    np.fromiter((c for r in rows for c in r.columns), np.int32),
                    starts,
                ),
                shape=(len(rows), len(columns)),
            ),
            low=np.array([-inf if row.low is None else row.low for row in rows]),
            high=np.array([inf if row.high is None else row.high for row in rows]),
            upper=np.array([inf if one.high is None else one.high for one in columns]),
            whole=np.array([one.integer for one in columns], dtype=bool),
            common_rows=np.array([row.common for row in rows], dtype=bool),
            common_columns=np.array([one.common for one in columns], dtype=bool),
        )

    def dense(self, terms: Terms) -> Floats:
        """Terms as one figure a column."""
        figures = np.zeros(self.rows.shape[1])
        for column, value in terms:
            figures[column] += value
        return figures

    def below(self, cuts: Iterable["Cut"], *, common: bool = False) -> "Matrix":
        """The same with more rows, common ones or not."""
        added = list(cuts)
        if not added:
            return self
        lengths = [len(cut.columns) for cut in added]
        rows = sparse.csr_array(
            (
                np.concatenate([cut.figures for cut in added]),
                np.concatenate([cut.columns for cut in added]),
                np.concatenate(([0], np.cumsum(lengths))),
            ),
            shape=(len(added), self.rows.shape[1]),
        )
        return replace(
            self,
            rows=sparse.vstack([self.rows, rows], format="csr"),
            low=np.append(self.low, np.full(len(added), -np.inf)),
            high=np.append(self.high, [cut.high for cut in added]),
            common_rows=np.append(self.common_rows, np.full(len(added), common)),
        )

    def cut(self, rows: Places, columns: Places) -> "Matrix":
        """These rows and columns only; the other columns stand at 0."""
        return replace(
            self,
            rows=self.rows[rows][:, columns],
            low=self.low[rows],
            high=self.high[rows],
            upper=self.upper[columns],
            whole=self.whole[columns],
            common_rows=self.common_rows[rows],
            common_columns=self.common_columns[columns],
        )

    def beside(self, figures: Floats, columns: Places) -> "Matrix":
        """These columns only, with what the others leave them at these figures."""
        others = figures.copy()
        others[columns] = 0
        spent = self.rows @ others
        rows = np.flatnonzero(np.diff(self.rows[:, columns].indptr))
        kept = self.cut(rows, columns)
        return replace(kept, low=kept.low - spent[rows], high=kept.high - spent[rows])
