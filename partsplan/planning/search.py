"""Where a search for a wide program stands, and the steps that all of it takes."""

from collections.abc import Iterator
from math import inf

import numpy as np

from partsplan.domain import Stage
from partsplan.planning import decode
from partsplan.planning.aside import Aside
from partsplan.planning.blocks import blocks
from partsplan.planning.covers import cover
from partsplan.planning.demands import Demand
from partsplan.planning.force import Held
from partsplan.planning.interrupts import Interrupts
from partsplan.planning.limits import LOOSE, ROUNDING, Limits, Optimum, Progress
from partsplan.planning.matrix import Cut, Floats, Matrix, Places, at_most
from partsplan.planning.model import Model
from partsplan.planning.parts import solve_part
from partsplan.planning.promising import Offers
from partsplan.planning.relaxation import Relaxation
from partsplan.planning.solver import SolverRun, Tuning, solve_whole
from partsplan.planning.stopwatch import Stopwatch

PENALTY = 5.0
"""An unmet demand weighs so many times as much as the dearest column, and as much again
for each stage that comes later."""


class Search:
    """The best plan so far, its bound, and the relaxation that both come from.

    Attributes
    ----------
    figures, value, bound
        Of the best plan: a figure a column and the objective; no plan has a higher one.
    stage
        What is optimised at the moment.
    aside
        A search of the whole program in another thread, if there is one.
    """

    def __init__(
        self,
        model: Model,
        demands: tuple[Demand, ...],
        found: Optimum,
        limits: Limits,
        rows: tuple[Held, ...],
        interrupts: Interrupts,
        progress: Progress | None,
    ) -> None:
        self.model = model
        self.demands = demands
        self.found = found
        self.limits = limits
        self.interrupts = interrupts
        self.progress = progress
        self.watch = Stopwatch(limits.seconds, limits.clock)
        self.stage = model.garage.priority[0]
        matrix = Matrix.of(model.program).below(_cuts(rows), common=True)
        self._height = len(matrix.low)
        self.worth = matrix.dense(model.worth)
        self.relaxation = Relaxation(
            matrix=matrix,
            objective=self._penalised(),
            offers=_offers(model, matrix),
            free_rows=model.free_rows,
            blocks=blocks(matrix),
            allowed=np.ones(len(self.worth), dtype=bool),
            active=np.zeros(len(self.worth), dtype=bool),
        )
        self.figures: Floats | None = None
        self.value, self.bound = -inf, inf
        self.aside: Aside | None = None

    @property
    def matrix(self) -> Matrix:
        """All rows, cuts too."""
        return self.relaxation.matrix

    def uncut(self) -> Matrix:
        """The rows without cuts, which slow a search of the whole program down."""
        rows = np.arange(len(self.matrix.low))
        kept = (rows < self._height) | self.matrix.common_rows
        return self.matrix.cut(np.flatnonzero(kept), np.arange(self.width))

    @property
    def objective(self) -> Floats:
        """What is maximised at the moment."""
        return self.relaxation.objective

    @property
    def width(self) -> int:
        """[columns]"""
        return len(self.worth)

    @property
    def stopped(self) -> bool:
        """Whether somebody stopped the search."""
        self.found.interrupted |= self.interrupts.asked
        return self.found.interrupted

    @property
    def going_on(self) -> bool:
        """Whether there is time and reason to."""
        gap = (self.bound - self.value) / max(1.0, abs(self.value))
        return self.watch.left > 0 and gap > self.limits.gap and not self.stopped

    def _penalised(self) -> Floats:
        """Net worth less a penalty for each unmet demand, dearer for earlier stages."""
        objective = self.worth.copy()
        penalty = PENALTY * max(1.0, float(np.abs(self.worth).max(initial=0)))
        for stage in reversed(self.model.garage.priority[:-1]):
            objective[self.model.unmet_of(stage)] -= penalty
            penalty *= PENALTY
        return objective

    def aim(self, objective: Floats) -> None:
        """Maximise something else from now on."""
        self.relaxation.aim(objective)
        self.bound = inf
        if self.figures is not None:
            self.value = float(objective @ self.figures)

    def take(self, figures: Floats | None) -> bool:
        """Whether these are the best so far, and no month overspends by a tolerance."""
        if figures is None:
            return False
        value = float(self.objective @ figures)
        if value <= self.value + ROUNDING:
            return False
        ones = self.ones(figures)
        if cover(self.model, ones, decode.ledger_of(self.model, ones)):
            return False
        self.figures, self.value = figures, value
        self.tell()
        return True

    def tell(self) -> None:
        """Tell how far the search is."""
        if self.progress is None or self.figures is None:
            return
        best, bound = self.value, self.bound
        if self.stage is not Stage.WORTH:
            hopeless = self.model.hopeless_of(self.stage)
            columns = self.model.unmet_of(self.stage)
            best, bound = hopeless + float(self.figures[columns].sum()), hopeless
        try:
            self.progress(self.stage.value, self.watch.passed, best, bound)
        except KeyboardInterrupt:
            self.found.interrupted = True

    def heard(self, *_: float | None) -> None:
        """Watch a run: tell how far the search is, and stop it if somebody asks."""
        if self.aside is not None:
            self.bound = min(self.bound, self.aside.bound)
            if self.aside.newest is not None:
                self.take(self.rounded(self.aside.newest))
        self.tell()
        if self.stopped:
            raise KeyboardInterrupt

    def solve(self, columns: Places, seconds: float, *, begun: bool) -> SolverRun:
        """Solve these columns beside the best plan, or beside the relaxation."""
        tuning = Tuning(
            seconds=min(seconds, self.watch.left),
            gap=self.limits.gap,
            threads=1,
            tolerance=LOOSE,
        )
        around = np.round(self.relaxation.values)
        if begun and self.figures is not None:
            around = self.figures
        figures, run = solve_part(
            self.matrix,
            self.objective,
            around,
            columns,
            tuning,
            begun=begun,
            heard=self._heard_part,
        )
        self.watch.tell(run.seconds)
        self.take(figures)
        return run

    def _heard_part(self, figures: Floats | None) -> None:
        self.take(figures)
        self.heard()

    def search_whole(self, seconds: float, *, absolute_gap: float = 0.0) -> SolverRun:
        """Search the whole program from the best plan on; its bound counts."""
        counts = absolute_gap > 0
        start = frozenset(() if self.figures is None else self.ones(self.figures))

        def watch(_: float, best: float | None, bound: float | None) -> None:
            if bound is not None:
                self.bound = min(self.bound, bound)
            if best is not None and not counts:
                self.value = max(self.value, best)
            self.heard()

        run = solve_whole(
            self.uncut(),
            self.objective,
            Tuning(
                seconds=min(seconds, self.watch.left) if self.going_on else 0.0,
                gap=0.0 if counts else self.limits.gap,
                absolute_gap=absolute_gap,
                tolerance=LOOSE,
                careful=True,
            ),
            start=start,
            watch=watch,
        )
        self.watch.tell(run.seconds)
        self.bound = min(self.bound, run.bound)
        if self.figures is not None:
            self.value = float(self.objective @ self.figures)
        if run.values:
            self.take(self.rounded(np.array(run.values)))
        return run

    def rounded(self, figures: Floats) -> Floats:
        """The same with whole columns that are whole to the last bit."""
        return np.where(self.matrix.whole, np.round(figures), figures)

    def reached(self, stage: Stage) -> int:
        """What the best plan reaches for a stage."""
        if self.figures is None:
            raise AssertionError("no plan yet")
        ones = self.ones(self.figures)
        chosen, choices = decode.decode(self.model, ones)
        return decode.stages(self.model.garage, chosen, choices, self.demands).of(stage)

    def ones(self, figures: Floats) -> tuple[int, ...]:
        """The whole columns at 1."""
        return tuple(np.flatnonzero(self.matrix.whole & (figures > 0.5)).tolist())


def _cuts(rows: tuple[Held, ...]) -> Iterator[Cut]:
    """Rows with one side each."""
    for terms, low, high in rows:
        if high is not None:
            yield at_most(terms, high)
        if low is not None:
            yield at_most(((column, -value) for column, value in terms), -low)


def _offers(model: Model, matrix: Matrix) -> Offers:
    width = matrix.rows.shape[1]
    bundle, fitted = np.full(width, -1), np.full(width, -1)
    for number, columns in enumerate(model.bundles):
        bundle[list(columns)] = number
    fitted[list(model.take)] = [offer.fitted for offer in model.offers]
    unmet = np.zeros(width)
    unmet[list(model.unmet.values())] = 1
    named = abs(matrix.rows[np.flatnonzero(~matrix.common_rows)])
    wanted = named.T @ (named @ unmet > 0).astype(float) > 0
    return Offers(
        bundle=bundle,
        fitted=fitted,
        wanted=wanted & (bundle >= 0),
        goods_rows=np.array(list(model.free_rows.values()), dtype=int),
    )
