"""Plans of garages that carry something from before, against every choice tried."""

from dataclasses import replace

import pytest

from partsplan.domain import Flow, Needs, Plan, Stage
from partsplan.planning import cash, plan, planner
from tests.support.every_choice import check_best, check_figures
from tests.support.reference import best
from tests.support.small_optima import carried_optimum

CHUNK = 25


@pytest.mark.parametrize("first", range(0, 300, CHUNK))
def test_no_choice_beats_the_plan(first: int) -> None:
    for seed in range(first, first + CHUNK):
        try:
            check_best(*carried_optimum(seed))
        except AssertionError as error:
            raise AssertionError(f"carried garage {seed}: {error}") from error


@pytest.mark.parametrize("first", range(0, 50, CHUNK))
def test_no_choice_beats_the_plan_whose_balances_are_columns(
    first: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(cash, "SPARSE_FROM", 0)
    for seed in range(first, first + CHUNK):
        if (made := carried_optimum(seed))[0].carry_over:
            check_best(*made)


@pytest.mark.parametrize("first", range(0, 75, CHUNK))
def test_no_choice_beats_the_plan_of_a_wide_search(
    first: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(planner, "NARROW", 0)
    for seed in range(first, first + CHUNK):
        garage, record = carried_optimum(seed)
        if record is None or garage.priority[-1] is not Stage.WORTH:
            continue
        found = plan(garage, gap=0.0)
        assert isinstance(found, Plan), f"carried garage {seed}"
        figures = tuple(found.stages.of(stage) for stage in garage.priority)
        assert figures == record.figures, f"carried garage {seed}"
        assert found.bound == found.stages.net_worth, f"carried garage {seed}"
        check_figures(garage, found)


@pytest.mark.parametrize("first", range(0, 300, CHUNK))
def test_the_money_it_needs_makes_a_plan_and_one_less_does_not(first: int) -> None:
    for seed in range(first, first + CHUNK):
        poor, record = carried_optimum(seed)
        if record is not None:
            continue
        needs = plan(poor)
        assert isinstance(needs, Needs), f"carried garage {seed}"
        enough, too_little = (
            Flow(month=poor.index(needs.month), back=money)
            for money in (needs.money, needs.money - 1)
        )
        helped = replace(poor, promised=(*poor.promised, enough))
        check_best(helped, best(helped))
        assert isinstance(plan(helped), Plan), f"carried garage {seed}"
        assert best(replace(poor, promised=(*poor.promised, too_little))) is None
