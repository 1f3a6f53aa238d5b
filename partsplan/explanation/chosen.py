"""Why a job is in the plan: what asks for it, and what the next best would be."""

from collections.abc import Iterator

from partsplan.domain import (
    ComesBefore,
    FollowsStandIn,
    Garage,
    Instead,
    Job,
    MakesDrivable,
    MakesSafe,
    MeetsDeadline,
    OneOfPair,
    Plan,
    Reason,
    SharesAccess,
    SharesOrder,
    Stage,
    WaitsToBeFitted,
    WhyChosen,
)
from partsplan.explanation.instead import instead
from partsplan.planning import Force, Limits, Planner
from partsplan.planning.demands import Demand
from partsplan.verification import Facts


def why_chosen(planner: Planner, plan: Plan, job: Job, limits: Limits) -> WhyChosen:
    """What asks for a job, the plan without its option, and that without its faults."""
    garage = planner.garage
    avoiding = planner.answer(
        limits, force=Force(avoid=frozenset({job.option})), start=plan.choices
    )
    leaving = planner.answer(
        limits, force=Force(leave=frozenset(job.faults)), start=plan.choices
    )
    runner_up = by = without = None
    if isinstance(avoiding, Plan):
        runner_up = instead(garage, plan, avoiding)
        by = _instead_of(avoiding, job, runner_up.enters)
    reasons = [*_links(garage, plan, job)]
    if isinstance(leaving, Plan):
        without = instead(garage, plan, leaving)
        reasons = [*_demands(planner, plan, leaving, without), *reasons]
    return WhyChosen(
        option=job.option,
        forced_by=tuple(reasons),
        runner_up=runner_up,
        by=by,
        without=without,
    )


def _instead_of(other: Plan, job: Job, entering: tuple[str, ...]) -> str | None:
    """The option that comes in for the faults of a job in another plan."""
    able = (one for one in other.jobs if set(one.faults) & set(job.faults))
    return next((one.option for one in able if one.option in entering), None)


def _demands(
    planner: Planner, plan: Plan, leaving: Plan, without: Instead
) -> Iterator[Reason]:
    """Deadlines and months that the plan meets only with the job."""
    now, then = (Facts(planner.garage, one.choices) for one in (plan, leaving))
    lost = [
        demand
        for demand in planner.demands
        if _met(now, demand) and not _met(then, demand)
    ]
    if without.loss.missed_deadlines > 0:
        for demand in lost:
            if demand.stage is Stage.DEADLINES:
                month = planner.garage.month(demand.month)
                yield MeetsDeadline(subject=demand.subject, month=month)
    for stage, reason, more in (
        (Stage.SAFETY, MakesSafe, without.loss.unsafe_vehicle_months),
        (Stage.MOBILITY, MakesDrivable, without.loss.undrivable_vehicle_months),
    ):
        vehicles = {demand.subject for demand in lost if demand.stage is stage}
        if more > 0 and len(vehicles) == 1:
            yield reason(vehicle=vehicles.pop(), months=more)


def _met(facts: Facts, demand: Demand) -> bool:
    return all(facts.cured(fault, demand.month) for fault in demand.faults)


def _links(garage: Garage, plan: Plan, job: Job) -> Iterator[Reason]:
    """That it waits, and other jobs of the plan that it hangs together with."""
    if job.bought:
        yield WaitsToBeFitted()
    lasting = garage.option[job.option].lasting
    for other in plan.jobs:
        if other.option == job.option:
            continue
        for fault in other.faults:
            if any(_paired(garage, fault, mine) for mine in job.faults) and lasting:
                yield OneOfPair(other=fault)
        stands_in = not garage.option[other.option].lasting
        if lasting and stands_in and set(other.faults) & set(job.faults):
            yield FollowsStandIn(stand_in=other.option)
        before = {one for fault in other.faults for one in garage.fault[fault].after}
        if before & set(job.faults):
            yield ComesBefore(job=other.option)
    for group in garage.option[job.option].access:
        beside = tuple(
            other.option
            for other in plan.jobs
            if other.fitted == job.fitted
            and other.option != job.option
            and group in garage.option[other.option].access
        )
        if beside:
            yield SharesAccess(access=group, jobs=beside)
    yield from _shared_order(garage, plan, job)


def _paired(garage: Garage, one: str, other: str) -> bool:
    return other in garage.fault[one].pair_with or one in garage.fault[other].pair_with


def _shared_order(garage: Garage, plan: Plan, job: Job) -> Iterator[SharesOrder]:
    """That an order would not be sent for free without the job."""
    for order in () if job.bought else plan.orders:
        if (order.supplier, order.month) != (job.supplier, job.ordered):
            continue
        supplier = garage.supplier[order.supplier]
        shipping = round(supplier.shipping * garage.rate(supplier.currency))
        if order.shipping or not shipping or supplier.free_over is None:
            continue
        enough = round(supplier.free_over * garage.rate(supplier.currency))
        others = order.goods - _goods(garage, job)
        if 0 < others < enough <= order.goods:
            yield SharesOrder(supplier=supplier.id, saved=shipping)


def _goods(garage: Garage, job: Job) -> int:
    option = garage.option[job.option]
    return round(option.price * option.quantity * garage.rate(option.currency))
