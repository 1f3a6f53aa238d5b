"""Why a plan does not keep what was intended."""

from collections.abc import Callable

from partsplan.domain import (
    CostsMore,
    Departure,
    DepartureReason,
    FaultStatus,
    Garage,
    Intentions,
    LeavesParts,
    NothingLeft,
    NotThatMonth,
    NotWorkedOut,
    Overdue,
    Plan,
    RuledOut,
)
from partsplan.explanation.ties import parts_fitted
from partsplan.planning import Force, Limits, Planner
from partsplan.pricing import bars

MOST = 12
"""Intentions whose keeping is planned for, to find what it costs."""


def wishes(garage: Garage, intentions: Intentions) -> dict[str, int]:
    """The ordering month that each intention asks for; what is overdue, the first."""
    return {
        option: max(0, garage.index(month))
        for option, month in intentions.orders.items()
        if option in garage.option and not garage.option[option].bought
    }


def departures(
    planner: Planner,
    plan: Plan,
    intentions: Intentions,
    limits: Limits,
    left: Callable[[], float],
) -> tuple[Departure, ...]:
    """The intentions that the plan does not keep, by the month intended.

    What keeping one would cost is found by planning with it held, for as long as time
    is ``left`` [s].

    Raises
    ------
    SolverFailed
    """
    garage, found = planner.garage, []
    asked = wishes(garage, intentions)
    tries = 0
    for option, month in sorted(intentions.orders.items(), key=lambda one: one[::-1]):
        if option in garage.option and garage.option[option].bought:
            continue
        ordered = plan.choices.orders.get(option)
        if ordered is not None and garage.month(ordered) == month:
            continue
        reason = _told(garage, option)
        if reason is None and ordered is not None and ordered == asked[option]:
            reason = Overdue()
        if reason is None:
            tries += 1
            enough = tries <= MOST and left() > 0
            reason = (
                _cost(planner, plan, option, asked[option], limits)
                if enough
                else NotWorkedOut()
            )
        now = None if ordered is None else garage.month(ordered)
        found.append(Departure(option=option, planned=month, now=now, reason=reason))
    return tuple(found)


def _told(garage: Garage, option: str) -> DepartureReason | None:
    """What needs no plan to be known."""
    if option not in garage.option:
        return NothingLeft()
    known = garage.option[option]
    faults = [garage.fault[cure.fault] for cure in known.fixes]
    if all(fault.status is not FaultStatus.OPEN for fault in faults):
        return NothingLeft()
    if ruled_out := bars(garage, known):
        return RuledOut(reason=ruled_out[0])
    return None


def _cost(
    planner: Planner, plan: Plan, option: str, month: int, limits: Limits
) -> DepartureReason:
    force = Force(order=frozenset({(option, month)}))
    held = planner.answer(limits, force=force, start=plan.choices)
    if not isinstance(held, Plan):
        return NotThatMonth()
    if parts := _left_over(planner.garage, plan, held):
        return LeavesParts(parts=parts)
    for stage in planner.garage.priority:
        by = abs(held.stages.of(stage) - plan.stages.of(stage))
        if by:
            return CostsMore(stage=stage, by=by)
    return CostsMore(stage=planner.garage.priority[-1], by=0)


def _left_over(garage: Garage, plan: Plan, held: Plan) -> tuple[str, ...]:
    """Parts that only the plan fits, if the other one fits fewer."""
    fitted, kept = (parts_fitted(garage, one.choices) for one in (plan, held))
    if kept >= fitted:
        return ()
    there = {job.option for job in held.jobs}
    return tuple(
        job.option for job in plan.jobs if job.bought and job.option not in there
    )
