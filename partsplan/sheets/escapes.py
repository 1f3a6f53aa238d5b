"""Characters that the XML of a workbook cannot hold, as ``_xHHHH_``.

ECMA-376 part 1, 22.9.2.19 (ST_Xstring): such an escape stands for the character of that
number, so text that only looks like one has its first ``_`` escaped.
"""

import re

_UNSAFE = re.compile(
    r"_(?=x[0-9A-Fa-f]{4}[_\x00-\x1f\ufffe\uffff])"
    r"|[\x00-\x08\x0b-\x1f\ufffe\uffff]"
)
_ESCAPE = re.compile(r"_x(00[01][0-9A-Fa-f]|005[Ff]|[Ff]{3}[EeFf])_")
"""Only what programs do escape: openpyxl has already undone some escapes of ``_``."""


def escaped(text: str) -> str:
    """Text as a cell of a workbook holds it."""
    return _UNSAFE.sub(lambda found: f"_x{ord(found[0]):04X}_", text)


def unescaped(text: str) -> str:
    """The text that a cell stands for."""
    return _ESCAPE.sub(lambda found: chr(int(found[1], 16)), text)
