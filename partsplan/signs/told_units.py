"""Control units that do not reply, as people write of them."""

import re
from collections.abc import Iterable

from partsplan.catalogue import UnitSign
from partsplan.domain import UNNAMED
from partsplan.signs.names import Names

_SILENT = (
    r"(?:no\s+(?:reply|response|answer|communication|contact)|"
    r"(?:does\s+not|doesn't|did\s+not|didn't)\s+(?:reply|respond|answer)|"
    r"(?:(?:is|was)\s+)?not\s+(?:responding|answering|replying|reachable)|"
    r"can(?:not|\s+not|'t)\s+be\s+reached)"
)
_UNIT = r"(?:control\s+)?(?:unit|module|computer)"
_FROM = r"\s+(?:from|with|of|by)\s+(?:(?:the|an?|this|that|its)\s+)?"


def find_units(text: str, units: Iterable[UnitSign]) -> tuple[str, ...]:
    """Control units that a text says do not reply, each once.

    ``UNNAMED`` stands for one whose name is not told.
    """
    names = Names({word: one.unit for one in units for word in one.words})
    told = re.compile(
        rf"\b{_SILENT}{_FROM}(?:(?P<named>{names.pattern})|(?P<unnamed>{_UNIT}))\b|"
        rf"\b(?:(?P<name>{names.pattern})(?:\s+{_UNIT})?|(?P<no_name>{_UNIT}))"
        rf"(?:\s*[:=-]+)?\s+{_SILENT}\b(?!{_FROM})",
        re.IGNORECASE,
    )
    found = [
        next(names.signs(one["named"] or one["name"] or ""), UNNAMED)
        for line in text.splitlines()
        for one in told.finditer(line)
    ]
    return tuple(dict.fromkeys(found))
