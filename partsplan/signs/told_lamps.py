"""Warning lamps, as people write of them."""

import re
from collections.abc import Iterable

from partsplan.catalogue import LampSign
from partsplan.signs.names import Names

_LAMP = r"(?:lamps?|lights?|telltales?)"
_KIND_OF_LAMP = r"(?:warning|control|malfunction|indicator)"
_NOT_LIT = re.compile(
    r"\b(?:off|out|not|never|ok|okay|dark|goes|went)\b", re.IGNORECASE
)
_NO = re.compile(r"\b(?:no|neither|without)\s+(?:\S+\s+){0,2}$", re.IGNORECASE)
_OTHER_PART = re.compile(
    r"\s+(?:switch|bulb|relay|circuit|fuse|sensor|socket|control|output)",
    re.IGNORECASE,
)
_CLAUSE_END = re.compile(r"[.,;!?()]|\b(?:and|but)\b", re.IGNORECASE)
_NEAR = 60
"""How far before a lamp its "no" may stand. [characters]"""


def find_lamps(text: str, lamps: Iterable[LampSign]) -> tuple[str, ...]:
    """Lamps that a text says are lit, or just names, each once.

    One that is said to be off or out, and a switch, bulb or circuit of that name, is no
    lamp that is lit.
    """
    names = Names({word: one.lamp for one in lamps for word in one.words})
    several = rf"{names.pattern}(?:\s*(?:,|/|\+|&|\band\b)\s*{names.pattern})*"
    forms = (
        rf"\b(?P<names>{several})\s+(?:{_KIND_OF_LAMP}\s+)?{_LAMP}\b",
        rf"\b{_LAMP}(?:\s+(?:lit|on))*\s*[:=]\s*(?P<names>{several})\b",
    )
    found: list[tuple[int, int, str]] = []
    for number, line in enumerate(text.splitlines()):
        for form in forms:
            for one in re.finditer(form, line, re.IGNORECASE):
                if _is_lit(line, one):
                    place = number, one.start("names")
                    found += [(*place, lamp) for lamp in names.signs(one["names"])]
    found.sort(key=lambda one: one[:2])
    return tuple(dict.fromkeys(lamp for _, _, lamp in found))


def _is_lit(line: str, named: re.Match[str]) -> bool:
    end = named.end()
    if _OTHER_PART.match(line, end):
        return False
    if _NO.search(line[max(0, named.start() - _NEAR) : named.start()]):
        return False
    clause = _CLAUSE_END.search(line, end)
    return not _NOT_LIT.search(line, end, clause.start() if clause else len(line))
