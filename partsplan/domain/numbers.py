"""Exact numbers that several facts share."""

from fractions import Fraction

ZERO = Fraction(0)
ONE = Fraction(1)
CURED = Fraction(4, 5)
"""A fault counts as cured from this relief on; also the usual core trust."""


def rounded_ratio(amount: int, over: int) -> int:
    """``amount / over`` rounded half to even, ``over`` above 0.

    The same as rounding a Fraction, at an eighth of its time.
    """
    whole, rest = divmod(amount, over)
    if 2 * rest == over:
        return whole + whole % 2
    return whole + (2 * rest > over)
