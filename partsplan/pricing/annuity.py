"""Spreading a cost over months of service."""

from math import log, log1p


def monthly_rate(yearly: float) -> float:
    """The monthly rate that compounds to a yearly one: (1 + i)^(1/12) - 1."""
    return float((1 + yearly) ** (1 / 12) - 1)


def capital_recovery(rate: float, periods: float) -> float:
    """A/P = i(1+i)^n / ((1+i)^n - 1), and 1/n at rate 0.

    L. Blank and A. Tarquin, Engineering Economy, chapter 2.
    """
    if rate == 0:
        return 1 / periods
    grown = (1 + rate) ** periods
    return float(rate * grown / (grown - 1))


def periods_for(rate: float, present: float, payment: float) -> float | None:
    """Periods over which a payment recovers a present cost; None if it never does."""
    if payment <= present * rate or present <= 0:
        return None
    if rate == 0:
        return present / payment
    return -log1p(-present * rate / payment) / log(1 + rate)
