"""What stands in a cell of a workbook, as the text that a CSV file would have there."""

from decimal import Decimal

from partsplan.intake.cells import Kind, Sort
from partsplan.sheets.contents import DIGITS, Content, Dated, Wrong
from partsplan.sheets.formulas import protected

_DATES = (Sort.MONTH, Sort.DAY)
_NUMBERS = (Sort.NUMBER, Sort.MONEY)


class Unusable(str):
    """Stands for a cell whose column cannot take what it holds; says what that is."""


def as_text(content: Content | None, kind: Kind) -> str:
    """The text of a cell in a column of that kind.

    A number is its digits, yes and no are words, and a date is its month where a month
    is expected; nothing else becomes something else without a word.
    """
    if content is None:
        return ""
    if isinstance(content, str):
        return protected(content)
    if isinstance(content, bool):
        return (
            yes_no(content)
            if kind.sort is Sort.YES_NO
            else Unusable(str(content).upper())
        )
    if isinstance(content, Decimal):
        return _number(content, kind)
    if isinstance(content, Dated):
        return _date(content, kind)
    return Unusable(content.what)


def any_text(content: Content | None) -> str:
    """The text of a cell in a column that nobody reads."""
    if isinstance(content, bool):
        return yes_no(content)
    if isinstance(content, Decimal):
        return digits(content)
    if isinstance(content, Dated):
        return content.day.isoformat()
    if isinstance(content, Wrong):
        return content.what
    return protected(content or "")


def digits(number: Decimal) -> str:
    """A number as plain decimal text."""
    text = f"{number:f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def yes_no(value: bool) -> str:
    """The word for a yes or no."""
    return "yes" if value else "no"


def _number(number: Decimal, kind: Kind) -> str:
    if kind.sort in _DATES:
        return Unusable(f"the number {digits(number)}")
    if kind.sort not in _NUMBERS and abs(number) >= 10**DIGITS:
        return Unusable(
            f"a number of which only {DIGITS} digits are kept; make the cell text, and "
            "write it again"
        )
    return digits(number)


def _date(content: Dated, kind: Kind) -> str:
    day = content.day.isoformat()
    if kind.sort not in _DATES:
        return Unusable(f"the date {day}")
    return day[:7] if kind.sort is Sort.MONTH or content.month_only else day
