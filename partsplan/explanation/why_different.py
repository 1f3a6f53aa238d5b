"""Why two plans differ: the fewest inputs that already lead to the second one."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations
from typing import TypeVar

from partsplan.domain import (
    Change,
    Found,
    Garage,
    Input,
    Plan,
    PlanDifference,
    PlanStatus,
    Why,
)
from partsplan.errors import SolverFailed
from partsplan.explanation.difference import same_jobs
from partsplan.explanation.inputs import differing_inputs
from partsplan.explanation.mixing import with_inputs
from partsplan.explanation.whatif import changed
from partsplan.planning import Force, replan

_Part = TypeVar("_Part", Change, Input)
Asked = tuple[Garage, Force]


@dataclass(frozen=True, slots=True, kw_only=True)
class Search:
    """How long to look for an explanation.

    Attributes
    ----------
    seconds
        Longest solver time for all tries together. [s]
    tries
        Most plans that are made.
    gap
        Relative gap at which a plan counts as proven. [fraction]
    """

    seconds: float = 20.0
    tries: int = 16
    gap: float = 1e-4
    threads: int = 1


USUAL = Search()
NOTHING = Force()


def why_changed(
    garage: Garage,
    changes: Sequence[Change],
    other_garage: Garage,
    other_plan: Plan,
    search: Search = USUAL,
) -> Why:
    """Which of several changes a changed plan is due to.

    ``other_garage`` is the garage with all the changes, ``other_plan`` its plan.
    """

    def ask(parts: Sequence[Change]) -> Asked:
        return changed(garage, parts)

    return _why(tuple(changes), ask, other_garage, other_plan, search)


def why_different(
    garage: Garage,
    other_garage: Garage,
    other_plan: Plan,
    difference: PlanDifference,
    search: Search = USUAL,
    *,
    force: Force = NOTHING,
) -> Why:
    """Which of the inputs that differ between two garages the difference is due to.

    Each is tried alone in the first garage, those that have to do with the jobs that
    differ first, then several together, as long as there are time and tries left.
    ``force`` holds for both plans, and so for every try.
    """

    def ask(parts: Sequence[Input]) -> Asked:
        return with_inputs(garage, other_garage, parts), force

    near = _concerned(difference)
    inputs = sorted(
        differing_inputs(garage, other_garage),
        key=lambda one: bool(one.row) and one.row not in near,
    )
    return _why(tuple(inputs), ask, other_garage, other_plan, search)


def _why(
    parts: tuple[_Part, ...],
    ask: Callable[[Sequence[_Part]], Asked],
    other_garage: Garage,
    other_plan: Plan,
    search: Search,
) -> Why:
    """Tries none of the parts, then each alone, then more; all need no try."""
    tries, left = 0, search.seconds
    open_ends = 0  # tries that failed for want of time

    def told(found: Found, some: tuple[_Part, ...] = ()) -> Why:
        return Why(found=found, parts=some, among=len(parts), tries=tries)

    for some in _sets(parts):
        if len(some) == len(parts):
            break
        if tries == search.tries or left <= 0:
            every_one_tried = len(some) > 1
            certain = every_one_tried and not open_ends
            return told(Found.UNEXPLAINED if certain else Found.CUT_SHORT)
        tries += 1
        garage, force = ask(some)
        try:
            plan = replan(
                garage,
                force=force,
                start=other_plan.choices if garage.start == other_plan.start else None,
                seconds=left,
                gap=search.gap,
                threads=search.threads,
            )
        except SolverFailed:
            open_ends += 1
            continue
        if not isinstance(plan, Plan):
            continue
        if same_jobs(garage, plan, other_garage, other_plan):
            return told(Found.EXPLAINED if some else Found.ALIKE, some)
        left = 0.0 if plan.interrupted else left - plan.seconds
        open_ends += plan.status is not PlanStatus.PROVEN
    if open_ends:
        return told(Found.CUT_SHORT)
    return told(Found.EXPLAINED if parts else Found.ALIKE, parts)


def _sets(parts: tuple[_Part, ...]) -> Iterator[tuple[_Part, ...]]:
    for size in range(len(parts) + 1):
        yield from combinations(parts, size)


def _concerned(difference: PlanDifference) -> set[str]:
    """Ids of the options, faults and suppliers of the jobs that differ."""
    jobs = [*difference.enter, *difference.leave]
    for shift in difference.shifts:
        jobs += [shift.before, shift.after]
    return {
        name
        for job in jobs
        for name in (job.option, job.supplier, *job.faults)
        if name is not None
    }
