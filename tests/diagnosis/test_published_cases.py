"""The cases of tests/data/troubleshooting.json, every order tried here.

Model: D. Heckerman, J. S. Breese and K. Rommelse, Decision-theoretic troubleshooting,
Communications of the ACM 38(3), 1995, pp. 49-57; rule: J. B. Kadane and H. A. Simon
1977, as named by T. J. Ottosen and F. V. Jensen (arXiv 1203.3502). The numbers are
cases of this project; no published worked numbers were found.
"""

import json
from fractions import Fraction
from itertools import permutations
from pathlib import Path
from typing import Any

import pytest

from partsplan.diagnosis import diagnose
from partsplan.diagnosis.orders import (
    Probe,
    best_order,
    cost_to_first_find,
    expected_cost,
    ratio_order,
)
from tests.support.suspects import cause, suspecting

FILE = json.loads(
    (Path(__file__).parents[1] / "data" / "troubleshooting.json").read_text(
        encoding="utf-8"
    ),
    parse_float=Fraction,
)
CASES: dict[str, Any] = FILE["cases"]
INDEPENDENT: dict[str, Any] = FILE["independent_causes"]["case"]
EVERY_CHECK = "every_cause_is_checked_before_cure"
LAST_UNCHECKED = "last_remaining_cause_needs_no_check"

Suspects = list[tuple[Fraction, Fraction]]


def suspects(case: dict[str, Any]) -> Suspects:
    """Chance and cost of the check of each cause."""
    return [
        (Fraction(chance), Fraction(cost))
        for chance, cost in zip(case["probability"], case["check_cost"], strict=True)
    ]


def probes(case: dict[str, Any], *, last_unchecked: bool) -> list[Probe]:
    return [
        Probe(chance=chance, cost=cost, spared=cost if last_unchecked else Fraction(0))
        for chance, cost in suspects(case)
    ]


def plainly(found: Suspects, order: tuple[int, ...], checked: int) -> Fraction:
    """Expected cost when the first ``checked`` of an order are checked."""
    return sum(
        (
            (1 - sum((found[one][0] for one in order[:place]), Fraction(0)))
            * found[order[place]][1]
            for place in range(checked)
        ),
        Fraction(0),
    )


def every_order(found: Suspects, checked: int) -> dict[tuple[int, ...], Fraction]:
    return {
        order: plainly(found, order, checked)
        for order in permutations(range(len(found)))
    }


def numbered(order: tuple[int, ...]) -> list[int]:
    return [one + 1 for one in order]


@pytest.mark.parametrize("name", CASES)
def test_every_cause_checked(name: str) -> None:
    case, told = CASES[name], CASES[name][EVERY_CHECK]
    costs = every_order(suspects(case), len(case["probability"]))
    best, second, *_ = sorted(costs.values())
    assert (best, second, max(costs.values())) == (
        told["best"],
        told["second"],
        told["worst"],
    )
    by_chance = tuple(one - 1 for one in told["by_probability_order"])
    assert costs[by_chance] == told["by_probability"]

    found = probes(case, last_unchecked=False)
    order = best_order(found)
    assert numbered(order) == told["best_order"]
    assert expected_cost(found, order) == told["best"]
    assert {one: expected_cost(found, one) for one in costs} == costs


@pytest.mark.parametrize("name", CASES)
def test_the_last_one_left_needs_no_check(name: str) -> None:
    case, told = CASES[name], CASES[name][LAST_UNCHECKED]
    costs = every_order(suspects(case), len(case["probability"]) - 1)
    assert min(costs.values()) == told["best"]

    found = probes(case, last_unchecked=True)
    order = best_order(found)
    assert numbered(order) == told["best_order"]
    assert expected_cost(found, order) == told["best"]
    assert numbered(ratio_order(found)) == told["ratio_order"]
    assert expected_cost(found, ratio_order(found)) == told["ratio_order_cost"]
    assert {one: expected_cost(found, one) for one in costs} == costs


def test_the_rule_alone_falls_into_the_trap() -> None:
    told = CASES["B"][LAST_UNCHECKED]
    assert (told["best"], told["ratio_order_cost"]) == (Fraction("42.5"), 62)


@pytest.mark.parametrize("name", CASES)
def test_a_garage_with_the_same_causes(name: str) -> None:
    case, told = CASES[name], CASES[name][LAST_UNCHECKED]
    garage = suspecting(
        *(
            cause(str(number), chance, int(cost * 100))
            for number, (chance, cost) in enumerate(suspects(case), 1)
        )
    )
    found = diagnose(garage, "f1")
    assert [int(one.cause.cause) for one in found.steps] == told["best_order"]
    assert found.expected == found.checks == told["best"] * 100
    assert [one.checked for one in found.steps][-2:] == [True, False]


def test_independent_causes_up_to_the_first_find() -> None:
    found = probes(INDEPENDENT, last_unchecked=False)
    costs = {
        order: cost_to_first_find(found, order)
        for order in permutations(range(len(found)))
    }
    best, second, *_ = sorted(costs.values())
    assert (best, second, max(costs.values())) == (
        INDEPENDENT["best"],
        INDEPENDENT["second"],
        INDEPENDENT["worst"],
    )
    assert numbered(ratio_order(found)) == INDEPENDENT["best_order"]
    assert costs[ratio_order(found)] == best


def test_a_garage_tells_the_order_for_several_causes() -> None:
    found = diagnose(
        suspecting(
            cause("1", ".5", 4000), cause("2", ".3", 1000), cause("3", ".2", 500)
        ),
        "f1",
    )
    assert [int(one) for one in found.several] == INDEPENDENT["best_order"]
    assert found.first_find == INDEPENDENT["best"] * 100
