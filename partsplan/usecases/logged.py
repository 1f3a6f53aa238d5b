"""What a garage's logbook says."""

from collections.abc import Mapping
from pathlib import Path

from partsplan.domain import Garage, Ledger, Quote


def logged(folder: Path, garage: Garage) -> Ledger:
    """Where things stand in a garage's folder; nothing happened without a logbook.

    Raises
    ------
    DamagedLogbook, LogbookUnavailable
    """
    from partsplan.ledger import fold
    from partsplan.logbook import beside, read

    return fold(garage, quotes(garage), read(beside(folder)))


def quotes(garage: Garage) -> Mapping[str, Quote]:
    """What each option costs as it is quoted now."""
    from partsplan.pricing import price

    priced = {option.id: price(garage, option) for option in garage.options}
    return {
        name: Quote(
            landed=one.landed,
            deposit=one.deposit,
            fitting=one.coding + one.consumables,
            core_return=one.core_return,
        )
        for name, one in priced.items()
    }
