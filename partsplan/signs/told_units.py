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
    forms = (
        rf"\b{_SILENT}{_FROM}(?P<unit>{names.pattern})\b",
        rf"\b(?P<unit>{names.pattern})(?:\s+{_UNIT})?(?:\s*[:=-]+)?\s+{_SILENT}\b",
        rf"\b{_SILENT}{_FROM}(?P<unit>{_UNIT})\b",
        rf"\b(?P<unit>{_UNIT})(?:\s*[:=-]+)?\s+{_SILENT}\b",
    )
    found: list[str] = []
    for line in text.splitlines():
        told: list[re.Match[str]] = []
        for form in forms:
            told += [
                one
                for one in re.finditer(form, line, re.IGNORECASE)
                if not any(_overlap(one, other) for other in told)
            ]
        for one in sorted(told, key=lambda match: match.start()):
            found += list(names.signs(one["unit"]))[:1] or [UNNAMED]
    return tuple(dict.fromkeys(found))


def _overlap(one: re.Match[str], other: re.Match[str]) -> bool:
    return one.start() < other.end() and other.start() < one.end()
