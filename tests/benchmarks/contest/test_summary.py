"""Who is comparable, and how figures of several garages are put together."""

from dataclasses import replace
from math import inf

import pytest

from tests.benchmarks.contest.cell import EARLY_STAGES, Cell, Task
from tests.benchmarks.contest.events import Event
from tests.benchmarks.contest.summary import (
    Heat,
    heats,
    middle,
    moments,
    ratio,
    ratios,
)

TASK = Task(faults=12, months=6, seed=1, seconds=60.0, gap=0.0001, threads=2)


def cell(
    name: str,
    early: tuple[int, int, int],
    value: int,
    bound: float,
    *,
    seconds: float = 1.0,
    broken: int = 0,
) -> Cell:
    return Cell(
        task=TASK,
        contestant=name,
        events=[Event(seconds, "worth", value, bound)],
        figures={**dict(zip(EARLY_STAGES, early, strict=True)), "worth": value},
        broken=broken,
    )


GOOD = cell("good", (0, 2, 1), 1000, 1010.0, seconds=2.0)
LATER = cell("later", (0, 2, 1), 1005, 1020.0, seconds=8.0)
LOOSE = cell("loose", (0, 3, 0), 1500, 1500.0)
CHEAT = cell("cheat", (0, 1, 0), 900, 900.0, broken=1)
FLOOR = Cell(
    task=replace(TASK, held={"deadlines": 0, "safety": 2, "mobility": 1}),
    contestant="floor",
    events=[Event(0.1, "worth", None, 1008.0)],
)


def test_the_best_early_stages_are_the_first_in_order_without_a_broken_rule() -> None:
    assert Heat((LOOSE, GOOD, CHEAT)).best_early == (0, 2, 1)
    assert Heat((FLOOR,)).best_early is None


def test_worse_early_stages_make_net_worth_incomparable() -> None:
    heat = Heat((GOOD, LOOSE))
    assert heat.behind(LOOSE)
    assert not heat.behind(GOOD)
    assert (heat.first(LOOSE), heat.gap(LOOSE, 60)) == (inf, inf)
    assert heat.time_to(LOOSE, 0.01) == inf


def test_the_best_bound_is_the_lowest_under_the_best_early_stages() -> None:
    assert Heat((GOOD, LATER, LOOSE, CHEAT)).bound == 1010.0
    assert Heat((GOOD, LATER, FLOOR)).bound == 1008.0


def test_a_relaxation_that_held_other_figures_bounds_nothing() -> None:
    other = replace(FLOOR.task, held={"deadlines": 1, "safety": 2, "mobility": 1})
    assert Heat((GOOD, replace(FLOOR, task=other))).bound == 1010.0


def test_marks_are_measured_from_the_best_bound_known() -> None:
    heat = Heat((GOOD, LATER, FLOOR))
    assert heat.time_to(GOOD, 0.01) == 2.0
    assert heat.time_to(GOOD, 0.005) == inf
    assert heat.time_to(LATER, 0.005) == 8.0
    assert heat.gap(GOOD, 1.9) == inf
    assert heat.gap(GOOD, 10) == pytest.approx(0.01)


def test_a_bound_below_a_legal_plan_is_told() -> None:
    assert Heat((GOOD, LATER, FLOOR)).refuted == []
    low = cell("low", (0, 2, 1), 990, 1004.0)
    assert Heat((GOOD, LATER, low)).refuted == ["low"]


def test_what_ended_without_a_plan_goes_by_what_it_told() -> None:
    told = [
        Event(1.0, "deadlines", 0.0, 0.0),
        Event(2.0, "safety", 4.0, 1.0),
        Event(3.0, "safety", 2.0, 1.0),
    ]
    killed = Cell(task=TASK, contestant="killed", events=told)
    assert killed.early is None
    assert Heat((killed,)).behind(killed)
    killed.events.append(Event(4.0, "mobility", 1.0, 1.0))
    assert killed.early == (0, 2, 1)


def test_cells_are_grouped_by_garage() -> None:
    other = replace(GOOD, task=replace(TASK, seed=2))
    grouped = heats([GOOD, other, LATER])
    assert [heat.cells for heat in grouped] == [(GOOD, LATER), (other,)]


def test_moments_beyond_the_time_are_not_looked_at() -> None:
    assert moments(GOOD) == (10, 30, 60)
    assert moments(replace(GOOD, task=replace(TASK, seconds=20.0))) == (10,)
    long = replace(TASK, faults=10_000, seconds=300.0)
    assert moments(replace(GOOD, task=long)) == (10, 30, 60, 120, 300)


@pytest.mark.parametrize(
    ("figures", "median"),
    [
        ([3.0], 3.0),
        ([1.0, inf, 2.0], 2.0),
        ([inf, 1.0, inf], inf),
        ([1.0, inf], inf),
        ([1.0, 4.0, 2.0, inf], 3.0),
    ],
)
def test_a_median_counts_infinities(figures: list[float], median: float) -> None:
    assert middle(figures) == median


@pytest.mark.parametrize(
    ("rival", "own", "told"),
    [
        (6.0, 2.0, 3.0),
        (1.0, 2.0, 0.5),
        (inf, 2.0, inf),
        (2.0, inf, 0.0),
        (inf, inf, None),
        (0.0, 0.0, 1.0),
        (0.1, 0.0, inf),
    ],
)
def test_a_ratio_is_honest_about_what_never_came(
    rival: float, own: float, told: float | None
) -> None:
    assert ratio(rival, own) == told


def test_what_is_closer_than_asked_is_no_race() -> None:
    assert ratio(0.0002, 0.0, least=0.0001) == 2.0
    assert ratio(0.00005, 0.0, least=0.0001) == 1.0


def test_ratios_are_of_the_garages_that_both_were_at() -> None:
    alone = Heat((replace(GOOD, task=replace(TASK, seed=2)),))
    found = [Heat((GOOD, LATER)), alone]
    assert ratios(found, "later", "good", Heat.first) == [4.0]
