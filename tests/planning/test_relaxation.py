"""The model without whole numbers against published linear-program bounds."""

from dataclasses import replace
from typing import Any

import pytest

from partsplan.planning.demands import demands
from partsplan.planning.model import build
from partsplan.planning.solver import Solver, Tuning
from partsplan.pricing import offers
from tests.support.published import Item, Published, as_garage, projects, published

BUDGETING = published("capital_budgeting.json")["problems"]
PETERSEN = published("mknap1_petersen.json")["problems"]
KHAN = published("mmkp_khan.json")["problems"]
RULES: dict[str, dict[str, Any]] = {
    "california": {"after": {3: 1, 4: 2}, "crew": (3, 4), "hands": 1}
}


def lp_bound(made: Published) -> float:
    """The best net worth if jobs could be taken in part, in the problem's money."""
    model = build(made.garage, offers(made.garage), demands(made.garage))
    model.program.columns[:] = [
        replace(column, integer=False) for column in model.program.columns
    ]
    run = Solver(model.program).maximise(model.worth, Tuning(seconds=10.0, gap=0.0))
    return run.bound / made.scale


@pytest.mark.parametrize("problem", BUDGETING, ids=lambda one: one["id"])
def test_bound_of_a_textbook_problem(problem: Any) -> None:
    made = as_garage(
        projects(problem["value"], problem["outlay_by_period"]),
        problem["budget_by_period"],
        **RULES.get(problem["id"], {}),
    )
    assert lp_bound(made) == pytest.approx(float(problem["lp_bound"]), abs=1e-6)


@pytest.mark.parametrize(
    "problem",
    [one for one in BUDGETING if "lp_bound_with_carry_over" in one],
    ids=lambda one: one["id"],
)
def test_bound_where_unspent_money_moves_on(problem: Any) -> None:
    made = as_garage(
        projects(problem["value"], problem["outlay_by_period"]),
        problem["budget_by_period"],
        carry_over=True,
    )
    bound = float(problem["lp_bound_with_carry_over"])
    assert lp_bound(made) == pytest.approx(bound, abs=1e-6)


@pytest.mark.parametrize("problem", PETERSEN, ids=lambda one: one["id"])
def test_bound_under_ten_budgets(problem: Any) -> None:
    made = as_garage(
        projects(problem["profit"], problem["weights"]), problem["capacity"]
    )
    assert lp_bound(made) == pytest.approx(float(problem["lp_bound"]), abs=1e-5)


@pytest.mark.parametrize("problem", KHAN, ids=lambda one: one["id"])
def test_bound_with_several_options_a_fault(problem: Any) -> None:
    classes = [
        [Item(value=value, outlays=tuple(use)) for value, *use in items]
        for items in problem["items"]
    ]
    made = as_garage(classes, problem["capacity"])
    assert lp_bound(made) == pytest.approx(float(problem["lp_bound"]), abs=1e-3)
