"""One contestant at one garage: what was asked of it, and what came of it."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from math import inf
from typing import Any

from tests.benchmarks.contest.events import WORTH, Event, State, state_after, states

EARLY_STAGES = ("deadlines", "safety", "mobility")
"""The order in which every made-up garage has its stages, net worth last."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Task:
    """A garage and what a contestant may use for it.

    Attributes
    ----------
    seconds
        From the call to the end, the making of the model in it. [s]
    gap
        That is proof enough. [fraction]
    held
        Figures of the early stages, for a contestant that does not look for them.
    """

    faults: int
    months: int
    seed: int
    seconds: float
    gap: float
    threads: int
    held: Mapping[str, int] | None = None

    @property
    def size(self) -> str:
        """Faults and months."""
        return f"{self.faults}x{self.months}"


@dataclass(slots=True, kw_only=True)
class Cell:
    """How a contestant did.

    Attributes
    ----------
    ended
        In words: proven, out of time, killed, crashed or left out.
    took
        From the call to its answer or its end. [s]
    peak
        Most memory its process held, the libraries too. [MB]
    figures
        Of its last plan, by stage, counted again from the offers; None without one.
    broken
        How many rules that plan breaks.
    """

    task: Task
    contestant: str
    ended: str = ""
    took: float = 0.0
    peak: float = 0.0
    events: list[Event] = field(default_factory=list)
    figures: dict[str, int] | None = None
    broken: int | None = None

    @property
    def early(self) -> tuple[int, ...] | None:
        """Figures of the stages before net worth; None where one is unknown.

        A contestant that was ended from outside may have shown no plan: then what it
        told of them is taken.
        """
        figures: Mapping[str, float] = self.figures or {
            event.stage: event.value for event in self.events if event.value is not None
        }
        if not all(stage in figures for stage in EARLY_STAGES):
            return None
        return tuple(round(figures[stage]) for stage in EARLY_STAGES)

    @property
    def most(self) -> float:
        """What its last plan is worth, infinite if it showed none. [minor units]"""
        return self.figures[WORTH] if self.figures else inf

    @property
    def counts(self) -> bool:
        """Whether it came as far as a plan of the last stage."""
        return any(state.value > -inf for _, state in states(self.events))

    def after(self, seconds: float) -> State:
        """What it knew of net worth by then."""
        return state_after(self.events, seconds, self.most)


def read_cell(told: Mapping[str, Any]) -> Cell:
    """A cell from its JSON.

    Raises
    ------
    TypeError, KeyError
        If it is none.
    """
    events = [Event(**one) for one in told["events"]]
    return Cell(**{**told, "task": Task(**told["task"]), "events": events})
