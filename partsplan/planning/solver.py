"""The only room that knows PuLP and HiGHS: a program goes in, our own words come out.

PuLP 3.3 calls a run "Optimal" that the clock cut short, prints HiGHS's banner, and
hands the model over column by column; the subclasses here mend that.
"""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from threading import Event, Thread
from typing import Any

import highspy
import numpy as np
import pulp

from partsplan.domain import PlanStatus
from partsplan.errors import SolverFailed
from partsplan.planning.interrupts import Interrupts
from partsplan.planning.program import Program, Terms

FEASIBLE = int(highspy.SolutionStatus.kSolutionStatusFeasible)
TOLERANCE = 1e-9
POLL_SECONDS = 0.1

Watch = Callable[[float, float | None, float | None], None]
"""Told seconds, best value and bound while a run goes on.

It may raise KeyboardInterrupt to stop the run and keep the best so far.
"""


@dataclass(frozen=True, slots=True, kw_only=True)
class SolverRun:
    """How a run ended.

    Attributes
    ----------
    status
        Proven only if the gap asked for was reached.
    values
        One figure a column; empty without a solution.
    bound
        No solution has a higher objective; infinite if nothing is known.
    seconds
        [s]
    """

    status: PlanStatus
    values: tuple[float, ...]
    bound: float
    seconds: float
    interrupted: bool = False


def solver_name() -> str:
    """Name and version of the solver."""
    return f"HiGHS {_QuietHighs().version()}"


class Solver:
    """One program, solved for one objective after another."""

    def __init__(self, program: Program) -> None:
        self._problem = pulp.LpProblem("plan", pulp.LpMaximize)
        self._variables = [
            self._problem.add_variable(
                f"x{index:07d}",
                0,
                column.high,
                pulp.LpInteger if column.integer else pulp.LpContinuous,
            )
            for index, column in enumerate(program.columns)
        ]
        for index, variable in enumerate(self._variables):
            variable.index = index
        for row in program.rows:
            terms = zip(row.columns, row.coefficients, strict=True)
            self.hold(terms, low=row.low, high=row.high)

    def hold(
        self, terms: Terms, *, low: float | None = None, high: float | None = None
    ) -> None:
        """Add a row: low <= terms <= high, at least one side given."""
        known = list(terms)
        if low is not None and low == high:
            self._add(known, pulp.LpConstraintEQ, low)
            return
        if low is not None:
            self._add(known, pulp.LpConstraintGE, low)
        if high is not None:
            self._add(known, pulp.LpConstraintLE, high)

    def maximise(
        self,
        objective: Terms,
        *,
        seconds: float,
        gap: float,
        absolute_gap: float = 0.0,
        threads: int = 1,
        start: Iterable[int] | None = None,
        watch: Watch | None = None,
        stopped: bool = False,
    ) -> SolverRun:
        """Solve for one objective; ``start`` names the whole columns that begin at 1.

        A run that is ``stopped`` before its start knows nothing.

        Raises
        ------
        SolverFailed
            If HiGHS refuses the model or an option.
        """
        if stopped:
            return SolverRun(
                status=PlanStatus.FAILED, values=(), bound=np.inf, seconds=0.0
            )
        self._problem.setObjective(self._expression(objective))
        runner = _Runner(
            self._variables,
            timeLimit=max(seconds, 0.0),
            gapRel=gap,
            gapAbs=absolute_gap,
            threads=threads,
            start=None if start is None else frozenset(start),
            watch=watch,
        )
        runner.actualSolve(self._problem)
        if runner.handed_back_start:
            left = max(0.0, seconds - runner.highs.getRunTime())
            runner.start, runner.timeLimit = None, left
            runner.actualSolve(self._problem)
        return runner.answer(gap, absolute_gap)

    def _add(self, terms: list[tuple[int, float]], sense: int, side: float) -> None:
        row = pulp.LpConstraint(self._expression(terms), sense, rhs=side)
        self._problem.addConstraint(row)

    def _expression(self, terms: Terms) -> Any:
        return pulp.LpAffineExpression(
            [(self._variables[column], value) for column, value in terms]
        )


class _QuietHighs(highspy.Highs):
    """HiGHS without the banner that 1.16 prints while it is made."""

    def enableCallbacks(self) -> None:
        self.setOptionValue("log_to_console", False)
        super().enableCallbacks()


