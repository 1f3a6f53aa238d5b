"""Sentences for what asks for a job besides its worth."""

from partsplan.domain import (
    ComesBefore,
    FollowsStandIn,
    Garage,
    MakesDrivable,
    MakesSafe,
    MeetsDeadline,
    OneOfPair,
    PairBars,
    Reason,
    SharesAccess,
    SharesOrder,
    WaitsFor,
    WaitsToBeFitted,
)
from partsplan.reports.figures import count, listed, month_name, price


def asked_for(garage: Garage, reason: Reason) -> str:
    """What asks for a job, as a sentence."""
    match reason:
        case WaitsToBeFitted():
            return "It is bought, and a plan fits as many such parts as can be."
        case MeetsDeadline(subject=subject, month=month):
            wanted = f"{_deadline(garage, subject)} in {month_name(month)}"
            return f"Without it {wanted} is missed."
        case MakesSafe(vehicle=vehicle, months=months):
            return (
                f"Without it {garage.vehicle[vehicle].name} must not be driven for "
                f"{count(months, 'more month', 'more months')}."
            )
        case MakesDrivable(vehicle=vehicle, months=months):
            return (
                f"Without it {garage.vehicle[vehicle].name} cannot be driven for "
                f"{count(months, 'more month', 'more months')}."
            )
        case OneOfPair(other=other):
            return f"It is one of a pair with {garage.fault[other].title} ({other})."
        case FollowsStandIn(stand_in=stand_in):
            return f"The stand-in {stand_in} has to come off again."
        case ComesBefore(job=job):
            return f"{job} waits for it."
        case WaitsFor(fault=fault):
            title = garage.fault[fault].title
            return f"It has to wait for {title} ({fault}), which no plan can cure."
        case PairBars(other=other):
            title = garage.fault[other].title
            return (
                f"It is one of a pair with {title} ({other}), which no plan can do "
                "with it, in the same month and by the same route."
            )
        case SharesAccess(access=access, jobs=jobs):
            title = garage.access_group[access].title or access
            return f"{title}: open in that month for {listed(jobs)} as well."
        case SharesOrder(supplier=supplier, saved=saved):
            return (
                f"Its order from {garage.supplier[supplier].name} is sent free of "
                f"charge because of it, which saves {price(garage.currency, saved)}."
            )
    raise TypeError(f"no sentence for {type(reason).__name__}")


def _deadline(garage: Garage, subject: str) -> str:
    milestones = {one.id: one.title or one.id for one in garage.milestones}
    if subject in garage.fault:
        return f"the deadline of {garage.fault[subject].title} ({subject})"
    return f"the milestone {milestones[subject]}"
