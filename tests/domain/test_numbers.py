from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from partsplan.domain.numbers import rounded_ratio


@given(st.integers(-(10**15), 10**15), st.integers(1, 720))
def test_a_ratio_is_rounded_as_a_fraction_is(amount: int, over: int) -> None:
    assert rounded_ratio(amount, over) == round(Fraction(amount, over))


@given(st.integers(-(10**9), 10**9))
def test_halves_go_to_the_even_neighbour(whole: int) -> None:
    assert rounded_ratio(2 * whole + 1, 2) == whole + whole % 2
