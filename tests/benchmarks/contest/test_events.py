"""What events say of any moment."""

from math import inf

import pytest

from tests.benchmarks.contest.events import (
    Event,
    State,
    first_plan,
    gap_to,
    state_after,
    time_to,
)

EVENTS = [
    Event(0.5, "safety", 3.0, 1.0),
    Event(1.0, "safety", 2.0, 2.0),
    Event(2.0, "worth", None, 1500.0),
    Event(3.0, "worth", 900.0, 1500.0),
    Event(4.0, "worth", 990.0, None),
    Event(5.0, "worth", 999.0, 1010.0),
    Event(6.0, "worth", 1000.0, 1000.0),
]


def test_an_early_stage_is_no_plan_that_counts() -> None:
    assert first_plan(EVENTS) == 3.0
    assert first_plan(EVENTS[:3]) == inf
    assert state_after(EVENTS, 2.9).gap == inf


@pytest.mark.parametrize(
    ("seconds", "state"),
    [
        (0.9, State()),
        (2.0, State(bound=1500.0)),
        (3.5, State(900.0, 1500.0)),
        (4.0, State(990.0, 1500.0)),
        (5.9, State(999.0, 1010.0)),
        (60.0, State(1000.0, 1000.0)),
    ],
)
def test_a_moment_knows_what_was_told_by_then(seconds: float, state: State) -> None:
    assert state_after(EVENTS, seconds) == state


@pytest.mark.parametrize(
    ("mark", "seconds"), [(0.2, 3.0), (0.0102, 4.0), (0.005, 5.0), (0.0001, 6.0)]
)
def test_a_mark_is_reached_by_the_value_whatever_the_own_bound(
    mark: float, seconds: float
) -> None:
    assert time_to(EVENTS, mark, 1000.0) == seconds


def test_a_mark_that_is_never_reached_is_at_infinity() -> None:
    assert time_to(EVENTS, 0.01, 1200.0) == inf
    assert time_to(EVENTS, 0.01, inf) == inf
    assert time_to([], 0.01, 1000.0) == inf


def test_a_worse_figure_later_takes_nothing_back() -> None:
    restarted = [*EVENTS, Event(7.0, "worth", 500.0, 1600.0)]
    assert state_after(restarted, 8.0) == State(1000.0, 1000.0)


def test_a_figure_above_what_the_last_plan_is_worth_was_never_a_plan() -> None:
    assert state_after(EVENTS, 6.0, most=950.0) == State(950.0, 1000.0)
    assert time_to(EVENTS, 0.01, 1000.0, most=950.0) == inf


@pytest.mark.parametrize(
    ("bound", "value", "gap"),
    [
        (1010.0, 1000.0, 0.01),
        (-990.0, -1000.0, 0.01),
        (0.5, 0.0, 0.5),
        (999.0, 1000.0, 0.0),
        (inf, 1000.0, inf),
        (1000.0, -inf, inf),
    ],
)
def test_a_gap_is_relative_to_the_value(bound: float, value: float, gap: float) -> None:
    assert gap_to(bound, value) == pytest.approx(gap)
