"""Text that a spreadsheet would take for a formula; a ' before it keeps it text."""

import re

_FORMULA = re.compile(r"=|[+\-@][^0-9.]")
_COUNTED = re.compile(r"[+\-@](?s:.)")
_NUMBER = re.compile(r"[+\-]?[0-9]*[.,]?[0-9]+")


def protected(text: str) -> str:
    """Text as a spreadsheet may open it: never taken for a formula.

    ``+49-30-1`` is one, too; numbers stay numbers.
    """
    return f"'{text}" if _would_count(text) or _is_protected(text) else text


def unprotected(text: str) -> str:
    """The text that ``protected`` was given."""
    return text[1:] if _is_protected(text) else text


def is_formula(text: str) -> bool:
    """Whether somebody meant a formula, and not a number or a phone number."""
    return bool(_FORMULA.match(text))


def _would_count(text: str) -> bool:
    if is_formula(text):
        return True
    return bool(_COUNTED.match(text)) and not _NUMBER.fullmatch(text)


def _is_protected(text: str) -> bool:
    return text.startswith("'") and _would_count(text.lstrip("'"))
