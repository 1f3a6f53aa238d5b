"""Columns of a workbook by their letters."""


def letters(number: int) -> str:
    """The letters above a column; the first is 1."""
    from openpyxl.utils import get_column_letter

    return get_column_letter(number)
