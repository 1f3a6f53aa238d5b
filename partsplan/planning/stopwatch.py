"""How much of the time is left; the clock itself is passed in."""

from collections.abc import Callable
from dataclasses import dataclass, field

Now = Callable[[], float]
"""A clock that only goes forward. [s]"""


@dataclass(slots=True)
class Stopwatch:
    """Counts from when it is made.

    Without a clock it only knows the solver's own seconds, as it is told of them.

    Attributes
    ----------
    seconds
        When time is up. [s]
    whole
        The time that this is a part of.
    """

    seconds: float
    now: Now | None = None
    whole: "Stopwatch | None" = None
    _begun: float = field(init=False, default=0.0)
    _told: float = field(init=False, default=0.0)

    def __post_init__(self) -> None:
        if self.now is not None:
            self._begun = self.now()

    def tell(self, seconds: float) -> None:
        """Solver time has passed. [s]"""
        self._told += seconds
        if self.whole is not None:
            self.whole.tell(seconds)

    def part(self, seconds: float) -> "Stopwatch":
        """A part of what is left, at most so much. [s]"""
        return Stopwatch(min(seconds, self.left), self.now, self)

    @property
    def passed(self) -> float:
        """[s]"""
        return self._told if self.now is None else self.now() - self._begun

    @property
    def left(self) -> float:
        """Never below 0. [s]"""
        return max(0.0, self.seconds - self.passed)
