"""HiGHS without its banner, its silences and its optimism."""

from collections.abc import Callable
from dataclasses import replace
from threading import Event, Thread
from typing import Any

import highspy
import numpy as np

from partsplan.domain import PlanStatus
from partsplan.errors import SolverFailed
from partsplan.planning.interrupts import Interrupts
from partsplan.planning.solver.run import Found, SolverRun, Tuning, Watch

FEASIBLE = int(highspy.SolutionStatus.kSolutionStatusFeasible)
FIRST_POLL_SECONDS, POLL_SECONDS = 0.005, 0.1
ROW_WISE = int(highspy.MatrixFormat.kRowwise)
MAXIMISE = int(highspy.ObjSense.kMaximize)


def solver_name() -> str:
    """Name and version of the solver."""
    return f"HiGHS {QuietHighs().version()}"


class QuietHighs(highspy.Highs):
    """HiGHS without the banner that 1.16 prints while it is made."""

    def enableCallbacks(self) -> None:
        self.setOptionValue("log_to_console", False)
        super().enableCallbacks()


def configured(**options: Any) -> QuietHighs:
    """A new HiGHS with these options.

    Raises
    ------
    SolverFailed
        If it refuses one.
    """
    highs = QuietHighs()
    for option, value in options.items():
        expect_ok(highs.setOptionValue(option, value), f"the option {option}")
    return highs


def use_threads(number: int) -> None:
    """Let HiGHS use so many threads, unless a run is under way with another number.

    Within a process it silently refuses another number than before, and its threads
    must not be taken from a run; one may go on after its search was given up.
    """
    if number != _used[0] and not _running:
        highspy.Highs.resetGlobalScheduler(True)
        _used[0] = number


_used = [0]
"""The number of threads that runs of this process have."""
_running: set[Event] = set()
"""What runs that are under way will say when they are done."""


def expect_ok(status: Any, what: str) -> None:
    """Raises SolverFailed unless HiGHS took what it was given."""
    if status != highspy.HighsStatus.kOk:
        raise SolverFailed(f"the solver refused {what}")


def run_aside(highs: QuietHighs, poll: Callable[[bool], object]) -> bool:
    """Run HiGHS in a thread, since run() would hold Ctrl-C back until its end.

    ``poll`` is told, again and again, whether Ctrl-C was pressed; so is the caller in
    the end. The thread never outlives this: if ``poll`` raises, it must have seen to
    it that the run stops.
    """
    done = Event()

    def work() -> None:
        try:
            highs.run()
        finally:
            _running.discard(done)
            done.set()

    _running.add(done)
    with Interrupts() as interrupts:
        Thread(target=work, daemon=True).start()
        pause = FIRST_POLL_SECONDS
        while not done.wait(pause):
            pause = min(2 * pause, POLL_SECONDS)
            try:
                poll(interrupts.asked)
            except BaseException:
                done.wait()
                raise
        return interrupts.asked


def searched(
    run: Callable[["Search"], None],
    tuning: Tuning,
    start: frozenset[int] | None,
    watch: Watch | None,
) -> SolverRun:
    """How a run ended; where HiGHS handed its start back, that of one without."""
    search = Search(tuning, start=start, watch=watch)
    run(search)
    if search.handed_back_start and not search.interrupted:
        left = max(0.0, tuning.seconds - search.highs.getRunTime())
        search = Search(replace(tuning, seconds=left), watch=watch)
        run(search)
    return search.answer()


