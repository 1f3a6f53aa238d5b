"""The form of a trouble code, and the two bytes it travels as.

SAE J2012 / ISO 15031-6: a letter for the part of the vehicle, a digit 0-3, three
hexadecimal digits; a failure type of two hexadecimal digits may follow.
"""

import re

FORM = "[PBCU][0-3][0-9A-F]{3}"
LETTERS = "PCBU"
"""By the two highest bits: 00 P, 01 C, 10 B, 11 U."""

_CODE = re.compile(FORM)
_NO_CODE = 0


def well_formed(text: str) -> bool:
    """Whether a text is a trouble code as it is kept: in capitals, nothing around."""
    return _CODE.fullmatch(text) is not None


def from_two_bytes(digits: str) -> str | None:
    """The code that four hexadecimal digits stand for; None for two empty bytes."""
    value = int(digits, 16)
    if value == _NO_CODE:
        return None
    return f"{LETTERS[value >> 14]}{value >> 12 & 3}{value & 0xFFF:03X}"
