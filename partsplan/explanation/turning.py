"""Searches for the value of one thing at which a job would be chosen.

What is best without the job does not depend on the value. What is best with it only
gets better the further it is turned, but where cheaper goods leave an order short of
being sent for free; both sides that are told have been planned all the same. A known
plan with the job gains the same sum with each further step, so the step at which it
would be good enough bounds the search from afar; between that and what was not good
enough the way is halved. Where turning moves no money, a plan can be followed back too.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace
from fractions import Fraction
from math import ceil, floor

from partsplan.domain import (
    Garage,
    Job,
    Plan,
    PlanStatus,
    Stage,
    Stages,
    Threshold,
    Turn,
)
from partsplan.explanation.ties import fits_as_many
from partsplan.planning import Force, Limits, Planner

Left = Callable[[], float]
"""Tells the seconds that are left."""


CLOSE = 20
"""Sides this many times nearer to each other than to ``now`` are close."""


class OutOfTime(Exception):
    """The time was up before the answer was known."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Search:
    """What all searches share.

    Attributes
    ----------
    force
        What brings the job in.
    names
        Whether a job is the one asked about.
    forced
        The best plan with the job forced in.
    left
        Seconds that all searches together still have. [s]
    """

    garage: Garage
    plan: Plan
    force: Force
    names: Callable[[Job], bool]
    forced: Plan
    limits: Limits
    left: Left

    def chosen(self, plan: Plan) -> bool:
        """Whether a plan has the job."""
        return any(map(self.names, plan.jobs))

    def wins(self, forced: Plan) -> bool:
        """Whether a plan with the job is better than any without it."""
        if not self._fits_as_many(forced):
            return False
        return self._key(forced.stages) < self._key(self._best_without)

    def lacks(self, forced: Plan) -> int | None:
        """Net worth that a plan with the job lacks; None if more is lacking."""
        if not self._fits_as_many(forced):
            return None
        counts = self._key(replace(forced.stages, net_worth=0))
        if counts > self._key(replace(self._best_without, net_worth=0)):
            return None
        return max(0, self._best_without.net_worth + 1 - forced.stages.net_worth)

    def with_job(self, garage: Garage, start: Plan) -> Plan | None:
        """The proven best plan with the job in a changed garage.

        Raises
        ------
        OutOfTime
        """
        return self._proven(garage, self.force, start)

    def planned(self, garage: Garage) -> Plan | None:
        """The proven plan for a changed garage, if there is any.

        Raises
        ------
        OutOfTime
        """
        return self._proven(garage, Force(), self.plan)

    def _fits_as_many(self, forced: Plan) -> bool:
        return fits_as_many(self.garage, forced.choices, self.plan.choices)

    @property
    def _best_without(self) -> Stages:
        return replace(self.plan.stages, net_worth=self.plan.bound)

    def _key(self, stages: Stages) -> tuple[int, ...]:
        """Less is better, in the garage's order."""
        return tuple(
            -stages.of(stage) if stage is Stage.WORTH else stages.of(stage)
            for stage in self.garage.priority
        )

    def _proven(self, garage: Garage, force: Force, start: Plan) -> Plan | None:
        left = min(self.left(), self.limits.seconds)
        if left <= 0:
            raise OutOfTime
        limits = replace(self.limits, seconds=left, gap=0.0)
        found = Planner(garage).answer(limits, force=force, start=start.choices)
        if not isinstance(found, Plan):
            return None
        if found.status is not PlanStatus.PROVEN:
            raise OutOfTime
        return found


@dataclass(frozen=True, slots=True, kw_only=True)
class Dial:
    """What is turned, from ``now`` towards ``end`` in whole steps.

    Attributes
    ----------
    change
        The garage with that value.
    gain
        Net worth that a plan gains with each step. [minor units]
    moves_money
        Whether a plan that holds at a value may overspend nearer to ``now``.
    """

    turn: Turn
    option: str | None
    now: Fraction
    end: Fraction
    step: Fraction
    change: Callable[[Fraction], Garage]
    gain: Callable[[Plan], Fraction]
    moves_money: bool

    @property
    def steps(self) -> int:
        """Steps from now to the end; the last may be shorter."""
        return ceil(abs(self.end - self.now) / self.step)

    def value(self, steps: int) -> Fraction:
        """The value after so many steps."""
        way = min(steps * self.step, abs(self.end - self.now))
        return self.now + way if self.end > self.now else self.now - way

    def enough(self, search: Search, plan: Plan, at: int) -> int:
        """Steps from which on a plan, known after ``at`` steps, is good enough."""
        lack, gain = search.lacks(plan), self.gain(plan)
        if lack is None or gain <= 0:
            return at if lack == 0 else self.steps
        if lack:
            return min(self.steps, at + ceil(lack / gain))
        if self.moves_money:
            return at
        surplus = plan.stages.net_worth - search.plan.bound - 1
        return max(1, at - floor(surplus / gain))


def turned(search: Search, dial: Dial) -> Threshold | None:
    """Where the choice turns; None if it cannot be turned that way.

    Both sides of the turn were planned with the job: one is better than every plan
    without it, the other is not.

    Raises
    ------
    OutOfTime
        Before both sides lay close to each other.
    """
    if dial.steps <= 0:
        return None
    plan, near = search.forced, 0
    far, planned = dial.enough(search, plan, 0), False
    if far == dial.steps:
        at_end = search.with_job(dial.change(dial.end), plan)
        if at_end is None or not search.wins(at_end):
            return _told(dial, None, dial.steps)
        far, plan = dial.enough(search, at_end, dial.steps), at_end
        planned = far == dial.steps
    probe = (near + far) // 2 if dial.moves_money else far - 1
    stride = 1
    try:
        while far - near > 1 or not planned:
            probe = probe if far - near > 1 else far
            found = search.with_job(dial.change(dial.value(probe)), plan)
            if found is not None and search.wins(found):
                nearest = max(near + 1, min(probe, dial.enough(search, found, probe)))
                far, planned, plan = nearest, nearest == probe, found
                probe = (near + far) // 2 if dial.moves_money else far - 1
                continue
            near = probe
            if probe == dial.steps:
                return _told(dial, None, dial.steps)
            if probe == far:  # the line was a rounding, or more, too steep
                far = min(dial.steps, far + stride)
                stride *= 2
            elif found is not None:
                nearest = min(far, dial.enough(search, found, probe))
                planned = planned and nearest == far
                far = nearest
            probe = (near + far) // 2
    except OutOfTime:
        if far - near > max(1, far // CLOSE):
            raise
    return _told(dial, far, near)


def _told(dial: Dial, far: int | None, near: int) -> Threshold:
    return Threshold(
        turn=dial.turn,
        option=dial.option,
        now=dial.now,
        at=None if far is None else dial.value(far),
        not_at=dial.value(near),
    )
