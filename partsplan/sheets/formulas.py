"""Text that a spreadsheet would take for a formula; a ' before it keeps it text."""

import re

_STARTS = "=+-@"
_FORMULA = re.compile(r"=|[+\-@][^0-9.]")
_PROTECTED = re.compile(rf"'+(?:{_FORMULA.pattern})")


def protected(text: str) -> str:
    """Text as a spreadsheet may open it: never taken for a formula."""
    return f"'{text}" if is_formula(text) or _is_protected(text) else text


def unprotected(text: str) -> str:
    """The text that ``protected`` was given."""
    return text[1:] if _is_protected(text) else text


def is_formula(text: str) -> bool:
    """Whether a spreadsheet would count instead of showing the text."""
    return text[:1] in _STARTS and bool(_FORMULA.match(text))


def _is_protected(text: str) -> bool:
    return text.startswith("'") and bool(_PROTECTED.match(text))
