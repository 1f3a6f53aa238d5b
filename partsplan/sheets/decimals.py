"""Exact numbers as text."""

from fractions import Fraction

_FINEST = 12


def decimal(value: Fraction) -> str:
    """An exact number as decimal text, or as ``a/b`` where decimals do not end."""
    scaled = value * 10**_FINEST
    if scaled.denominator != 1:
        return f"{value.numerator}/{value.denominator}"
    sign, digits = "-" if value < 0 else "", f"{abs(scaled.numerator):0{_FINEST + 1}d}"
    fraction = digits[-_FINEST:].rstrip("0")
    return f"{sign}{digits[:-_FINEST]}" + (f".{fraction}" if fraction else "")
