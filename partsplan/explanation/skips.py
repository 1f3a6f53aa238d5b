"""Why each open fault that no job touches is left alone."""

from partsplan.domain import (
    CrowdedOut,
    Garage,
    NoOption,
    NoRoomToFit,
    Option,
    Plan,
    Skip,
)
from partsplan.explanation.prospects import Prospects, open_without_job
from partsplan.planning import Planner
from partsplan.pricing import bars


def skips(garage: Garage, plan: Plan) -> tuple[Skip, ...]:
    """A reason for every open fault without a job, once each, in file order.

    What keeps a part that is bought from being fitted comes first, then what rules its
    options out alone; the rest is crowded out.
    """
    prospects = Prospects(Planner(garage))
    touched = {fault for job in plan.jobs for fault in job.faults}
    return tuple(
        _skip(garage, fault, prospects) for fault in open_without_job(garage, touched)
    )


def _skip(garage: Garage, fault: str, prospects: Prospects) -> Skip:
    made = prospects.of_fault.get(fault, [])
    if not made:
        options = sorted(garage.options_for[fault], key=_is_to_be_bought)
        ruled_out = [bar for option in options for bar in bars(garage, option)]
        if not ruled_out:
            return Skip(fault=fault, reason=NoOption())
        return Skip(fault=fault, reason=ruled_out[0], also=tuple(ruled_out[1:]))
    if waiting := [offer for offer in made if offer.option.bought]:
        able = prospects.in_reach(waiting)
        room = NoRoomToFit(option=able[0].option.id) if able else None
        return Skip(fault=fault, reason=room or prospects.out_of_reach(waiting))
    near = prospects.in_reach(made)
    if not near:
        return Skip(fault=fault, reason=prospects.out_of_reach(made))
    best = prospects.best(near)
    if not prospects.demanded(fault) and (reason := prospects.not_worth_it(best)):
        return Skip(fault=fault, reason=reason)
    return Skip(
        fault=fault,
        reason=CrowdedOut(
            option=best.option.id,
            worth=prospects.gain(best),
            cost=prospects.cost(best),
        ),
    )


def _is_to_be_bought(option: Option) -> bool:
    return option.bought is None
