"""Rows and columns in whole numbers, for a solver that knows no others."""

from fractions import Fraction
from math import ceil, floor, lcm

from partsplan.planning.program import Program, Row

FINEST = 10_000
"""Highest denominator of a fraction in a row."""


def whole_row(row: Row) -> tuple[list[int], int | None, int | None]:
    """Coefficients, low and high side, times the least number that makes them whole.

    Raises
    ------
    ValueError
        If a coefficient is no fraction with a denominator of up to ``FINEST``.
    """
    if all(float(one).is_integer() for one in row.coefficients):
        scale, coefficients = 1, [int(one) for one in row.coefficients]
    else:
        exact = [_fraction(one) for one in row.coefficients]
        scale = lcm(*(one.denominator for one in exact))
        coefficients = [int(one * scale) for one in exact]
    low = None if row.low is None else ceil(_fraction(row.low) * scale)
    high = None if row.high is None else floor(_fraction(row.high) * scale)
    return coefficients, low, high


def highest_values(program: Program) -> list[int]:
    """The highest value of each column.

    An open column is a balance: no row can make it more than all that stands in the
    rows of open columns together.
    """
    open_columns = {
        place for place, one in enumerate(program.columns) if one.high is None
    }
    most = 0.0
    for row in program.rows:
        if open_columns.isdisjoint(row.columns):
            continue
        most += max(abs(row.low or 0.0), abs(row.high or 0.0))
        most += sum(
            abs(coefficient) * (program.columns[column].high or 0.0)
            for column, coefficient in zip(row.columns, row.coefficients, strict=True)
        )
    return [
        ceil(most) if one.high is None else floor(one.high) for one in program.columns
    ]


def _fraction(value: float) -> Fraction:
    found = Fraction(value).limit_denominator(FINEST)
    if float(found) != value:
        raise ValueError(f"expected a fraction of whole numbers, got {value}")
    return found