class Search:
    """One run of HiGHS on a program with whole columns.

    ``start`` names the whole columns that begin at 1.
    """

    def __init__(
        self,
        tuning: Tuning,
        *,
        start: frozenset[int] | None = None,
        watch: Watch | None = None,
    ) -> None:
        self.tuning = tuning
        self.start = start
        self.watch = watch
        self.interrupted = False
        self.best: float | None = None
        self.bound: float | None = None

    def configured(self) -> QuietHighs:
        """A new HiGHS for this run.

        Strong branching once a column, and no restarts: on garages of 30 faults that
        takes a third to a half off the time.
        """
        tuning = self.tuning
        use_threads(tuning.threads)
        how: dict[str, Any] = {}
        if not tuning.careful:
            how = {"mip_pscost_minreliable": 1, "mip_allow_restart": False}
        self.highs = configured(
            mip_rel_gap=tuning.gap,
            mip_abs_gap=tuning.absolute_gap,
            threads=tuning.threads,
            time_limit=max(tuning.seconds, 0.0),
            random_seed=0,
            mip_feasibility_tolerance=tuning.tolerance,
            primal_feasibility_tolerance=tuning.tolerance,
            **how,
        )
        return self.highs

    def load(
        self, costs: Any, upper: Any, low: Any, high: Any, rows: Any, whole: Any
    ) -> None:
        """Hand a program over: ``rows`` are starts, indices and figures, row by row."""
        starts, indices, figures = rows
        self.costs = costs
        self.whole = np.flatnonzero(whole)
        passed = self.highs.passModel(
            len(costs),
            len(low),
            len(figures),
            ROW_WISE,
            MAXIMISE,
            0.0,
            costs,
            np.zeros(len(costs)),
            upper,
            low,
            high,
            np.asarray(starts, dtype=np.int32),
            np.asarray(indices, dtype=np.int32),
            figures,
            np.asarray(whole, dtype=np.int32),
        )
        expect_ok(passed, "the model")

    def run(self, found: Found | None = None) -> None:
        """Search until the gap is reached, the time is up, or somebody stops it."""
        highs = self.highs
        if self.start is not None:
            # HiGHS completes it, and drops it if it cannot be. Every whole column is
            # named: to find even one of them HiGHS would solve another program first.
            columns = self.whole.astype(np.int32)
            begun = np.array([float(one in self.start) for one in self.whole])
            highs.setSolution(len(columns), columns, begun)
        if found is not None:
            told = found
            highs.cbMipImprovingSolution += lambda event: told(
                np.array(event.data_out.mip_solution)
            )
        highs.cbMipInterrupt += self._on_interrupt
        highs.cbSimplexInterrupt += self._on_interrupt
        asked = run_aside(highs, self._tell)  # which sets it, too
        self.interrupted |= asked

    def _tell(self, asked: bool) -> bool:
        """Whether to stop, after the watcher was told how far the run is."""
        self.interrupted |= asked
        try:
            if self.watch:
                self.watch(self.highs.getRunTime(), self.best, self.bound)
        except KeyboardInterrupt:  # the watcher wants it to stop
            self.interrupted = True
        except BaseException:
            self.interrupted = True
            raise
        return self.interrupted

    def answer(self) -> SolverRun:
        """What HiGHS itself says, in our words."""
        info, status = self.highs.getInfo(), self.highs.getModelStatus()
        seconds = self.highs.getRunTime()
        kinds = highspy.HighsModelStatus
        if status in (kinds.kInfeasible, kinds.kUnboundedOrInfeasible):
            return self._run(PlanStatus.INFEASIBLE, (), -np.inf, seconds)
        bound = info.mip_dual_bound
        if info.primal_solution_status != FEASIBLE:
            return self._run(PlanStatus.FAILED, (), bound, seconds)
        values = self.highs.getSolution().col_value
        value = float(self.costs @ np.array(values))
        if not len(self.whole):  # a linear program has no bound of this name
            bound = value
        gap, absolute = self.tuning.gap, self.tuning.absolute_gap
        close = max(gap * max(1.0, abs(value)), absolute) + 1e-6
        proven = status == kinds.kOptimal and bound - value <= close
        return self._run(
            PlanStatus.PROVEN if proven else PlanStatus.FEASIBLE,
            tuple(values),
            bound,
            seconds,
        )

    @property
    def handed_back_start(self) -> bool:
        """Whether the columns are worth less than HiGHS says.

        HiGHS 1.16 sometimes calls a run optimal and hands back the start it was given.
        """
        info = self.highs.getInfo()
        if info.primal_solution_status != FEASIBLE or self.start is None:
            return False
        value = float(self.costs @ np.array(self.highs.getSolution().col_value))
        told = info.objective_function_value
        return bool(value < told - 1e-6 * max(1.0, abs(told)))

    def _run(
        self,
        status: PlanStatus,
        values: tuple[float, ...],
        bound: float,
        seconds: float,
    ) -> SolverRun:
        return SolverRun(
            status=status,
            values=values,
            bound=bound,
            seconds=seconds,
            interrupted=self.interrupted,
        )

    def _on_interrupt(self, event: Any) -> None:
        told = event.data_out
        if abs(told.mip_primal_bound) < highspy.kHighsInf:
            self.best = told.mip_primal_bound
        if abs(told.mip_dual_bound) < highspy.kHighsInf:
            self.bound = told.mip_dual_bound
        if self.interrupted:
            event.interrupt()
