"""Counts a contestant's last plan again, and looks for rules it breaks."""

from partsplan.domain import Choices, Stage
from partsplan.planning import Planner, decode
from partsplan.verification import broken_rules
from tests.benchmarks.contest.cell import Task
from tests.benchmarks.contest.telling import AnyPlan
from tests.benchmarks.generator import made_up_garage


def check(task: Task, plan: AnyPlan) -> tuple[dict[str, int], int]:
    """The plan's figures by stage, and how many rules it breaks."""
    garage = made_up_garage(task.faults, task.months, task.seed)
    planner = Planner(garage)
    if isinstance(plan, Choices):
        choices = plan
    else:
        _, choices = decode.decode(planner.model, plan)
    chosen = tuple(
        offer
        for offer in planner.offers
        if choices.orders.get(offer.option.id) == offer.ordered
    )
    figures = decode.stages(garage, chosen, choices, planner.demands)
    told = {stage.value: figures.of(stage) for stage in Stage}
    return told, len(broken_rules(garage, choices))
