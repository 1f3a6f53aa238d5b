"""A model in the making: the program, and what its columns mean."""

from collections.abc import Iterable
from dataclasses import dataclass, field
from fractions import Fraction
from functools import cached_property

from partsplan.domain import Garage, Offer
from partsplan.planning.program import Program


@dataclass
class Draft:
    """What the rooms that write rows share.

    Attributes
    ----------
    take
        The column of each offer.
    buy
        The column of each tool and buying month.
    ship, free
        The columns of each supplier and ordering month: shipping paid, and free.
    free_rows
        The row of each column of free shipping that asks for enough goods.
    opened
        The column of each access group and fitting month.
    worth
        Net worth as (column, minor units).
    outlays
        Money that leaves in a month, less what comes back, as
        (column, month, minor units).
    efforts
        Own hours as (column, month, hours).
    """

    garage: Garage
    offers: tuple[Offer, ...]
    program: Program = field(default_factory=Program)
    take: list[int] = field(default_factory=list)
    buy: dict[tuple[str, int], int] = field(default_factory=dict)
    ship: dict[tuple[str, int], int] = field(default_factory=dict)
    free: dict[tuple[str, int], int] = field(default_factory=dict)
    free_rows: dict[int, int] = field(default_factory=dict)
    opened: dict[tuple[str, int], int] = field(default_factory=dict)
    worth: list[tuple[int, float]] = field(default_factory=list)
    outlays: list[tuple[int, int, int]] = field(default_factory=list)
    efforts: list[tuple[int, int, Fraction]] = field(default_factory=list)

    @cached_property
    def bundles(self) -> tuple[tuple[int, ...], ...]:
        """Offers of which a plan holds at most one, as places in ``offers``.

        Lasting options that cure the same fault alone exclude each other; every other
        option only excludes its own ordering months. Each offer is in one bundle, and
        links are summed over a bundle.
        """
        found: dict[tuple[str, str], list[int]] = {}
        for place, offer in enumerate(self.offers):
            alone = offer.option.alone if offer.option.lasting else None
            key = ("fault", alone) if alone else ("option", offer.option.id)
            found.setdefault(key, []).append(place)
        return tuple(map(tuple, found.values()))

    def at_most(
        self,
        name: str,
        places: Iterable[int],
        columns: Iterable[int],
    ) -> None:
        """The offers at these places need one of these columns at 1."""
        terms = [(self.take[place], 1.0) for place in places]
        self.program.row(name, [*terms, *((one, -1.0) for one in columns)], high=0.0)
