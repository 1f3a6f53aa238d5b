"""Why this job, and why not that one."""

from collections.abc import Callable, Iterator
from dataclasses import replace
from functools import partial

from partsplan.domain import (
    CURED,
    FaultNotOpen,
    FaultStatus,
    Garage,
    Job,
    NoOption,
    PairBars,
    Plan,
    Reason,
    Threshold,
    WaitsFor,
    WhyChosen,
    WhyNot,
)
from partsplan.explanation.chosen import why_chosen
from partsplan.explanation.dominance import dominated
from partsplan.explanation.instead import instead
from partsplan.explanation.prospects import Prospects
from partsplan.explanation.thresholds import budget_turn, liking_turn, price_turn
from partsplan.explanation.turning import Left, OutOfTime, Search
from partsplan.planning import Force, Limits, Planner
from partsplan.planning.links import pairs
from partsplan.pricing.pairs import pair_bar

MOST_MONTHS = 36
"""[months]"""


def subjects(garage: Garage, plan: Plan) -> tuple[str, ...]:
    """All that can be asked about: jobs of the plan, then open faults without one."""
    touched = {fault for job in plan.jobs for fault in job.faults}
    left = [
        fault.id
        for fault in garage.faults
        if fault.status is FaultStatus.OPEN and fault.id not in touched
    ]
    return (*(job.option for job in plan.jobs), *left)


def why(
    planner: Planner, plan: Plan, subject: str, *, limits: Limits, left: Left
) -> tuple[WhyChosen | WhyNot, ...]:
    """The defence of a fault or an option, by planning again with it forced.

    A fault with jobs gets one answer a job. ``left`` tells the seconds that the search
    for prices, points and budgets still has; without any left they are not told.
    """
    garage = planner.garage
    jobs = [job for job in plan.jobs if subject == job.option or subject in job.faults]
    if jobs:
        return tuple(why_chosen(planner, plan, job, limits) for job in jobs)
    if subject in garage.option:
        return (_why_not_option(planner, plan, subject, limits, left),)
    return (_why_not_fault(planner, plan, subject, limits, left),)


def _why_not_fault(
    planner: Planner, plan: Plan, fault: str, limits: Limits, left: Left
) -> WhyNot:
    garage, prospects = planner.garage, Prospects(planner)
    options = garage.options_for[fault]
    if garage.fault[fault].status is not FaultStatus.OPEN:
        return WhyNot(subject=fault)
    if not options:
        return WhyNot(subject=fault, ruled_out=(NoOption(),))
    obstacles = [_obstacle(prospects, one.id) for one in options]
    ruled_out = tuple(one for one in obstacles if one is not None)
    return _why_not(
        planner,
        plan,
        fault,
        force=Force(take=frozenset({fault})),
        names=lambda job: fault in job.faults,
        ruled_out=ruled_out,
        limits=limits,
        left=left,
    )


def _why_not_option(
    planner: Planner, plan: Plan, option: str, limits: Limits, left: Left
) -> WhyNot:
    garage = planner.garage
    statuses = {
        cure.fault: garage.fault[cure.fault].status
        for cure in garage.option[option].fixes
    }
    if FaultStatus.OPEN not in statuses.values():
        fault, status = next(iter(statuses.items()))
        reason = FaultNotOpen(option=option, fault=fault, status=status)
        return WhyNot(subject=option, ruled_out=(reason,))
    obstacle = _obstacle(Prospects(planner), option)
    return _why_not(
        planner,
        plan,
        option,
        force=Force(use=frozenset({option})),
        names=lambda job: job.option == option,
        ruled_out=() if obstacle is None else (obstacle,),
        limits=limits,
        left=left,
    )


def _links_that_bar(planner: Planner, subject: str, limits: Limits) -> Iterator[Reason]:
    """Faults that it comes after, or goes with, and that no plan can do."""
    garage = planner.garage
    faults = [subject]
    if subject in garage.option:
        faults = [cure.fault for cure in garage.option[subject].fixes]
    for fault in faults:
        for before in garage.fault[fault].after:
            if not _uncured(garage, before):
                continue
            if planner.answer(limits, force=Force(take=frozenset({before}))) is None:
                yield WaitsFor(fault=before)
        for pair in pairs(garage.faults):
            if fault not in pair:
                continue
            (other,) = set(pair) - {fault}
            both = Force(take=frozenset({fault, other}))
            if planner.answer(limits, force=both) is None:
                yield PairBars(other=other)


def _uncured(garage: Garage, name: str) -> bool:
    """Whether an open fault was never cured before the plan."""
    fault = garage.fault[name]
    cured = any(one.relief >= CURED for one in fault.fitted)
    return fault.status is FaultStatus.OPEN and not cured


def _obstacle(prospects: Prospects, name: str) -> Reason | None:
    garage = prospects.garage
    option = garage.option[name]
    found = prospects.obstacle(option) or pair_bar(garage, option)
    if found or option.bought:
        return found
    return dominated(garage, option, prospects.of_option)


def _why_not(
    planner: Planner,
    plan: Plan,
    subject: str,
    *,
    force: Force,
    names: Callable[[Job], bool],
    ruled_out: tuple[Reason, ...],
    limits: Limits,
    left: Left,
) -> WhyNot:
    garage = planner.garage
    forced = planner.answer(limits, force=force, start=plan.choices)
    if not isinstance(forced, Plan):
        bars = (*ruled_out, *_links_that_bar(planner, subject, limits))
        return WhyNot(subject=subject, ruled_out=bars)
    search = Search(
        garage=garage,
        plan=plan,
        force=force,
        names=names,
        forced=forced,
        limits=limits,
        left=left,
    )
    thresholds, later, cut_short = _turns(search, subject)
    return WhyNot(
        subject=subject,
        ruled_out=ruled_out,
        instead=instead(garage, plan, forced),
        thresholds=thresholds,
        later=later,
        cut_short=cut_short,
    )


def _turns(
    search: Search, subject: str
) -> tuple[tuple[Threshold, ...], int | None, bool]:
    """What turns the choice, when it comes later, and whether the time ran out."""
    garage = search.garage
    entering = next(job.option for job in search.forced.jobs if search.names(job))
    turns = [partial(price_turn, search, garage.option[entering])]
    if subject in garage.fault:
        turns.append(partial(liking_turn, search, garage.fault[subject]))
    turns.append(partial(budget_turn, search))
    found: list[Threshold] = []
    try:
        for turn in turns:
            if (threshold := turn()) is not None:
                found.append(threshold)
        return tuple(found), _later(search), False
    except OutOfTime:
        return tuple(found), None, True


def _later(search: Search) -> int | None:
    """When the job is fitted if the plan looks twice as far ahead."""
    months = min(MOST_MONTHS, 2 * search.garage.months)
    if months == search.garage.months:
        return None
    found = search.planned(replace(search.garage, months=months))
    if found is None:
        return None
    return min((job.fitted for job in found.jobs if search.names(job)), default=None)
