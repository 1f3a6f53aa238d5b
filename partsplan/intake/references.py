"""Whatever a cell names must exist."""

from collections.abc import Iterator
from typing import Any

from partsplan.domain import Cure
from partsplan.errors import Problem
from partsplan.intake.columns import TABLES
from partsplan.intake.draft import Draft
from partsplan.intake.suggest import Suggester
from partsplan.sheets.quoting import shown

_ROW_OF = {
    "vehicles": "vehicle",
    "faults": "fault",
    "options": "option",
    "suppliers": "supplier",
    "access": "access group",
    "tools": "tool",
}
"""What a row of each table that is named elsewhere is called."""

_REFERENCES = [
    (table, column) for table in TABLES for column in table.columns if column.refers
]


def known_names(draft: Draft) -> Iterator[Problem]:
    """Vehicles, faults, options, suppliers, access groups and tools that are named.

    A table that could not be read whole may have them, so nothing is said about it.
    """
    ids = {
        name: {row.key[0]: None for row in draft.tables[name].rows} for name in _ROW_OF
    }
    names = {name: Suggester(known) for name, known in ids.items()}
    for table, column in _REFERENCES:
        target = draft.tables[column.refers]
        known = ids[column.refers].keys() | target.stray
        for row, (value,) in draft.having(table, column.name):
            for name in _names(value):
                if target.whole and name not in known:
                    message = (
                        f"no {_ROW_OF[column.refers]} {shown(name)} in "
                        f"{target.file}{names[column.refers].hint(name)}"
                    )
                    yield draft.at(table, row, column.name, message)


def _names(value: Any) -> tuple[str, ...]:
    if isinstance(value, str):
        return (value,)
    return tuple(one.fault if isinstance(one, Cure) else one for one in value)
