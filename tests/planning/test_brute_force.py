"""Plans against a second program that tries every choice of small garages."""

import pytest

from tests.support.every_choice import check_best
from tests.support.small_optima import small_optimum

CHUNK = 25


@pytest.mark.parametrize("first", range(0, 400, CHUNK))
def test_no_choice_beats_the_plan(first: int) -> None:
    for seed in range(first, first + CHUNK):
        try:
            check_best(*small_optimum(seed))
        except AssertionError as error:
            raise AssertionError(f"small garage {seed}: {error}") from error


@pytest.mark.parametrize(
    "seed", [95, 348, 967, 1001, 1342, 1424, 2027, 2171, 2197, 2499]
)
def test_a_start_that_the_solver_hands_back_is_no_plan(seed: int) -> None:
    # HiGHS 1.16 called each of these optimal in some form of the model, and handed back
    # the plan of the stage before
    check_best(*small_optimum(seed))
