"""Plans that are asked for side by side, each for a garage of its own.

A question is all plain facts, so it can go to another process or machine; a solver's
model could not.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field

from partsplan.domain import Choices, Garage, Needs, Plan
from partsplan.planning import Force, Limits, Planner
from partsplan.verification import Violation, violations


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """A garage to be planned.

    Attributes
    ----------
    start
        Choices of a plan for a like garage, from which the search begins.
    """

    garage: Garage
    limits: Limits
    force: Force = field(default_factory=Force)
    start: Choices | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Reply:
    """What came of a question.

    Attributes
    ----------
    found
        None if no plan does what is forced.
    broken
        What verification has against the plan; such a plan is never to be shown.
    """

    found: Plan | Needs | None
    broken: tuple[Violation, ...] = ()


AskAll = Callable[[Sequence[Question]], Mapping[int, Plan | Needs | None]]
"""Answers by the places of the questions; those that were stopped are missing."""


def reply(question: Question) -> Reply:
    """The best plan for one question, verified.

    Raises
    ------
    KeyboardInterrupt
        If the search was stopped: half a search is no answer among many.
    SolverFailed
    """
    planner = Planner(question.garage)
    found = planner.answer(question.limits, force=question.force, start=question.start)
    if not isinstance(found, Plan):
        return Reply(found=found)
    return Reply(found=found, broken=violations(question.garage, found))
