"""Plans for programs that are too wide to be solved at once.

1. The relaxation (``relaxation``) is solved with a penalty on every unmet demand, so
   high that no money outweighs it, and tightened by cuts.
2. The columns that it is sure about are held where they are, and the rest is solved
   with whole columns (``rounding``). That gives the first plan.
3. What this plan reaches for each counted stage is held, and the penalties go.
4. The relaxation of net worth gives the bound. The best plan gets better by solving
   parts of it again while the rest stands still (``neighbours``), and by wider and
   wider roundings.
5. A program that is not too wide is searched whole, too, which lowers the bound.

With two threads, what is wide is searched in one of them and parts in the other.
"""

from collections.abc import Iterator
from math import ceil, floor, inf

import numpy as np

from partsplan.domain import PlanStatus, Stage
from partsplan.errors import SolverFailed
from partsplan.planning import decode
from partsplan.planning.aside import Aside
from partsplan.planning.blocks import blocks
from partsplan.planning.building import built
from partsplan.planning.covers import cover
from partsplan.planning.demands import Demand
from partsplan.planning.force import Held
from partsplan.planning.interrupts import Interrupts
from partsplan.planning.limits import COUNT_GAP, ROUNDING, Limits, Optimum, Progress
from partsplan.planning.matrix import Cut, Floats, Matrix, Places, at_most
from partsplan.planning.model import Model
from partsplan.planning.neighbours import Neighbours
from partsplan.planning.parts import completed, solve_part
from partsplan.planning.prices import descend
from partsplan.planning.promising import Offers
from partsplan.planning.relaxation import Relaxation
from partsplan.planning.rounding import unsure
from partsplan.planning.sampling import first_columns, sampled_prices
from partsplan.planning.solver import LinearRun, SolverRun, Tuning, solve_whole
from partsplan.planning.stopwatch import Stopwatch

PENALTY = 5.0
"""An unmet demand weighs so many times as much as the dearest column, and as much again
for each stage that comes later."""
SLACK = 600.0
"""By how much an offer may seem worse than the best of its bundle, and still be in
the first relaxation. [minor units]"""
SAMPLE = 20_000
"""Most offers of a sample for first prices."""
PRICED = 60_000
"""With more offers the common rows are priced instead of solved with."""
STEPS = 4
"""Better prices are looked for so often."""
ROUNDS = 8
"""Most rounds of cuts."""
SLOW = 1e-4
"""Rounds end when one lowers the bound by less. [fraction]"""
FIRST, MORE = 1200, 2
"""Columns that are solved first, and how many times as many next."""
WHOLE_SEARCH = 12_000
"""Programs with more columns are never searched whole. [columns]"""


FIRST_SHARE, SETTLE_SHARE, TIGHTEN_SHARE, WHOLE_SHARE = 0.1, 0.1, 0.2, 0.2
"""Most of the time for a rounding, for the bound of each counted stage, for cuts, and
for the first search of the whole program."""
BUILD_SHARE = 0.25
"""Most of the time for a plan from prices."""
ROUND_SHARE = 0.3
"""Most of the time left for a wider rounding."""
MOST_PART = 2500
LOOSE = 1e-6
"""Tolerance of searches whose plans are counted again."""
STALE = 12
"""Parts solved in vain before something wider is tried."""
PART, PART_SECONDS = 400, 2.0
"""Offers of the first parts, and the longest search of one. [s]"""


def optimise(
    model: Model,
    demands: tuple[Demand, ...],
    found: Optimum,
    limits: Limits,
    *,
    rows: tuple[Held, ...] = (),
    hint: tuple[int, ...] | None = None,
    progress: Progress | None = None,
) -> Optimum | None:
    """The best columns that the time allows, as ``stages.optimise``; worth comes last.

    Raises
    ------
    SolverFailed
        If the time was up before anything was found.
    KeyboardInterrupt
        If the search was stopped before that.
    """
    with Interrupts() as interrupts:
        search = _Search(model, demands, found, limits, rows, interrupts, progress)
        return search.run(hint)


