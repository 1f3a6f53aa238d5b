"""Garages from and to folders of garage.toml and CSV tables, and workbooks."""

from partsplan.intake.appending import NewRows, append_faults, fault_rows
from partsplan.intake.book import NAMES as SHEETS
from partsplan.intake.conversion import folder_of, starter_workbook, workbook_of
from partsplan.intake.kept_plan import read_kept_plan
from partsplan.intake.reading import read_garage
from partsplan.intake.starter import write_starter
from partsplan.intake.writing import write_garage, write_texts

__all__ = [
    "SHEETS",
    "NewRows",
    "append_faults",
    "fault_rows",
    "folder_of",
    "read_garage",
    "read_kept_plan",
    "starter_workbook",
    "workbook_of",
    "write_garage",
    "write_starter",
    "write_texts",
]