class _Runner(pulp.HiGHS):  # type: ignore[misc]
    """PuLP's HiGHS with one hand-over, checked options and true answers."""

    def __init__(
        self,
        variables: list[Any],
        *,
        start: frozenset[int] | None,
        watch: Watch | None,
        **settings: Any,
    ) -> None:
        super().__init__(msg=True, **settings)
        self.variables = variables
        self.start = start
        self.watch = watch
        self.interrupted = False
        self.best: float | None = None
        self.bound: float | None = None

    def createAndConfigureSolver(self, lp: Any) -> None:
        highs = lp.solverModel = _QuietHighs()
        # Within a process HiGHS silently refuses another number of threads.
        highspy.Highs.resetGlobalScheduler(True)
        for option, value in {
            "mip_rel_gap": self.gapRel,
            "mip_abs_gap": self.gapAbs,
            "threads": self.threads,
            "time_limit": float(self.timeLimit),
            "random_seed": 0,
            "mip_feasibility_tolerance": TOLERANCE,
            "primal_feasibility_tolerance": TOLERANCE,
        }.items():
            _expect_ok(highs.setOptionValue(option, value), f"the option {option}")

    def buildSolverModel(self, lp: Any) -> None:
        variables = self.variables
        rows = list(lp._constraints.values())
        starts = np.zeros(len(rows) + 1, dtype=np.int32)
        starts[1:] = np.cumsum([len(row) for row in rows])
        indexes = np.fromiter((v.index for row in rows for v in row), dtype=np.int32)
        entries = np.fromiter((c for row in rows for c in row.values()), dtype=float)
        costs = self.costs = np.zeros(len(variables))
        for variable, cost in lp.objective.items():
            costs[variable.index] = cost
        whole = [variable.cat == pulp.LpInteger for variable in variables]
        self.whole = [place for place, one in enumerate(whole) if one]
        inf = highspy.kHighsInf
        passed = lp.solverModel.passModel(
            len(variables),
            len(rows),
            len(entries),
            int(highspy.MatrixFormat.kRowwise),
            int(highspy.ObjSense.kMaximize),
            0.0,
            costs,
            np.zeros(len(variables)),
            np.array([inf if v.upBound is None else v.upBound for v in variables]),
            np.array([-inf if row.getLb() is None else row.getLb() for row in rows]),
            np.array([inf if row.getUb() is None else row.getUb() for row in rows]),
            starts,
            indexes,
            entries,
            np.array(whole, dtype=np.int32),
        )
        _expect_ok(passed, "the model")

    def callSolver(self, lp: Any) -> None:
        highs = lp.solverModel
        if self.start is not None:
            # HiGHS completes it, and drops it if it cannot be. Every whole column is
            # named: to find even one of them HiGHS would solve another program first.
            columns = np.array(self.whole, dtype=np.int32)
            begun = np.array([float(one in self.start) for one in self.whole])
            highs.setSolution(len(columns), columns, begun)
        highs.cbMipInterrupt += self._on_interrupt
        highs.cbSimplexInterrupt += self._on_interrupt
        done = Event()

        def work() -> None:
            try:
                highs.run()
            finally:
                done.set()

        # In a thread, since run() would hold Ctrl-C back until its end.
        with Interrupts() as interrupts:
            Thread(target=work, daemon=True).start()
            while not done.wait(POLL_SECONDS):
                self.interrupted |= interrupts.asked
                try:
                    if self.watch:
                        self.watch(highs.getRunTime(), self.best, self.bound)
                except KeyboardInterrupt:  # the watcher wants it to stop
                    self.interrupted = True
                except BaseException:
                    self.interrupted = True
                    done.wait()  # the solver's thread must not outlive this
                    raise
            self.interrupted |= interrupts.asked

    def findSolutionValues(self, lp: Any) -> tuple[int, int]:
        self.highs = lp.solverModel
        return pulp.LpStatusNotSolved, pulp.LpSolutionNoSolutionFound

    def answer(self, gap: float, absolute_gap: float) -> SolverRun:
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
        if not self.whole:  # HiGHS gives a linear program no bound of this name
            bound = value
        close = max(gap * max(1.0, abs(value)), absolute_gap) + 1e-6
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


def _expect_ok(status: Any, what: str) -> None:
    if status != highspy.HighsStatus.kOk:
        raise SolverFailed(f"the solver refused {what}")