class _Search:
    """One search, step by step."""

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

    def run(self, hint: tuple[int, ...] | None) -> Optimum | None:
        """All steps, as far as the time allows."""
        relaxed = self._relax()
        if relaxed.infeasible:
            return None
        for known in (self.found.ones, hint):
            if known is not None:
                self._take(completed(self.matrix, self.objective, known))
        if relaxed.solved and self.relaxation.prices is None:
            self._first_round()
        elif relaxed.solved and self.figures is not None:
            self._build(self.figures)
        if self.figures is None:
            if self.stopped:
                raise KeyboardInterrupt
            raise SolverFailed("the time was up before any plan was found")
        begun = self.relaxation.basis
        for stage in self.model.garage.priority[:-1]:
            self._settle(stage)
        self.stage = Stage.WORTH
        self.relaxation.basis = begun
        self._aim(self.worth)
        self._tighten()
        self.neighbours = Neighbours(
            self.relaxation, min(max(PART, self.width // 40), MOST_PART)
        )
        if self.width > WHOLE_SEARCH:
            if self.relaxation.prices is None:
                self._round(FIRST, self.limits.seconds * FIRST_SHARE)
            self._widen()
        else:
            self._search_whole(self.limits.seconds * WHOLE_SHARE)
            if self.limits.threads > 1:
                self._search_beside()
            else:
                self._improve(self.watch.left / 2)
                self._search_whole(self.watch.left)
        return self._ended(self.figures)

    @property
    def matrix(self) -> Matrix:
        """All rows, cuts too."""
        return self.relaxation.matrix

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

    def _relax(self) -> LinearRun:
        """The first relaxation, tightened once where nothing is priced."""
        relaxation = self.relaxation
        prices = sampled_prices(relaxation, SLACK, self.watch, most=SAMPLE)
        relaxation.admit(first_columns(relaxation, prices, SLACK))
        if relaxation.offers.are.sum() > PRICED:
            relaxation.prices = self._prices(prices)
        run = self._solve(self.watch)
        if run.infeasible and not relaxation.active.all():
            relaxation.active[:] = True
            run = relaxation.solve(self.watch)
        if run.solved and relaxation.prices is None and relaxation.tighten(self.watch):
            again = self._solve(self.watch)
            run = again if again.solved else run
        return run

    def _prices(self, sampled: Floats | None) -> Floats:
        """Prices to begin with: those of a sample, or nothing."""
        none = np.zeros(len(self.relaxation.common))
        return none if sampled is None else sampled

    def _solve(self, watch: Stopwatch) -> LinearRun:
        """The relaxation, with the best prices where it has any."""
        if self.relaxation.prices is None:
            return self.relaxation.sift(watch)
        return descend(self.relaxation, watch, STEPS)

    def _aim(self, objective: Floats) -> None:
        """Maximise something else from now on."""
        self.relaxation.aim(objective)
        self.bound = inf
        if self.figures is not None:
            self.value = float(objective @ self.figures)

    def _take(self, figures: Floats | None) -> bool:
        """Whether these are the best so far, and no month overspends by a tolerance."""
        if figures is None:
            return False
        value = float(self.objective @ figures)
        if value <= self.value + ROUNDING:
            return False
        ones = self._ones(figures)
        if cover(self.model, ones, decode.ledger_of(self.model, ones)):
            return False
        self.figures, self.value = figures, value
        self._tell()
        return True

    def _tell(self) -> None:
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

    def _watch(self, *_: float | None) -> None:
        self._tell()
        if self.stopped:
            raise KeyboardInterrupt

    def _part(self, columns: Places, seconds: float, *, begun: bool) -> SolverRun:
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
            watch=self._watch,
        )
        self.watch.tell(run.seconds)
        self._take(figures)
        if self.aside is not None:
            self.bound = min(self.bound, self.aside.bound)
        return run

    def _first_round(self) -> None:
        """A plan from the relaxation, but for the columns that it is unsure of.

        More of them where the others leave no room for a plan.
        """
        count = FIRST
        watch = self.watch.part(self.limits.seconds * FIRST_SHARE)
        while watch.left and not self.stopped:
            columns = unsure(self.relaxation, count)
            run = self._part(columns, watch.left, begun=False)
            if run.status is not PlanStatus.INFEASIBLE or count > self.width:
                break
            count *= MORE

    def _build(self, figures: Floats) -> None:
        """A plan from the prices: they say less about single columns."""
        watch = self.watch.part(self.limits.seconds * BUILD_SHARE)
        self._take(built(self.relaxation, figures, watch, self._watch))

    def _round(self, count: int, seconds: float) -> None:
        """A plan near the relaxation; if there is none, one between it and the best."""
        columns = unsure(self.relaxation, count)
        run = self._part(columns, seconds, begun=False)
        if run.status is PlanStatus.INFEASIBLE:
            columns = unsure(self.relaxation, count, self.figures)
            self._part(columns, seconds, begun=True)

    def _settle(self, stage: Stage) -> None:
        """Hold what the plan reaches for a counted stage, and find its bound.

        In a very wide program nothing better is known than what no plan can meet.
        """
        self.stage, columns = stage, self.model.unmet_of(stage)
        hopeless = bound = self.model.hopeless_of(stage)
        if columns:
            counted = np.zeros(self.width)
            counted[columns] = -1
            self._aim(counted)
            seconds = self.limits.seconds * SETTLE_SHARE
            watch = self.watch.part(seconds)
            narrow = self.width <= WHOLE_SEARCH
            if narrow and self.relaxation.sift(watch).solved:
                bound += max(0, ceil(-self.relaxation.bound - ROUNDING))
            if narrow and self._figure(stage) > bound:
                run = self._search_whole(seconds, absolute_gap=COUNT_GAP)
                if run.bound < inf:
                    bound = max(bound, hopeless + ceil(-run.bound - ROUNDING))
        reached = self._figure(stage)
        self.found.bounds[stage] = min(reached, bound)
        self.found.proven &= reached <= bound
        if columns:
            held = at_most(((one, 1.0) for one in columns), float(reached - hopeless))
            self.relaxation.add([held], common=True)

    def _tighten(self) -> None:
        """Solve the relaxation of net worth, and cut it down as far as it pays."""
        watch = self.watch.part(self.limits.seconds * TIGHTEN_SHARE)
        if self.relaxation.prices is not None:
            sampled = sampled_prices(self.relaxation, SLACK, self.watch, most=SAMPLE)
            self.relaxation.prices = self._prices(sampled)
        solved = self._solve(self.watch).solved
        self.bound = min(self.bound, self.relaxation.bound)
        self._tell()
        for _ in range(ROUNDS):
            if not (solved and self.going_on and watch.left):
                break
            before = self.bound
            if not self.relaxation.tighten(watch):
                break
            solved = self._solve(watch).solved
            self.bound = min(self.bound, self.relaxation.bound)
            self._tell()
            if before - self.bound < SLOW * abs(before):
                break

    def _widen(self) -> None:
        """Parts of the plan, and by turns or beside them wider and wider roundings."""
        count = MORE * FIRST
        while self.going_on:
            if self.limits.threads > 1:
                self._round_beside(count)
            else:
                self._improve(ROUND_SHARE * self.watch.left)
                self._round(count, ROUND_SHARE * self.watch.left)
            count = min(MORE * count, self.width)

    def _round_beside(self, count: int) -> None:
        """Round in another thread while parts are solved."""
        figures = self.figures
        if figures is None:
            return
        columns = unsure(self.relaxation, count, figures)
        aside = Aside(
            self.matrix.beside(figures, columns),
            self.objective[columns],
            Tuning(
                seconds=ROUND_SHARE * self.watch.left,
                gap=self.limits.gap,
                tolerance=LOOSE,
            ),
            frozenset(np.flatnonzero(figures[columns] > 0.5).tolist()),
        )
        while self.going_on and not aside.done:
            self._improve(self.watch.left, beside=aside)
        run = aside.stop()
        if run.values:
            found = figures.copy()
            found[columns] = run.values
            self._take(self._rounded(found))

    def _search_beside(self) -> None:
        """Search the whole program in another thread while parts are solved."""
        if self.figures is None:
            return
        aside = Aside(
            self.matrix,
            self.objective,
            Tuning(
                seconds=self.watch.left,
                gap=self.limits.gap,
                tolerance=LOOSE,
                effort=0.0,
            ),
            frozenset(self._ones(self.figures)),
        )
        self.aside = aside
        while self.going_on and not aside.done:
            self._improve(self.watch.left, beside=aside)
        run = aside.stop()
        self.bound = min(self.bound, run.bound)
        if run.values:
            self._take(self._rounded(np.array(run.values)))

    def _improve(self, seconds: float, *, beside: Aside | None = None) -> None:
        """Solve parts of the best plan again until that helps no more.

        It ends, too, when a search beside it does.
        """
        watch = self.watch.part(seconds)
        vain = 0
        while (
            self.going_on and watch.left and vain < STALE and self.figures is not None
        ):
            if beside is not None and beside.done:
                break
            before = self.value
            columns = self.neighbours.part(
                self.figures, self.relaxation.bound - self.value
            )
            run = self._part(columns, min(PART_SECONDS, watch.left), begun=True)
            self.neighbours.learn(solved=run.status is PlanStatus.PROVEN)
            vain = 0 if self.value > before else vain + 1

    def _search_whole(self, seconds: float, *, absolute_gap: float = 0.0) -> SolverRun:
        """Search the whole program from the best plan on; its bound counts."""
        counts = absolute_gap > 0
        start = frozenset(() if self.figures is None else self._ones(self.figures))

        def watch(_: float, best: float | None, bound: float | None) -> None:
            if bound is not None:
                self.bound = min(self.bound, bound)
            if best is not None and not counts:
                self.value = max(self.value, best)
            self._watch()

        run = solve_whole(
            self.matrix,
            self.objective,
            Tuning(
                seconds=min(seconds, self.watch.left) if self.going_on else 0.0,
                gap=0.0 if counts else self.limits.gap,
                absolute_gap=absolute_gap,
                tolerance=LOOSE,
            ),
            start=start,
            watch=watch,
        )
        self.watch.tell(run.seconds)
        self.bound = min(self.bound, run.bound)
        if self.figures is not None:
            self.value = float(self.objective @ self.figures)
        if run.values:
            self._take(self._rounded(np.array(run.values)))
        return run

    def _rounded(self, figures: Floats) -> Floats:
        """The same with whole columns that are whole to the last bit."""
        return np.where(self.matrix.whole, np.round(figures), figures)

    def _figure(self, stage: Stage) -> int:
        """What the best plan reaches for a stage."""
        if self.figures is None:
            raise AssertionError("no plan yet")
        ones = self._ones(self.figures)
        chosen, choices = decode.decode(self.model, ones)
        return decode.stages(self.model.garage, chosen, choices, self.demands).of(stage)

    def _ones(self, figures: Floats) -> tuple[int, ...]:
        """The whole columns at 1."""
        return tuple(np.flatnonzero(self.matrix.whole & (figures > 0.5)).tolist())

    def _ended(self, figures: Floats) -> Optimum:
        """Everything in our own words."""
        found = self.found
        found.ones = self._ones(figures)
        reached = self._figure(Stage.WORTH)
        trivial = float(np.maximum(self.worth, 0) @ np.minimum(self.matrix.upper, inf))
        bound = min(self.bound, trivial)
        found.bounds[Stage.WORTH] = max(reached, floor(bound + ROUNDING))
        found.seconds = self.watch.passed
        found.interrupted = self.stopped
        return found


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
