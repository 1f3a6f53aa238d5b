"""Rows in whole numbers say the same as before."""

import pytest

from partsplan.planning.program import Program, Row
from tests.benchmarks.contest.whole_rows import highest_values, whole_row


def row(coefficients: tuple[float, ...], low: float | None, high: float | None) -> Row:
    return Row("row", tuple(range(len(coefficients))), coefficients, low, high)


@pytest.mark.parametrize(
    ("given", "whole"),
    [
        (row((1.0, -250.0), None, 0.0), ([1, -250], None, 0)),
        (row((0.25, 1.5), None, 12.0), ([1, 6], None, 48)),
        (row((0.5, 1 / 3), 1.0, None), ([3, 2], 6, None)),
        (row((1.0, 2.0), 0.5, 2.5), ([1, 2], 1, 2)),
    ],
)
def test_a_row_is_scaled_by_the_least_number_that_makes_it_whole(
    given: Row, whole: tuple[list[int], int | None, int | None]
) -> None:
    assert whole_row(given) == whole


def test_a_row_that_no_small_number_makes_whole_is_refused() -> None:
    with pytest.raises(ValueError, match="fraction"):
        whole_row(row((2**0.5,), None, 1.0))


def test_a_balance_may_be_as_high_as_all_money_together() -> None:
    program = Program()
    job = program.binary("job")
    before = program.share("balance of 0", high=None)
    after = program.share("balance of 1", high=None)
    program.row("money of 0", [(before, 1.0), (job, -30.0)], low=100.0, high=100.0)
    program.row("money of 1", [(after, 1.0), (before, -1.0)], low=50.0, high=50.0)
    program.row("elsewhere", [(job, 1000.0)], high=1000.0)
    assert highest_values(program) == [1, 180, 180]
