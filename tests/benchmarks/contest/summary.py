"""What the cells say together: who is comparable, how soon, how close, what ratio."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from math import inf, isinf
from statistics import median

from tests.benchmarks.contest.cell import Cell
from tests.benchmarks.contest.events import first_plan, states, time_to

MARKS = (0.01, 0.005, 0.001, 0.0001)
"""Distances from the best bound known. [fraction]"""
AFTER = (10, 30, 60)
AFTER_LONG = (10, 30, 60, 120, 300)
LONG_FROM = 10_000
"""Faults from which a run is looked at for longer."""


@dataclass(frozen=True, slots=True)
class Heat:
    """All contestants at one garage."""

    cells: tuple[Cell, ...]

    @property
    def best_early(self) -> tuple[int, ...] | None:
        """The best figures of the stages before net worth, in the stages' order.

        A plan that breaks a rule sets no mark.
        """
        reached = [one.early for one in self.cells if not one.broken and one.early]
        return min(reached, default=None)

    @property
    def bound(self) -> float:
        """The lowest bound proven with the early stages at their best figures."""
        return min(
            (
                state.bound
                for cell in self.cells
                if _holds(cell, self.best_early)
                for _, state in states(cell.events)
            ),
            default=inf,
        )

    def behind(self, cell: Cell) -> bool:
        """Whether its early stages are worse than the best known, or one is open.

        Its net worth, if it has one, is then that of another problem.
        """
        best = self.best_early
        return cell.early is None or (best is not None and cell.early > best)

    @property
    def refuted(self) -> list[str]:
        """Contestants with a bound below what a legal, comparable plan is worth."""
        best = max(
            (
                cell.most
                for cell in self.cells
                if cell.figures and not cell.broken and not self.behind(cell)
            ),
            default=-inf,
        )
        return [
            cell.contestant
            for cell in self.cells
            if _holds(cell, self.best_early) and cell.after(inf).bound < best - 0.5
        ]

    def first(self, cell: Cell) -> float:
        """The second of its first plan that counts; infinite if there is none."""
        return inf if self.behind(cell) else first_plan(cell.events)

    def time_to(self, cell: Cell, mark: float) -> float:
        """The first second within a mark of the best bound; infinite if never."""
        if self.behind(cell):
            return inf
        return time_to(cell.events, mark, self.bound, cell.most)

    def gap(self, cell: Cell, seconds: float) -> float:
        """Its own gap by then; infinite without a comparable plan. [fraction]"""
        return inf if self.behind(cell) else cell.after(seconds).gap


def heats(cells: Iterable[Cell]) -> list[Heat]:
    """The cells by garage, in the order in which the garages first come."""
    found: dict[tuple[str, int], list[Cell]] = {}
    for cell in cells:
        found.setdefault((cell.task.size, cell.task.seed), []).append(cell)
    return [Heat(tuple(group)) for group in found.values()]


def moments(cell: Cell) -> tuple[int, ...]:
    """The seconds after which a cell is looked at, as far as its time went."""
    after = AFTER_LONG if cell.task.faults >= LONG_FROM else AFTER
    return tuple(one for one in after if one <= cell.task.seconds)


def middle(figures: Sequence[float]) -> float:
    """Their median; infinities count, so that half of them make it infinite."""
    ordered = sorted(figures)
    lower, upper = ordered[(len(ordered) - 1) // 2], ordered[len(ordered) // 2]
    return inf if isinf(upper) else median((lower, upper))


def ratio(rival: float, own: float, least: float = 0.0) -> float | None:
    """A rival's figure over our own; None where neither has one.

    Infinite if only the rival has none, 0 if only we have none. Figures below
    ``least`` count as that: what both are asked for is no race.
    """
    if isinf(own):
        return None if isinf(rival) else 0.0
    if isinf(rival):
        return inf
    own, rival = max(own, least), max(rival, least)
    if own == 0.0:
        return 1.0 if rival == 0.0 else inf
    return rival / own


def ratios(
    found: Iterable[Heat],
    rival: str,
    own: str,
    figure: Callable[[Heat, Cell], float],
    least: float = 0.0,
) -> list[float]:
    """The ratio at each garage that both were at and one of them has a figure for."""
    told = []
    for heat in found:
        by_name = {cell.contestant: cell for cell in heat.cells}
        if rival in by_name and own in by_name:
            one = ratio(figure(heat, by_name[rival]), figure(heat, by_name[own]), least)
            told += [] if one is None else [one]
    return told


def _holds(cell: Cell, best: tuple[int, ...] | None) -> bool:
    """Whether its bound of net worth was proven with these figures held."""
    held = cell.task.held
    early = tuple(held.values()) if held else cell.early
    return early is not None and early == best
