"""How often Python looks for garbage."""

import gc

SELDOM = (100_000, 50, 50)
"""Thresholds of the three generations, see ``gc.set_threshold``."""


def collect_seldom() -> None:
    """Look less often for garbage that refers to itself.

    A big garage is a million facts that stay to the end and never refer to each other
    in circles; to look through them again and again took half the time of pricing.
    """
    gc.set_threshold(*SELDOM)
