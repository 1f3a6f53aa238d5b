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
"""How far from a lamp its "no" or "off" may stand. [characters]"""

MOST_IN_A_ROW = 8
"""Lamps that share one word "lamps"; a bound keeps long lines quick."""


def find_lamps(text: str, lamps: Iterable[LampSign]) -> tuple[str, ...]:
    """Lamps that a text says are lit, or just names, each once.

    One that is said to be off or out, and a switch, bulb or circuit of that name, is no
    lamp that is lit.
    """
    names = Names({word: one.lamp for one in lamps for word in one.words})
    more = rf"(?:\s*(?:,|/|\+|&|\band\b)\s*{names.pattern}){{0,{MOST_IN_A_ROW - 1}}}"
    several = f"{names.pattern}{more}"
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
    before = line[max(0, named.start() - _NEAR) : named.start()]
    clause = _CLAUSE_END.split(line[named.end() : named.end() + _NEAR], maxsplit=1)[0]
    return not (
        _NO.search(before) or _OTHER_PART.match(clause) or _NOT_LIT.search(clause)
    )
