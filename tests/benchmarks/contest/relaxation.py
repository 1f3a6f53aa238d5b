"""The floor: the model without whole columns, whose value no plan can exceed.

The early stages are held at the best figures that any contestant reached.
"""

import highspy

from partsplan.domain import Garage, Stage
from partsplan.planning import Planner
from tests.benchmarks.contest.cell import EARLY_STAGES, Task
from tests.benchmarks.contest.goals import OUT_OF_TIME, PROVEN, goal
from tests.benchmarks.contest.pulp_problem import PlainHighs, PulpProblem
from tests.benchmarks.contest.telling import Teller


def compete(garage: Garage, task: Task, teller: Teller) -> str:
    """Find the bound; returns how it ended."""
    if task.held is None:
        raise ValueError("the relaxation looks for no figures of early stages itself")
    teller.start()
    model = Planner(garage).model
    problem = PulpProblem(model.program, relaxed=True)
    for name in EARLY_STAGES:
        wanted = goal(model, Stage(name))
        if wanted.terms:
            problem.at_most(wanted.terms, task.held[name] - wanted.constant)
    left = max(0.0, task.seconds - teller.seconds)
    solver = PlainHighs(msg=False, timeLimit=left, threads=task.threads)
    highs = problem.solve(goal(model, Stage.WORTH).terms, solver, highest=True)
    if highs.getModelStatus() != highspy.HighsModelStatus.kOptimal:
        return OUT_OF_TIME
    teller.tell(Stage.WORTH.value, None, -highs.getInfo().objective_function_value)
    return PROVEN
