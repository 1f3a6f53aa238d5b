"""From a relaxation to a plan: what it is sure of is held, the rest is solved whole."""

import numpy as np

from partsplan.planning.company import followers
from partsplan.planning.matrix import Floats, Places
from partsplan.planning.relaxation import WHOLE, Relaxation


def unsure(relaxation: Relaxation, count: int, plan: Floats | None = None) -> Places:
    """The columns that the relaxation is least sure about, and what follows from them.

    First the whole columns that it splits, then those whose margin is smallest, up to
    the count; and all in which it differs from a plan.
    """
    matrix, values = relaxation.matrix, relaxation.values
    split = np.abs(values - np.round(values)) > WHOLE
    doubt = np.where(split, -1.0, np.abs(relaxation.margins()))
    whole = np.flatnonzero(relaxation.active & matrix.whole)
    order = whole[np.argsort(doubt[whole], kind="stable")]
    chosen = np.zeros(len(values), dtype=bool)
    chosen[order[:count]] = True
    if plan is not None:
        chosen |= matrix.whole & (np.abs(plan - values) > 0.5)
    follow = followers(matrix, chosen, relaxation.offers.are)
    return np.flatnonzero(chosen | (follow & relaxation.active))
