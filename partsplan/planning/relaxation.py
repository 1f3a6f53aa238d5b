"""The program without whole columns: a bound for every plan, and what rows are worth.

Only the columns that seem to pay are in it; the others are priced by what the rows are
worth and come in where they would pay after all. Block by block it is held to what
whole columns can reach: at the prices that rows outside a block have, no whole choice
within the block earns more than its best one, so neither may the relaxation. That is a
cut, and often one or two a block are enough (Fenchel cuts: E. A. Boyd, Operations
Research 42(1) 1994; from memory).
"""

from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from partsplan.planning.blocks import Block
from partsplan.planning.company import with_company
from partsplan.planning.goods_cuts import goods_cuts
from partsplan.planning.limits import ROUNDING
from partsplan.planning.matrix import Cut, Flags, Floats, Matrix, Places
from partsplan.planning.promising import Offers
from partsplan.planning.solver import (
    Basis,
    LinearRun,
    Tuning,
    solve_linear,
    solve_whole,
)
from partsplan.planning.solver.linear import AT_LOW, BASIC
from partsplan.planning.stopwatch import Stopwatch

WHOLE = 1e-6
"""A share this near to 0 or 1 counts as whole."""
LARGEST_BLOCK = 3000
"""Blocks with more columns are not solved exactly. [columns]"""
BLOCK_SECONDS = 5.0
BLOCK_GAP = 1e-5
WORTH_CUTTING = 1e-4
"""Least share of a block's earnings that a cut must take away."""
MOST_SIFTS = 6
PAYS = 0.5
"""Least margin for which a column is let in. [minor units]"""
OVERLOOKED = 1e-5
"""Share of the bound that columns left out may seem to add."""
SUMS = 1e-9
"""What sums of many floats may be off by. [fraction]"""


