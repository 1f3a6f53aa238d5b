"""Round values to try."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from partsplan.explanation.steps import middle, round_step

POSITIVE = st.fractions(Fraction(1, 10**6), 10**9)


@pytest.mark.parametrize(
    ("most", "step"),
    [
        (220, 200),
        (199, 100),
        (5, 5),
        (1, 1),
        (Fraction(3, 500), Fraction(1, 200)),
        (Fraction(1, 1000), Fraction(1, 1000)),
    ],
)
def test_a_step_is_round_and_not_above(most: Fraction | int, step: Fraction) -> None:
    assert round_step(most) == step


@given(POSITIVE)
def test_a_step_is_never_far_below(most: Fraction) -> None:
    assert most / Fraction(5, 2) < round_step(most) <= most


@pytest.mark.parametrize("most", [0, -1])
def test_there_is_no_step_of_nothing(most: int) -> None:
    with pytest.raises(ValueError, match="more than 0"):
        round_step(most)


@given(POSITIVE, POSITIVE, POSITIVE)
def test_the_middle_lies_between_values_more_than_a_step_apart(
    low: Fraction, extra: Fraction, step: Fraction
) -> None:
    high = low + step + extra
    found = middle(low, high, step)
    assert low < found < high
    assert (found / step).denominator == 1
