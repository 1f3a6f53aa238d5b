"""The only room that knows PuLP and HiGHS: programs go in, our own words come out."""

from partsplan.planning.solver.highs import solver_name
from partsplan.planning.solver.linear import Basis, LinearRun, solve_linear
from partsplan.planning.solver.program import Solver
from partsplan.planning.solver.run import Found, SolverRun, Tuning, Watch
from partsplan.planning.solver.whole import solve_whole

__all__ = [
    "Basis",
    "Found",
    "LinearRun",
    "Solver",
    "SolverRun",
    "Tuning",
    "Watch",
    "solve_linear",
    "solve_whole",
    "solver_name",
]