@dataclass
class Relaxation:
    """A program without whole columns, most of them left out.

    Attributes
    ----------
    matrix
        All rows, the cuts too.
    blocks
        Those that cuts may be had from.
    allowed, active
        The columns that may be in it, and those that are.
    prices
        What a unit of each common row's side is held to be worth; None where the
        linear program finds that itself.
    row_block
        The block of each row, -1 for those that tie blocks together.
    values, worths
        Of the last solution: a figure a column, and what a unit of each row's side
        would gain.
    bound
        No whole choice is worth more.
    """

    matrix: Matrix
    objective: Floats
    offers: Offers
    free_rows: dict[int, int]
    blocks: tuple[Block, ...]
    allowed: Flags
    active: Flags
    prices: Floats | None = None
    row_block: Places = field(init=False)
    values: Floats = field(init=False)
    worths: Floats = field(init=False)
    bound: float = field(init=False, default=np.inf)
    _columns: NDArray[np.int8] = field(init=False)
    _rows: NDArray[np.int8] | None = field(init=False, default=None)
    _new_aim: bool = field(init=False, default=False)

    def __post_init__(self) -> None:
        height, width = self.matrix.rows.shape
        self.row_block = np.full(height, -1)
        for number, block in enumerate(self.blocks):
            self.row_block[block.rows] = number
        self.values, self.worths = np.zeros(width), np.zeros(height)
        self._columns = np.full(width, AT_LOW, dtype=np.int8)

    def solve(self, watch: Stopwatch) -> LinearRun:
        """The best of the active columns, if that comes to an end in time."""
        columns = np.flatnonzero(self.active)
        objective, named = self.objective, np.diff(self.matrix.rows[:, columns].indptr)
        if self.prices is not None:
            objective = objective - self.matrix.rows[self.common].T @ self.prices
            named[self.common] = 0
        rows = np.flatnonzero(named)
        basis = None
        if self._rows is not None:
            basis = Basis(self._columns[columns], self._rows[rows])
        part = self.matrix.cut(rows, columns)
        run = solve_linear(
            part,
            objective[columns],
            seconds=watch.left,
            basis=basis,
            keeps_rows=self._new_aim,
        )
        watch.tell(run.seconds)
        if run.basis is None:
            return run
        self.values = np.zeros(len(objective))
        self.values[columns] = run.values
        self.worths = np.zeros(len(self.matrix.low))
        self.worths[rows] = run.worths
        if self.prices is not None:
            self.worths[self.common] = self.prices
        self._columns[columns] = run.basis.columns
        self._rows = np.full(len(self.matrix.low), BASIC, dtype=np.int8)
        self._rows[rows] = run.basis.rows
        self._new_aim = False
        self.bound = min(self.bound, self.priced_bound())
        return run

    @property
    def common(self) -> Places:
        """The rows in which all jobs meet."""
        return np.flatnonzero(self.matrix.common_rows)

    @property
    def basis(self) -> tuple[NDArray[np.int8], NDArray[np.int8] | None]:
        """Where the next solution begins: HiGHS's status of each column and row."""
        return self._columns, self._rows

    @basis.setter
    def basis(self, basis: tuple[NDArray[np.int8], NDArray[np.int8] | None]) -> None:
        self._columns, self._rows = basis[0].copy(), basis[1]
        self._fit_basis()

    def aim(self, objective: Floats) -> None:
        """Maximise something else from now on."""
        self.objective, self.bound = objective, np.inf
        self._new_aim = True

    def sift(self, watch: Stopwatch) -> LinearRun:
        """Solve, and let in what would pay after all, until little is overlooked."""
        for _ in range(MOST_SIFTS):
            run = self.solve(watch)
            if not run.solved:
                return run
            margins = self.margins()
            missing = (margins > PAYS) & self.allowed & ~self.active
            overlooked = float(margins[missing].sum())
            if overlooked <= OVERLOOKED * max(1.0, abs(self.bound)):
                return run
            self.admit(missing)
        return self.solve(watch)

    def margins(self) -> Floats:
        """What one more of each column would gain at these worths of the rows."""
        margins: Floats = self.objective - self.matrix.rows.T @ self.worths
        return margins

    def priced_bound(self) -> float:
        """A value that no whole choice exceeds, whatever the worths are.

        Each row is paid for at its worth, and each bundle earns what its best offer
        does beyond that. Rounded up a little for the sums of floats.
        """
        up, down = np.maximum(self.worths, 0), np.minimum(self.worths, 0)
        up[np.isinf(self.matrix.high)] = 0
        down[np.isinf(self.matrix.low)] = 0
        margins = self.objective - self.matrix.rows.T @ (up + down)
        offers, bundle = self.offers.are, self.offers.bundle
        best = np.zeros(int(bundle.max(initial=-1)) + 1)
        np.maximum.at(best, bundle[offers], margins[offers])
        others = np.maximum(margins[~offers], 0) @ self.matrix.upper[~offers]
        paid = up @ np.where(up > 0, self.matrix.high, 0)
        paid += down @ np.where(down < 0, self.matrix.low, 0)
        value = float(paid + best.sum() + others)
        return value + SUMS * max(1.0, abs(value))

    def admit(self, wanted: Flags) -> None:
        """Make columns active, with those that they cannot do without."""
        company = with_company(self.matrix, wanted, self.offers.are)
        self.active = self.active | (company & self.allowed)

    def tighten(self, watch: Stopwatch) -> int:
        """Add cuts that the last solution breaks; how many."""
        cuts = list(
            goods_cuts(self.matrix, self.free_rows, self.offers.bundle, self.values)
        )
        owners = [-1] * len(cuts)
        between = np.where(self.row_block < 0, self.worths, 0)
        prices = np.round(self.objective - self.matrix.rows.T @ between)
        uneven = np.abs(self.values - np.round(self.values)) > WHOLE
        for number, block in enumerate(self.blocks):
            if not watch.left:
                break
            if not (uneven & self.matrix.whole)[block.columns].any():
                continue
            cut = _block_cut(self.matrix, block, prices[block.columns], self.values)
            if cut is not None:
                cuts.append(cut)
                owners.append(number)
        self.add(cuts, owners)
        return len(cuts)

    def add(
        self,
        cuts: list[Cut],
        owners: list[int] | None = None,
        *,
        common: bool = False,
    ) -> None:
        """More rows; ``owners`` are their blocks."""
        self.matrix = self.matrix.below(cuts, common=common)
        self.row_block = np.append(self.row_block, owners or [-1] * len(cuts))
        self.worths = np.append(self.worths, np.zeros(len(cuts)))
        if common and self.prices is not None:
            self.prices = np.append(self.prices, np.zeros(len(cuts)))
        self._fit_basis()

    def _fit_basis(self) -> None:
        """Rows that came later begin in the basis."""
        if self._rows is not None:
            more = np.full(len(self.matrix.low) - len(self._rows), BASIC, dtype=np.int8)
            self._rows = np.append(self._rows, more)


def _block_cut(
    matrix: Matrix, block: Block, prices: Floats, values: Floats
) -> Cut | None:
    """No whole choice within the block earns more at these prices than its best."""
    if len(block.columns) > LARGEST_BLOCK or not len(block.rows):
        return None
    earned = float(prices @ values[block.columns])
    run = solve_whole(
        matrix.cut(block.rows, block.columns),
        prices,
        Tuning(seconds=BLOCK_SECONDS, gap=BLOCK_GAP),
    )
    if not np.isfinite(run.bound) or earned <= run.bound + WORTH_CUTTING * abs(earned):
        return None
    named = prices != 0
    return Cut(
        columns=block.columns[named],
        figures=prices[named],
        high=float(np.floor(run.bound + ROUNDING)),
    )
