"""One plan against another for the same garage: jobs, months, what is lost."""

from fractions import Fraction

from partsplan.domain import (
    Garage,
    Instead,
    Loss,
    Moved,
    Plan,
    PlanStatus,
)
from partsplan.explanation.burden import points_borne


def instead(garage: Garage, plan: Plan, other: Plan) -> Instead:
    """What changes if the other plan is carried out instead of the plan."""
    mine = {job.option: job for job in plan.jobs}
    theirs = {job.option: job for job in other.jobs}
    return Instead(
        enters=tuple(one for one in theirs if one not in mine),
        leaves=tuple(one for one in mine if one not in theirs),
        moved=tuple(
            Moved(option=one, before=job.fitted, after=theirs[one].fitted)
            for one, job in mine.items()
            if one in theirs and theirs[one].fitted != job.fitted
        ),
        loss=loss(garage, plan, other),
    )


def loss(garage: Garage, plan: Plan, other: Plan) -> Loss:
    """What the other plan loses, and whether the plans' gaps leave that open."""
    mine, theirs = plan.stages, other.stages
    counts = (
        theirs.missed_deadlines - mine.missed_deadlines,
        theirs.unsafe_vehicle_months - mine.unsafe_vehicle_months,
        theirs.undrivable_vehicle_months - mine.undrivable_vehicle_months,
    )
    proven = {plan.status, other.status} == {PlanStatus.PROVEN}
    exact = mine.net_worth == plan.bound and theirs.net_worth == other.bound
    apart = mine.net_worth > other.bound or theirs.net_worth > plan.bound
    borne = [sum(points_borne(garage, one.choices)) for one in (plan, other)]
    return Loss(
        missed_deadlines=counts[0],
        unsafe_vehicle_months=counts[1],
        undrivable_vehicle_months=counts[2],
        net_worth=mine.net_worth - theirs.net_worth,
        point_months=Fraction(borne[1] - borne[0]),
        certain=proven if any(counts) else exact or apart,
        worth_certain=exact or apart,
    )
