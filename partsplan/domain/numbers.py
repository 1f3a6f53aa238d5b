"""Exact numbers that several facts share."""

from fractions import Fraction

ZERO = Fraction(0)
ONE = Fraction(1)
CURED = Fraction(4, 5)
"""A fault counts as cured from this relief on; also the usual core trust."""
