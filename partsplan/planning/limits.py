"""How long and how closely to search, and where a search ended."""

from collections.abc import Callable
from dataclasses import dataclass, field

from partsplan.domain import Stage
from partsplan.planning.stopwatch import Now

Progress = Callable[[str, float, float | None, float | None], None]
"""Told the stage, seconds, best figure and bound while a stage is solved.

It may raise KeyboardInterrupt to stop the search and keep the best so far.
"""
COUNT_GAP = 0.99
"""Counts are whole, so a bound closer than one proves them."""
ROUNDING = 1e-6
"""What a bound may be off by for the solver's tolerances."""

LOOSE = 1e-6
"""Tolerance of searches whose plans are counted again."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Limits:
    """How long and how closely to search.

    Attributes
    ----------
    seconds
        Longest search for all stages. [s]
    gap
        Relative gap at which net worth counts as proven. [fraction]
    clock
        Without one only the solver's own seconds count.
    """

    seconds: float
    gap: float
    threads: int = 1
    clock: Now | None = None


@dataclass(slots=True, kw_only=True)
class Optimum:
    """Where the stages ended.

    Attributes
    ----------
    ones
        The whole columns at 1; None before anything was found.
    bounds
        No plan with the earlier stages as held does better.
    proven
        Whether every stage reached its gap.
    seconds
        [s]
    """

    ones: tuple[int, ...] | None
    bounds: dict[Stage, int] = field(default_factory=dict)
    proven: bool = True
    seconds: float = 0.0
    interrupted: bool = False
