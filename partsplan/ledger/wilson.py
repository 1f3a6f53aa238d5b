"""How sure a share is that was counted."""

from math import sqrt
from statistics import NormalDist


def wilson(hits: int, cases: int, *, confidence: float) -> tuple[float, float]:
    """Both ends of the interval for a chance, from ``hits`` of one or more cases. [0-1]

    The score interval without correction for continuity: E. B. Wilson, Probable
    inference, the law of succession, and statistical inference, Journal of the American
    Statistical Association 22 (1927), 209-212. It holds well for few cases and for
    shares near 0 and 1, where the usual one is empty.
    """
    z = NormalDist().inv_cdf((1 + confidence) / 2)
    share, spread = hits / cases, z * z / cases
    middle = share + spread / 2
    reach = sqrt(share * (1 - share) * spread + spread * spread / 4)
    low, high = (middle - reach) / (1 + spread), (middle + reach) / (1 + spread)
    return (low if hits else 0.0), (high if hits < cases else 1.0)
