"""Plans against published problems with many budgets and many options a fault."""

from fractions import Fraction
from typing import Any

import pytest

from partsplan.domain import Plan, PlanStatus
from partsplan.planning import plan
from partsplan.verification import violations
from tests.support.published import (
    Item,
    Published,
    as_garage,
    projects,
    published,
    taken,
)

PETERSEN = published("mknap1_petersen.json")["problems"]
KHAN = {one["id"]: one for one in published("mmkp_khan.json")["problems"]}
QUICK = [name for name, one in KHAN.items() if not one["slow"]]
SLOW = [name for name, one in KHAN.items() if one["slow"]]


def solved(made: Published, *, seconds: float, gap: float = 0.0) -> Plan:
    found = plan(made.garage, seconds=seconds, gap=gap)
    assert isinstance(found, Plan)
    assert found.status is PlanStatus.PROVEN
    assert violations(made.garage, found) == ()
    return found


def khan(name: str) -> Published:
    """Every class a fault, every item an option, every resource a month's budget."""
    problem = KHAN[name]
    classes = [
        [Item(value=value, outlays=tuple(use)) for value, *use in items]
        for items in problem["items"]
    ]
    return as_garage(classes, problem["capacity"])


@pytest.mark.parametrize("problem", PETERSEN, ids=lambda one: one["id"])
def test_best_projects_under_ten_budgets(problem: Any) -> None:
    # Petersen, Management Science 13(9), 1967, as in OR-Library's mknap1
    made = as_garage(
        projects(problem["profit"], problem["weights"]), problem["capacity"]
    )
    found = solved(made, seconds=30.0)
    assert made.optimum(found) == problem["published_optimum"]


def test_best_projects_are_those_named_beside_the_first_problem() -> None:
    problem = PETERSEN[0]
    made = as_garage(
        projects(problem["profit"], problem["weights"]), problem["capacity"]
    )
    found = solved(made, seconds=30.0)
    assert taken(found) == problem["chosen_one_optimum"]


@pytest.mark.parametrize("name", QUICK)
def test_best_options_of_every_fault(name: str) -> None:
    # Khan, Li, Manning and Akbar, Studia Informatica Universalis 2(1), 2002
    made, best = khan(name), KHAN[name]["published_optimum"]
    found = solved(made, seconds=90.0, gap=closest_gap(name))
    assert made.optimum(found) == best


@pytest.mark.slow
@pytest.mark.parametrize("name", SLOW)
def test_best_options_of_every_fault_of_a_hard_problem(name: str) -> None:
    made, best = khan(name), KHAN[name]["published_optimum"]
    found = solved(made, seconds=1200.0, gap=closest_gap(name))
    assert made.optimum(found) == best


def test_best_options_are_those_of_the_only_optimum() -> None:
    # I01 has one optimum: items 3 4 1 2 3, counted from 0
    found = solved(khan("I01"), seconds=30.0)
    chosen = sorted(job.option for job in found.jobs)
    assert chosen == ["o1-3", "o2-4", "o3-1", "o4-2", "o5-3"]


def closest_gap(name: str) -> float:
    """Values are whole (or tenths), so a bound within less than one proves them."""
    problem: Any = KHAN[name]
    values: list[Fraction] = [
        value for items in problem["items"] for value, *_ in items
    ]
    steps = max(value.denominator for value in values)
    return 0.9 / steps / float(problem["published_optimum"])
