"""Plans against textbook problems of capital budgeting; sources in the data file."""

from fractions import Fraction
from itertools import pairwise
from typing import Any

import pytest

from partsplan.domain import Plan, PlanStatus
from partsplan.planning import plan
from partsplan.verification import violations
from tests.support.published import Published, as_garage, projects, published, taken

PROBLEMS = {one["id"]: one for one in published("capital_budgeting.json")["problems"]}
STOCKCO = PROBLEMS["stockco"]
PLAIN = [name for name, one in PROBLEMS.items() if "rules" not in one]

VARIANTS: dict[tuple[str, str], dict[str, Any]] = {
    ("stockco", "at most two investments"): {"crew": (1, 2, 3, 4), "hands": 2},
    ("stockco", "2 only with 1"): {"after": {2: 1}},
    ("stockco", "2 excludes 4"): {"crew": (2, 4), "hands": 1},
    ("taha", "unspent money moves on to the next year"): {"carry_over": True},
    ("taha", "1 needs 5, 3 needs 5, and not both 2 and 3"): {
        "after": {1: 5, 3: 5},
        "crew": (2, 3),
        "hands": 1,
    },
    ("lorie-savage", "unspent money moves on to the next year"): {"carry_over": True},
    ("lorie-savage", "4 only with 5"): {"after": {4: 5}},
    ("star-oil", "unspent money moves on to the next year"): {"carry_over": True},
}


def solved(
    problem: Any, *, budget: Fraction | None = None, **rules: Any
) -> tuple[Published, Plan]:
    made = as_garage(
        projects(problem["value"], problem["outlay_by_period"]),
        problem["budget_by_period"] if budget is None else [budget],
        **rules,
    )
    found = plan(made.garage, gap=0.0)
    assert isinstance(found, Plan)
    assert found.status is PlanStatus.PROVEN
    assert violations(made.garage, found) == ()
    return made, found


@pytest.mark.parametrize("name", PLAIN)
def test_best_projects_are_the_published_ones(name: str) -> None:
    problem = PROBLEMS[name]
    made, found = solved(problem)
    assert made.optimum(found) == made.bound(found) == problem["optimum"]
    assert taken(found) in problem["optimal_sets_1_based"]


def test_projects_that_need_or_exclude_others_are_the_published_ones() -> None:
    # Hillier and Lieberman, section 12.1: at most one warehouse (3, 4), and a
    # warehouse only with its factory
    problem = PROBLEMS["california"]
    made, found = solved(problem, after={3: 1, 4: 2}, crew=(3, 4), hands=1)
    assert made.optimum(found) == problem["published_optimum"]
    assert taken(found) in problem["optimal_sets_1_based"]


@pytest.mark.parametrize(("name", "change"), VARIANTS)
def test_best_projects_of_a_variant(name: str, change: str) -> None:
    variants = {one["change"]: one for one in PROBLEMS[name]["variants"]}
    made, found = solved(PROBLEMS[name], **VARIANTS[name, change])
    assert made.optimum(found) == variants[change]["optimum"]
    assert taken(found) in variants[change]["optimal_sets_1_based"]


def test_every_variant_of_the_file_is_tried() -> None:
    assert set(VARIANTS) == {
        (name, variant["change"])
        for name, problem in PROBLEMS.items()
        for variant in problem.get("variants", ())
    }


@pytest.mark.parametrize("step", STOCKCO["budget_sweep"], ids=lambda s: s["budget"])
def test_best_projects_at_every_budget(step: Any) -> None:
    made, found = solved(STOCKCO, budget=step["budget"])
    assert made.optimum(found) == step["optimum"]
    assert taken(found) in step["optimal_sets_1_based"]


def test_a_bigger_budget_may_drop_a_job() -> None:
    sweep = [Fraction(budget) for budget in range(3, 20)]
    chosen = [taken(solved(STOCKCO, budget=budget)[1]) for budget in sweep]
    dropped = [
        budget
        for budget, (before, after) in zip(sweep[1:], pairwise(chosen), strict=True)
        if 1 in before and 1 not in after
    ]
    assert dropped == [7, 10, 14]
