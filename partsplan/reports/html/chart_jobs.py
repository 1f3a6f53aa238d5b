"""Jobs over the months: when each is ordered and fitted, and how long it lasts."""

from collections.abc import Iterable, Iterator, Sequence
from typing import Any

from partsplan.domain import Garage, Job, Plan
from partsplan.reports.figures import count, month_name
from partsplan.reports.html.drawing import TEXTS, down, months_across, svg, values
from partsplan.reports.html.figure import Figure
from partsplan.reports.html.inks import DEEP, MIDDLE, RULE
from partsplan.reports.html.leaf import Table
from partsplan.reports.names import job_target
from partsplan.reports.tables import Column, text
from partsplan.verification import Facts

MOST = 30
"""Jobs that are drawn; more would not fit on a page."""
ROW = 30
"""Room for the name of a job, and its bar below that. [px]"""
LABEL, BAR, THICK = 10, 22, 4
"""Middle of the name, middle of the bar and half its thickness. [px]"""


def jobs_figure(garage: Garage, plan: Plan) -> Figure | None:
    """A line a job; None without jobs."""
    jobs = sorted(plan.jobs, key=lambda job: (job.ordered, job.fitted))
    if not jobs:
        return None
    drawn = jobs[:MOST]
    kept = "" if len(jobs) == len(drawn) else f" The first {MOST} are drawn."
    now = sum(1 for job in jobs if job.ordered <= 0)
    return Figure(
        name="jobs",
        title="Jobs by month",
        summary=(
            f"{count(len(jobs), 'job')}, {now} of them ordered in or before "
            f"{month_name(garage.start)}.{kept}"
        ),
        key=(
            ("ring", "ordered"),
            ("line", "on the way"),
            ("dot", "fitted"),
            ("bar", "in force"),
        ),
        svg=_drawn(garage, plan, drawn),
        table=_table(garage, plan, jobs),
    )


def _drawn(garage: Garage, plan: Plan, jobs: Sequence[Job]) -> str:
    height = ROW * len(jobs)
    facts = Facts(garage, plan.choices)
    bars = [_bar(facts, job, ROW * place) for place, job in enumerate(jobs)]
    edges = [
        {"edge": month, "top": 0, "foot": height} for month in range(garage.months + 1)
    ]
    base = values(bars)

    def across(field: str) -> Any:
        return months_across(garage, field)

    return svg(
        [
            values(edges)
            .mark_rule(color=RULE.light)
            .encode(x=across("edge"), y=down("top", height), y2="foot"),
            base.mark_rect(color=MIDDLE.light).encode(
                x=across("fitted"), x2="end", y=down("top", height), y2="foot"
            ),
            base.mark_rule(color=DEEP.light, strokeWidth=2).encode(
                x=across("ordered"), x2="fitted", y=down("middle", height)
            ),
            values(bar for bar in bars if bar["shown"])
            .mark_point(
                color=DEEP.light, filled=False, strokeWidth=2, size=45, opacity=1
            )
            .encode(x=across("ordered"), y=down("middle", height)),
            base.mark_point(color=DEEP.light, filled=True, size=90, opacity=1).encode(
                x=across("fitted"), y=down("middle", height)
            ),
            base.mark_text(align="left", baseline="middle", limit=TEXTS, x=0).encode(
                y=down("label", height), text="name:N"
            ),
        ],
        height=height,
        name="jobs",
        labelled=False,
    )


def _bar(facts: Facts, job: Job, top: int) -> dict[str, Any]:
    """Places of one job; what is ordered lies left of what is fitted that month."""
    garage = facts.garage
    option = garage.option[job.option]
    ordered = 0.0 if job.bought or job.ordered < 0 else job.ordered + 0.25
    return {
        "name": f"{job.option}: {job_target(garage, job)}",
        "shown": not job.bought,
        "ordered": ordered,
        "fitted": job.fitted + 0.65,
        "end": min(facts.end(option), garage.months),
        "label": top + LABEL,
        "middle": top + BAR,
        "top": top + BAR - THICK,
        "foot": top + BAR + THICK,
    }


def _table(garage: Garage, plan: Plan, jobs: Iterable[Job]) -> Table:
    columns = (
        text("Job"),
        text("For", share=2),
        Column("Ordered"),
        Column("Fitted"),
        Column("Lasts until"),
    )
    facts = Facts(garage, plan.choices)
    return Table.of(columns, [tuple(_row(facts, job)) for job in jobs])


def _row(facts: Facts, job: Job) -> Iterator[str]:
    garage = facts.garage
    option = garage.option[job.option]
    yield job.option
    yield job_target(garage, job)
    yield month_name(garage.month(job.ordered))
    yield month_name(garage.month(job.fitted))
    if option.life is None:
        yield "the vehicle goes"
    else:
        yield month_name(garage.month(facts.end(option) - 1))
