"""The usual cautions, by the part of the vehicle that is worked on."""

from collections.abc import Iterable
from functools import cache

from partsplan.catalogue.tables import Row, read_table
from partsplan.domain import System

ALL_SYSTEMS = "*"


def cautions(systems: Iterable[System] = System) -> tuple[str, ...]:
    """The cautions for any work, and those for work on these systems.

    In file order, each once. Common practice; local codes and licensed practice go
    before them.
    """
    touched = frozenset(systems)
    return tuple(
        text for where, text in _cautions() if where is None or where & touched
    )


@cache
def _cautions() -> tuple[tuple[frozenset[System] | None, str], ...]:
    return read_table("cautions.csv", _caution)


def _caution(row: Row) -> tuple[frozenset[System] | None, str]:
    if row.text("system") == ALL_SYSTEMS:
        return None, row.text("text")
    return frozenset(row.members("system", System)), row.text("text")
