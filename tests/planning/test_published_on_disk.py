"""Published problems as garage folders: written, read back and planned."""

from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from partsplan.domain import Plan
from partsplan.intake import read_garage, write_garage
from partsplan.planning import plan
from tests.support.published import (
    Item,
    Published,
    as_garage,
    projects,
    published,
    taken,
)


def read_back(made: Published, folder: Path) -> Published:
    write_garage(made.garage, folder)
    garage = read_garage(folder)
    assert garage == replace(made.garage, rates=garage.rates)
    return Published(garage=garage, scale=made.scale)


@pytest.mark.parametrize("step", [0, 4, 11, 16])
def test_stockco(step: int, tmp_path: Path) -> None:
    # Winston, Operations Research, 4th ed., section 9.2, example 1
    problem = published("capital_budgeting.json")["problems"][0]
    case: Any = problem["budget_sweep"][step]
    made = read_back(
        as_garage(
            projects(problem["value"], problem["outlay_by_period"]), [case["budget"]]
        ),
        tmp_path,
    )
    found = plan(made.garage, gap=0.0)
    assert isinstance(found, Plan)
    assert made.optimum(found) == case["optimum"]
    assert taken(found) in case["optimal_sets_1_based"]


def test_several_options_a_fault(tmp_path: Path) -> None:
    # Khan, Li, Manning and Akbar, 2002: I01, whose optimum is the only one
    problem = published("mmkp_khan.json")["problems"][0]
    classes = [
        [Item(value=value, outlays=tuple(use)) for value, *use in items]
        for items in problem["items"]
    ]
    made = read_back(as_garage(classes, problem["capacity"]), tmp_path)
    found = plan(made.garage, gap=0.0)
    assert isinstance(found, Plan)
    assert made.optimum(found) == problem["published_optimum"]
    chosen = sorted(job.option for job in found.jobs)
    assert chosen == ["o1-3", "o2-4", "o3-1", "o4-2", "o5-3"]
