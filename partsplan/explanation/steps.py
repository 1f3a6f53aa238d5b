"""Round values to try, and the one in the middle of two."""

from fractions import Fraction


def round_step(most: Fraction | int) -> Fraction:
    """The largest 1, 2 or 5 times a power of ten that is not above ``most``.

    Raises
    ------
    ValueError
        If ``most`` is not above 0.
    """
    if most <= 0:
        raise ValueError(f"expected more than 0, got {most}")
    power = Fraction(1)
    while power > most:
        power /= 10
    while power * 10 <= most:
        power *= 10
    return max(power * digit for digit in (1, 2, 5) if power * digit <= most)


def snapped(value: Fraction | int, step: Fraction | int) -> Fraction:
    """The multiple of ``step`` that is nearest."""
    return round(Fraction(value) / step) * Fraction(step)


def middle(low: Fraction | int, high: Fraction | int, step: Fraction | int) -> Fraction:
    """The multiple of ``step`` nearest to the middle of two values.

    It lies between them if they are more than a step apart.
    """
    return snapped(Fraction(low + high) / 2, step)
