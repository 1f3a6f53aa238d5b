"""Garages from and to folders of garage.toml and CSV tables."""

from partsplan.intake.appending import NewRows, append_faults, fault_rows
from partsplan.intake.kept_plan import read_kept_plan
from partsplan.intake.reading import read_garage
from partsplan.intake.starter import write_starter
from partsplan.intake.writing import write_garage

__all__ = [
    "NewRows",
    "append_faults",
    "fault_rows",
    "read_garage",
    "read_kept_plan",
    "write_garage",
    "write_starter",
]
