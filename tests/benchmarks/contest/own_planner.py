"""The contestant that is measured: partsplan itself, by its public call."""

from time import monotonic

from partsplan.domain import Garage, Needs, PlanStatus, Stage
from partsplan.planning import plan
from tests.benchmarks.contest.cell import Task
from tests.benchmarks.contest.goals import OUT_OF_TIME, PROVEN
from tests.benchmarks.contest.telling import Teller


def compete(garage: Garage, task: Task, teller: Teller) -> str:
    """Plan the garage; returns how it ended."""

    def progress(
        stage: str, seconds: float, best: float | None, bound: float | None
    ) -> None:
        teller.tell(str(stage), best, bound)

    teller.start()
    found = plan(
        garage,
        seconds=task.seconds,
        gap=task.gap,
        threads=task.threads,
        progress=progress,
        clock=monotonic,
    )
    if isinstance(found, Needs):
        raise AssertionError(f"{garage.name} has no debt, but is told to be impossible")
    for stage in Stage:
        teller.tell(stage.value, found.stages.of(stage), found.stage_bounds.of(stage))
    teller.show(found.choices)
    return PROVEN if found.status is PlanStatus.PROVEN else OUT_OF_TIME
