"""What is different between two plans of the same or of two garages."""

from collections.abc import Iterable, Iterator

from partsplan.domain import (
    Fault,
    FaultStatus,
    Garage,
    Job,
    JobFact,
    JobShift,
    LedgerLine,
    Month,
    MonthDifference,
    Plan,
    PlanDifference,
    Stage,
    StageDifference,
    ToolBuy,
)
from partsplan.explanation.skips import skips
from partsplan.scoring import worth


def compare_plans(
    garage: Garage, plan: Plan, other_garage: Garage, other_plan: Plan
) -> PlanDifference:
    """What the second plan does otherwise than the first, and what that comes to.

    Both garages have the same currency. Months are compared by the calendar. A job is
    the same if its option is, and otherwise if it mends the same faults, for good in
    both plans or for a while in both.
    """
    pairs = _pairs(plan.jobs, other_plan.jobs)
    kept, matched = {one.option for one, _ in pairs}, {two.option for _, two in pairs}
    shifts = (
        JobShift(before=one, after=two, facts=facts)
        for one, two in pairs
        if (facts := tuple(_facts(garage, one, other_garage, two)))
    )
    left = {one.fault: one for one in skips(garage, plan)}
    other_left = {one.fault: one for one in skips(other_garage, other_plan)}
    return PlanDifference(
        enter=tuple(job for job in other_plan.jobs if job.option not in matched),
        leave=tuple(job for job in plan.jobs if job.option not in kept),
        shifts=tuple(shifts),
        tools_enter=_missing(other_plan, plan),
        tools_leave=_missing(plan, other_plan),
        stages=tuple(_stages(garage, plan, other_plan)),
        money=tuple(_money(garage, plan, other_garage, other_plan)),
        left=tuple(one for fault, one in other_left.items() if fault not in left),
        taken_up=tuple(
            one
            for fault, one in left.items()
            if fault not in other_left and _open(other_garage, fault)
        ),
        otherwise_worth=tuple(
            _otherwise_worth(garage, other_garage, (*plan.jobs, *other_plan.jobs))
        ),
    )


def same_jobs(garage: Garage, plan: Plan, other_garage: Garage, other: Plan) -> bool:
    """Whether two plans order and fit the same options in the same months."""
    return _placed(garage, plan) == _placed(other_garage, other)


def _placed(garage: Garage, plan: Plan) -> frozenset[tuple[str, Month, Month]]:
    return frozenset(
        (job.option, garage.month(job.ordered), garage.month(job.fitted))
        for job in plan.jobs
    )


def _pairs(jobs: Iterable[Job], others: Iterable[Job]) -> list[tuple[Job, Job]]:
    """Jobs that belong together, in the order of the first plan."""
    left = {job.option: job for job in others}
    found = {job.option: left.pop(job.option) for job in jobs if job.option in left}
    for job in jobs:
        if job.option in found:
            continue
        twin = next((one for one in left.values() if _alike(job, one)), None)
        if twin is not None:
            found[job.option] = left.pop(twin.option)
    return [(job, found[job.option]) for job in jobs if job.option in found]


def _alike(job: Job, other: Job) -> bool:
    stand_ins = {one.route is one.route.STAND_IN for one in (job, other)}
    return set(job.faults) == set(other.faults) and len(stand_ins) == 1


def _facts(
    garage: Garage, job: Job, other_garage: Garage, other: Job
) -> Iterator[JobFact]:
    for fact in JobFact:
        values = [getattr(one, fact.value) for one in (job, other)]
        if fact in (JobFact.ORDERED, JobFact.FITTED):
            values = [garage.month(values[0]), other_garage.month(values[1])]
        if values[0] != values[1]:
            yield fact


def _missing(plan: Plan, other: Plan) -> tuple[ToolBuy, ...]:
    """The tools that only the first of two plans buys."""
    bought = {buy.tool for buy in other.tools}
    return tuple(buy for buy in plan.tools if buy.tool not in bought)


def _stages(garage: Garage, plan: Plan, other: Plan) -> Iterator[StageDifference]:
    """Each stage; after one that is not proven no later difference is certain.

    A later bound holds only with the earlier stages as they were reached.
    """
    sure = True
    for stage in garage.priority:
        missing = sum(
            abs(one.stage_bounds.of(stage) - one.stages.of(stage))
            for one in (plan, other)
        )
        before, after = plan.stages.of(stage), other.stages.of(stage)
        yield StageDifference(
            stage=stage,
            before=before,
            after=after,
            certain=sure and (abs(after - before) > missing or not missing),
        )
        sure = sure and (missing == 0 or stage is Stage.WORTH)


def _money(
    garage: Garage, plan: Plan, other_garage: Garage, other_plan: Plan
) -> Iterator[MonthDifference]:
    before = _lines(garage, plan)
    after = _lines(other_garage, other_plan)
    for month in sorted(before | after):
        yield MonthDifference(
            month=month, before=before.get(month), after=after.get(month)
        )


def _lines(garage: Garage, plan: Plan) -> dict[Month, LedgerLine]:
    return {garage.month(line.month): line for line in plan.ledger}


def _open(garage: Garage, fault: str) -> bool:
    return fault in garage.fault and garage.fault[fault].status is FaultStatus.OPEN


def _otherwise_worth(
    garage: Garage, other: Garage, jobs: Iterable[Job]
) -> Iterator[str]:
    """Faults of some job whose months are not worth the same in both garages."""
    for fault in dict.fromkeys(name for job in jobs for name in job.faults):
        months = _months(garage, garage.fault.get(fault))
        if months != _months(other, other.fault.get(fault)):
            yield fault


def _months(garage: Garage, fault: Fault | None) -> dict[Month, object]:
    """Worth of what is left of an open fault in each month, where that is anything."""
    if fault is None or fault.status is not FaultStatus.OPEN:
        return {}
    left = {
        month: figure * (1 - garage.relieved(fault, month))
        for month, figure in enumerate(worth(garage, fault))
    }
    return {garage.month(month): figure for month, figure in left.items() if figure}
