"""Cuts for plans that a solver's tolerance lets through, though they overspend.

With sums of billions of minor units a column at 1 - 1e-10 hides a whole unit.
"""

from collections import defaultdict
from collections.abc import Iterable
from fractions import Fraction

from partsplan.domain import LedgerLine
from partsplan.planning.model import Model

Cut = tuple[list[tuple[int, float]], float]
"""Terms, and the most that they may be."""


def cover(
    model: Model, ones: tuple[int, ...], ledger: tuple[LedgerLine, ...]
) -> Cut | None:
    """A row that forbids what breaks a month's money or hours; None if nothing does.

    Valid for every plan: what is taken of that month cannot all be taken again, unless
    something more brings money back.
    """
    garage = model.garage
    for line, hours in zip(ledger, garage.monthly_hours, strict=True):
        if line.balance < garage.reserve:
            first = 0 if garage.carry_over else line.month
            return _cut(model.outlays, ones, range(first, line.month + 1))
        if line.hours > hours:
            return _cut(model.efforts, ones, range(line.month, line.month + 1))
    return None


def _cut(
    taken: Iterable[tuple[int, int, int | Fraction]],
    ones: tuple[int, ...],
    months: range,
) -> Cut:
    sums: dict[int, int | Fraction] = defaultdict(int)
    for column, month, amount in taken:
        if month in months:
            sums[column] += amount
    at_one = set(ones)
    taking = [one for one, sum_ in sums.items() if sum_ > 0 and one in at_one]
    helping = [one for one, sum_ in sums.items() if sum_ < 0 and one not in at_one]
    terms = [(one, 1.0) for one in taking] + [(one, -1.0) for one in helping]
    return terms, len(taking) - 1.0
