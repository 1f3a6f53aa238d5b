"""The time that is left for something."""

from collections.abc import Callable

Clock = Callable[[], float]
"""Tells seconds since some moment that is always the same."""


def countdown(clock: Clock, seconds: float) -> Callable[[], float]:
    """Tells how much of so many seconds from now is left. [s]"""
    end = clock() + seconds
    return lambda: end - clock()
