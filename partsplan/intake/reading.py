"""A folder or a workbook becomes a Garage, or all that is wrong is told at once."""

from collections.abc import Mapping
from dataclasses import replace
from itertools import chain
from pathlib import Path
from typing import Any

from partsplan.domain import ZERO, Garage, Weights
from partsplan.errors import InvalidGarage
from partsplan.intake import checks
from partsplan.intake.book import open_book
from partsplan.intake.columns import TABLES
from partsplan.intake.folder import open_folder
from partsplan.intake.loading import load
from partsplan.intake.settings import Settings
from partsplan.intake.settings_file import read_settings
from partsplan.intake.source import Source

_NOT_ALIKE = ("weights", "rates", "workshop", "money_per_point", "decimal_comma")
"""Settings that are no field of a Garage, or another one."""

POINTS_IN_MEAN_BUDGET = 200
"""Point-months the mean monthly budget is worth, where money_per_point is not given."""


WORKBOOK = ".xlsx"


def read_garage(path: Path) -> Garage:
    """The garage in a folder of garage.toml and CSV tables, or in an .xlsx workbook.

    Blanks are filled; whatever is odd but can be planned with is in its warnings.

    Raises
    ------
    InvalidGarage
        If anything is wrong; it carries every problem of the whole garage.
    """
    return garage_in(opened(path))


def garage_in(source: Source) -> Garage:
    """The garage in a source that is open.

    Raises
    ------
    InvalidGarage
    """
    file = read_settings(source.settings())
    draft, assumed = load(source, file)
    tables = draft.tables.values()
    problems = [
        *source.problems(),
        *file.problems,
        *chain.from_iterable(rows.problems for rows in tables),
        *checks.run(checks.PROBLEMS, draft),
    ]
    if problems:
        raise InvalidGarage(map(source.placed, problems))
    warnings = {
        *source.warnings(),
        *chain.from_iterable(rows.warnings for rows in tables),
        *checks.run(checks.WARNINGS, draft),
    }
    facts: dict[str, Any] = {
        table.name: tuple(table.makes(**row.values) for row in draft.rows(table))
        for table in TABLES
    }
    garage = Garage(
        **_of_settings(file.settings),
        **facts,
        assumed=assumed,
        warnings=tuple(str(source.placed(one)) for one in sorted(warnings)),
    )
    if file.settings.money_per_point is not None:
        return garage
    worth = garage.mean_budget / POINTS_IN_MEAN_BUDGET
    return replace(garage, money_per_point=worth)


def opened(path: Path) -> Source:
    """The folder or the workbook in which a garage is.

    Raises
    ------
    InvalidGarage
        If there is none, or it cannot be read at all.
    """
    is_book = path.is_file() or (path.suffix.lower() == WORKBOOK and not path.is_dir())
    return open_book(path) if is_book else open_folder(path)


def _of_settings(settings: Settings) -> Mapping[str, Any]:
    """What the settings say, as fields of a Garage."""
    same = {
        name: getattr(settings, name)
        for name in type(settings).model_fields
        if name not in _NOT_ALIKE
    }
    return {
        **same,
        "money_per_point": settings.money_per_point or ZERO,
        "weights": Weights(**dict(settings.weights)),
        "rates": settings.minor_rates,
        "mean_temperature": settings.workshop.mean_temperature,
        "coding_tool": settings.workshop.coding_tool,
    }
