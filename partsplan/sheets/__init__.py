"""CSV files as rows of text, and text as people and spreadsheets take it."""

from partsplan.sheets.characters import check_characters
from partsplan.sheets.formulas import is_formula, protected, unprotected
from partsplan.sheets.quoting import one_line, shown
from partsplan.sheets.tables import Record, Sheet, read_sheet

__all__ = [
    "Record",
    "Sheet",
    "check_characters",
    "is_formula",
    "one_line",
    "protected",
    "read_sheet",
    "shown",
    "unprotected",
]
