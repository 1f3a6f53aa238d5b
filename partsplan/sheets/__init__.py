"""CSV files as rows of text, and text as people and spreadsheets take it."""

from partsplan.sheets.characters import check_characters
from partsplan.sheets.csv_text import csv_text
from partsplan.sheets.decimals import decimal
from partsplan.sheets.formulas import is_formula, protected, unprotected
from partsplan.sheets.quoting import one_line, plain, shown, wrong
from partsplan.sheets.tables import Record, Sheet, read_sheet, separator

__all__ = [
    "Record",
    "Sheet",
    "check_characters",
    "csv_text",
    "decimal",
    "is_formula",
    "one_line",
    "plain",
    "protected",
    "read_sheet",
    "separator",
    "shown",
    "unprotected",
    "wrong",
]
