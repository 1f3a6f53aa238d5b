"""Characters that a cell may hold."""

import re

from partsplan.sheets.quoting import wrong

_CONTROL = re.compile(r"[\x00-\x1f\x7f-\x9f]")


def check_characters(text: str, *, many_lines: bool = False) -> None:
    """Nothing that could garble a terminal or a file; raises ValueError."""
    if text.isprintable():
        return
    allowed = "\n\t" if many_lines else ""
    for found in _CONTROL.finditer(text):
        if found[0] in allowed:
            continue
        if found[0] == "\n":
            raise wrong("one line", text)
        raise wrong("no control characters", text)
