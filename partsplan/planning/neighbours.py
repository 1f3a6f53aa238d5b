"""Parts of a plan to solve again while the rest of it stands still."""

import numpy as np

from partsplan.planning.company import followers
from partsplan.planning.matrix import Flags, Floats, Places
from partsplan.planning.relaxation import Relaxation

SEED = 0
LIKELY = 8.0
"""How much likelier a block is taken where plan and relaxation disagree."""
FEWEST, MOST = 100, 20_000
"""Offers of a part."""
WINDOW = 4
"""Months that are planned anew together."""


class Neighbours:
    """Parts by turns: some blocks with all their months, some months of many blocks.

    Blocks are drawn, those more often where the relaxation would do otherwise. Parts
    grow while they are solved to the end in time, and shrink where they are not.
    """

    def __init__(self, relaxation: Relaxation, size: int) -> None:
        self.relaxation = relaxation
        self._sizes = [size, size]
        self._dice = np.random.default_rng(SEED)
        self._turn = 0
        self._owner = np.zeros(len(relaxation.active), dtype=np.int64)
        for number, block in enumerate(relaxation.blocks):
            self._owner[block.columns] = number

    def part(self, figures: Floats, spread: float) -> Places:
        """Columns to solve again; those that would lose more than ``spread`` are left.

        Hardly a better plan than the one that is known has one of those.
        """
        relaxation = self.relaxation
        able = relaxation.active & ((relaxation.margins() > -spread) | (figures > 0))
        offers = able & relaxation.offers.are
        self._turn = 1 - self._turn
        if self._turn:
            offers &= self._window()
        offers &= self._some_blocks(offers, figures)
        follow = followers(relaxation.matrix, offers, relaxation.offers.are)
        return np.flatnonzero(offers | (follow & able))

    def learn(self, *, solved: bool) -> None:
        """Other sizes after a part that was solved to the end in time, or was not."""
        size = self._sizes[self._turn] * (1.2 if solved else 0.8)
        self._sizes[self._turn] = int(min(MOST, max(FEWEST, size)))

    def _window(self) -> Flags:
        """The offers fitted in a few months on end."""
        fitted = self.relaxation.offers.fitted
        first = self._dice.integers(1 - WINDOW // 2, fitted.max() - WINDOW // 2 + 1)
        window: Flags = (fitted >= first) & (fitted < first + WINDOW)
        return window

    def _some_blocks(self, offers: Flags, figures: Floats) -> Flags:
        """The columns of blocks with as many of these offers as a part may have."""
        blocks = len(self.relaxation.blocks)
        count = np.bincount(self._owner[offers], minlength=blocks)
        apart = offers & (np.abs(figures - self.relaxation.values) > 0.5)
        differs = np.bincount(self._owner[apart], minlength=blocks) > 0
        taken = np.zeros(blocks, dtype=bool)
        there = np.flatnonzero(count)
        if not len(there):
            return offers
        weights = 1.0 + LIKELY * differs[there]
        order = self._dice.choice(
            there, len(there), replace=False, p=weights / weights.sum()
        )
        taken[order[np.cumsum(count[order]) <= self._sizes[self._turn]]] = True
        return taken[self._owner]
