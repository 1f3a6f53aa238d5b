"""What a contestant tells while it runs, and what that says of any moment.

Only the stage of net worth is looked at here: before it begins, nobody knows a plan
that counts, and the gap is infinite.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from math import inf

WORTH = "worth"


@dataclass(frozen=True, slots=True)
class Event:
    """The best figure and the bound of a stage at one moment, as far as known.

    Attributes
    ----------
    seconds
        Since the contestant was called. [s]
    value, bound
        Net worth in the last stage, else a count. [minor units]
    """

    seconds: float
    stage: str
    value: float | None
    bound: float | None


@dataclass(frozen=True, slots=True)
class State:
    """The best net worth and the lowest bound known. [minor units]"""

    value: float = -inf
    bound: float = inf

    @property
    def gap(self) -> float:
        """The gap that the contestant itself can vouch for. [fraction]"""
        return gap_to(self.bound, self.value)


def gap_to(bound: float, value: float) -> float:
    """How far a net worth may be from the best; infinite if either is unknown."""
    if value == -inf or bound == inf:
        return inf
    return max(0.0, (bound - value) / max(1.0, abs(value)))


def states(events: Iterable[Event], most: float = inf) -> Iterator[tuple[float, State]]:
    """Every change of the state, with its second.

    ``most`` is what the last plan is worth when counted again: a higher figure was
    never a plan.
    """
    state = State()
    for event in events:
        if event.stage != WORTH:
            continue
        value = -inf if event.value is None else min(event.value, most)
        bound = inf if event.bound is None else event.bound
        state = State(max(state.value, value), min(state.bound, bound))
        yield event.seconds, state


def state_after(events: Iterable[Event], seconds: float, most: float = inf) -> State:
    """What was known after so many seconds."""
    known = State()
    for moment, state in states(events, most):
        if moment <= seconds:
            known = state
    return known


def first_plan(events: Iterable[Event]) -> float:
    """The second of the first plan that counts; infinite if there is none."""
    return next((at for at, state in states(events) if state.value > -inf), inf)


def time_to(
    events: Iterable[Event], mark: float, bound: float, most: float = inf
) -> float:
    """The first second within ``mark`` of a bound, as a fraction; infinite if never."""
    return next(
        (
            at
            for at, state in states(events, most)
            if gap_to(bound, state.value) <= mark
        ),
        inf,
    )
