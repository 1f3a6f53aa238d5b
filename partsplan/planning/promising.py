"""Which offers are likely to matter, by what money and hours seem to be worth."""

from dataclasses import dataclass

import numpy as np
from scipy import sparse

from partsplan.planning.matrix import Flags, Floats, Matrix, Places


@dataclass(frozen=True)
class Offers:
    """What is known of the offers among the columns.

    Attributes
    ----------
    bundle
        The bundle of each column, -1 for those that are no offers.
    fitted
        The fitting month of each column, -1 likewise.
    wanted
        The columns that could meet a demand.
    goods_rows
        Rows that ask for enough goods; they tie all offers of an order together.
    """

    bundle: Places
    fitted: Places
    wanted: Flags
    goods_rows: Places

    @property
    def are(self) -> Flags:
        """The columns that are offers."""
        return self.bundle >= 0


def promising(
    matrix: Matrix, objective: Floats, offers: Offers, prices: Floats, slack: float
) -> Flags:
    """The offers that come within ``slack`` of the best of their bundle.

    An offer earns what it adds by itself and by the months that it serves, less what
    its money and hours are worth at these prices of the common rows. Where a bundle has
    to do with others, an offer only has to be as good as those fitted no later.
    Offers that could meet a demand always promise something.
    """
    earned = objective + _served(matrix, objective, offers)
    earned = earned - matrix.rows[np.flatnonzero(matrix.common_rows)].T @ prices
    tied = _tied(matrix, offers)
    count = len(tied)
    best, best_by_now = np.zeros(count), np.full(count, -np.inf)
    np.maximum.at(best, offers.bundle[offers.are], earned[offers.are])
    kept = offers.wanted.copy()
    for month in range(int(offers.fitted.max(initial=-1)) + 1):
        here = np.flatnonzero(offers.fitted == month)
        bundle = offers.bundle[here]
        np.maximum.at(best_by_now, bundle, earned[here])
        early = earned[here] >= best_by_now[bundle] - slack
        good = tied[bundle] | (earned[here] >= best[bundle] - slack)
        kept[here[early & good]] = True
    return kept


def _served(matrix: Matrix, objective: Floats, offers: Offers) -> Floats:
    """What columns that are no offers would add, for each offer that makes them so."""
    gains = np.where(~offers.are & ~matrix.common_columns, np.maximum(objective, 0), 0)
    rows = matrix.rows[np.flatnonzero(~matrix.common_rows & np.isfinite(matrix.high))]
    plus, minus = rows.maximum(0), (-rows).maximum(0)
    added = minus.T @ (plus @ gains)
    return np.where(offers.are, added, 0)


def _tied(matrix: Matrix, offers: Offers) -> Flags:
    """The bundles that share a row with another bundle."""
    inner = ~matrix.common_rows
    inner[offers.goods_rows] = False
    rows = abs(matrix.rows[np.flatnonzero(inner)])
    count = int(offers.bundle.max(initial=-1)) + 1
    places = np.flatnonzero(offers.are)
    member = sparse.csr_array(
        (np.ones(len(places)), (places, offers.bundle[places])),
        shape=(len(offers.bundle), count),
    )
    named = rows @ member
    named.data = np.ones_like(named.data)
    shared = np.asarray(named.sum(axis=1)).ravel() > 1
    return np.asarray(named.T @ shared.astype(float)).ravel() > 0
