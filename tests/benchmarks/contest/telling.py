"""How a contestant tells the process that started it what it knows, as it knows it.

It may be killed at any moment, so nothing is kept for the end.
"""

import resource
from collections.abc import Callable
from dataclasses import dataclass
from threading import Lock, Thread
from time import perf_counter, sleep

from partsplan.domain import Choices
from tests.benchmarks.contest.events import Event
from tests.benchmarks.measuring import peak_memory

HEARTBEAT_SECONDS = 0.5
AnyPlan = Choices | tuple[int, ...]
"""Choices, or the columns of the model at 1."""


@dataclass(frozen=True, slots=True)
class Started:
    """The clock runs: the garage is there, the libraries are loaded."""


@dataclass(frozen=True, slots=True)
class Peak:
    """Most memory held so far. [MB]"""

    megabytes: float


@dataclass(frozen=True, slots=True)
class Shown:
    """The best plan so far."""

    plan: AnyPlan


@dataclass(frozen=True, slots=True)
class Ended:
    """How it ended, in words."""

    how: str
    seconds: float


Message = Started | Event | Peak | Shown | Ended


class Teller:
    """A contestant's clock and voice; several threads may use it."""

    def __init__(self, send: Callable[[Message], None]) -> None:
        self._send = send
        self._lock = Lock()
        self._begun = perf_counter()
        self._last: tuple[str, float | None, float | None] | None = None

    @property
    def seconds(self) -> float:
        """Since the clock was started. [s]"""
        return perf_counter() - self._begun

    def start(self) -> None:
        """Start the clock, and tell the memory now and then from here on."""
        self._begun = perf_counter()
        self._say(Started())
        Thread(target=self._beat, daemon=True).start()

    def tell(self, stage: str, value: float | None, bound: float | None) -> None:
        """The best figure and the bound of a stage, where they are news."""
        news = stage, value, bound
        if news != self._last:
            self._last = news
            self._say(Event(self.seconds, *news))

    def show(self, plan: AnyPlan) -> None:
        """The best plan so far."""
        self._say(Shown(plan))

    def end(self, how: str) -> None:
        """The last word."""
        seconds = self.seconds
        self._say(_peak())
        self._say(Ended(how, seconds))

    def _say(self, message: Message) -> None:
        with self._lock:
            self._send(message)

    def _beat(self) -> None:
        while True:
            self._say(_peak())
            sleep(HEARTBEAT_SECONDS)


def _peak() -> Peak:
    return Peak(peak_memory(resource.getrusage(resource.RUSAGE_SELF).ru_maxrss))
