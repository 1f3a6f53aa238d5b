"""A plan as lines for other programs: one record a line, fields split by tabs.

The first field says what the record is. Money is decimal text.
"""

from collections.abc import Iterator, Sequence

from partsplan.domain import Garage, Needs, Plan, Shortfall, Skip, Stage
from partsplan.reports.assumptions import assumed_line
from partsplan.reports.figures import number
from partsplan.reports.records import record_lines
from partsplan.reports.words import sentence


def plan_plain(
    garage: Garage, plan: Plan, skips: Sequence[Skip], shortfalls: Sequence[Shortfall]
) -> str:
    """The whole plan, in the order of its parts."""
    return record_lines(_records(garage, plan, skips, shortfalls))


def needs_plain(garage: Garage, needs: Needs) -> str:
    """What it would take to make a plan possible."""
    money = garage.currency.format(needs.money)
    return record_lines(
        [
            ("plan", garage.name, garage.currency.code, "infeasible"),
            ("needs", str(needs.month), money),
        ]
    )


def _records(
    garage: Garage, plan: Plan, skips: Sequence[Skip], shortfalls: Sequence[Shortfall]
) -> Iterator[Sequence[str]]:
    money = garage.currency.format

    def month(index: int) -> str:
        return str(garage.month(index))

    yield "plan", garage.name, garage.currency.code, plan.status.value, str(plan.gap)
    for stage in garage.priority:
        written = money if stage is Stage.WORTH else str
        reached, bound = plan.stages.of(stage), plan.stage_bounds.of(stage)
        yield "stage", stage.value, written(reached), written(bound)
    for job in plan.jobs:
        yield (
            "job",
            job.option,
            ";".join(job.faults),
            job.route.value,
            job.supplier or "",
            month(job.ordered),
            month(job.fitted),
            money(job.landed),
            money(job.deposit),
            money(job.charge),
            number(job.hours),
        )
    for buy in plan.tools:
        yield "tool", buy.tool, month(buy.month), money(buy.price)
    for order in plan.orders:
        sums = money(order.goods), money(order.shipping)
        yield "order", order.supplier, month(order.month), *sums
    for line in plan.ledger:
        sums_of_month = (line.budget, line.out, line.back, line.balance)
        yield (
            "month",
            month(line.month),
            *(money(one) for one in sums_of_month),
            number(line.hours),
        )
    for skip in skips:
        reason = skip.reason
        yield "skipped", skip.fault, reason.code, sentence(garage, reason)
    for one in shortfalls:
        yield (
            "shortfall",
            one.stage.value,
            one.subject,
            ";".join(month(index) for index in one.months),
            "" if one.money is None else money(one.money),
            "" if one.hours is None else number(one.hours),
        )
    for filled in garage.assumed:
        yield "assumed", assumed_line(filled)
    for warning in garage.warnings:
        yield "warning", warning
