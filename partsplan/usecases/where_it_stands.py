"""Reads a garage and its logbook, and folds what happened."""

from collections.abc import Iterable, Mapping
from pathlib import Path

from partsplan.domain import Entry, Garage, Quote, Standing


def where_it_stands(folder: Path) -> Standing:
    """The garage in ``folder`` after all that its logbook says; without one, nothing.

    Raises
    ------
    InvalidGarage
    DamagedLogbook, LogbookUnavailable
    """
    from partsplan.intake import read_garage
    from partsplan.logbook import beside, read

    garage = read_garage(folder)
    return after(garage, read(beside(folder)))


def after(garage: Garage, entries: Iterable[Entry]) -> Standing:
    """A garage after these entries."""
    from partsplan.ledger import fold

    said, quotes = tuple(entries), quotes_of(garage)
    return Standing(
        garage=garage,
        entries=said,
        quotes=quotes,
        ledger=fold(garage, quotes, said),
    )


def quotes_of(garage: Garage) -> Mapping[str, Quote]:
    """What entries of each option cost where they do not say it."""
    from partsplan.pricing import price

    prices = {option.id: price(garage, option) for option in garage.options}
    return {
        name: Quote(
            landed=one.landed,
            deposit=one.deposit,
            fitting=one.coding + one.consumables,
            core_return=one.core_return,
        )
        for name, one in prices.items()
    }
