"""Trouble codes in any text, each once, with what the text says of them."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace

from partsplan.domain import CodeState, FoundCode
from partsplan.signs.code_form import FORM, from_two_bytes
from partsplan.signs.code_states import States

_TOKEN = re.compile(r"[^\s,;|()\[\]{}<>\"'=+*&]+")
_DASHES = str.maketrans(dict.fromkeys("\u2010\u2011\u2012\u2013\u2212", "-"))
_AROUND = "#.:!?-"
_ONE = re.compile(
    rf"(?:[A-Z]+:)?(?P<code>{FORM})(?:[-:](?P<type>[0-9A-F]{{2}}))?",
    re.IGNORECASE | re.ASCII,
)
_PART = re.compile(FORM, re.IGNORECASE | re.ASCII)
_SAYS_BYTES = re.compile(
    r"\b(?:(?:two|2)[- ]bytes?|(?:code|dtc)s? bytes|hex codes|codes in hex)\b"
    r"[^:=]{0,40}[:=]",
    re.IGNORECASE,
)
_WORD = re.compile(r"(?:0x)?([0-9A-F]{4})", re.IGNORECASE | re.ASCII)
_BYTE = re.compile(r"[0-9A-F]{2}", re.IGNORECASE | re.ASCII)


@dataclass(frozen=True, slots=True)
class _Read:
    """One code at its place on a line."""

    at: int
    code: str
    failure_type: str = ""


def find_codes(text: str, *, as_bytes: bool = False) -> tuple[FoundCode, ...]:
    """The codes of a text, in the order in which they first appear.

    In letters they may be small or large, with or without a failure type behind a dash
    or colon; never inside a longer word or a part number. Four hexadecimal digits are
    a code only on a line that says so (``two bytes: 0143``), below a heading that does,
    or, with ``as_bytes``, everywhere.
    """
    found: dict[str, FoundCode] = {}
    states = States()
    below_heading = False
    for line in text.translate(_DASHES).splitlines():
        says = _SAYS_BYTES.search(line)
        start = 0 if as_bytes or below_heading else says.end() if says else None
        read = list(_in_letters(line))
        if start is not None:
            read = sorted([*read, *_in_bytes(line, start)], key=lambda one: one.at)
        said = states.read(line, [one.at for one in read])
        for one, state in zip(read, said, strict=True):
            found[one.code] = _merged(found.get(one.code), one, state)
        if says:
            below_heading = not line[says.end() :].strip()
        elif not line.strip() or line.rstrip().endswith(":"):
            below_heading = False
    return tuple(found.values())


def _in_letters(line: str) -> Iterator[_Read]:
    for token in _TOKEN.finditer(line):
        text = token[0].strip(_AROUND)
        at = token.start() + token[0].find(text)
        if one := _ONE.fullmatch(text):
            start = at + one.start("code")
            yield _Read(start, one["code"].upper(), (one["type"] or "").upper())
            continue
        parts = re.split("[-/]", text)
        if all(_PART.fullmatch(part) for part in parts):
            for part in parts:
                yield _Read(at, part.upper())
                at += len(part) + 1


def _in_bytes(line: str, start: int) -> Iterator[_Read]:
    """Codes as four digits, or as pairs of two; an odd pair spoils its row of pairs."""
    pairs: list[re.Match[str]] = []
    for token in (*_TOKEN.finditer(line, start), None):
        if token and _BYTE.fullmatch(token[0]):
            pairs.append(token)
            continue
        if len(pairs) % 2 == 0:
            for first, second in zip(pairs[::2], pairs[1::2], strict=True):
                yield from _decoded(first.start(), first[0] + second[0])
        pairs = []
        if token and (word := _WORD.fullmatch(token[0])):
            yield from _decoded(token.start(), word[1])


def _decoded(at: int, digits: str) -> Iterator[_Read]:
    if code := from_two_bytes(digits):
        yield _Read(at, code)


def _merged(
    before: FoundCode | None, read: _Read, state: CodeState | None
) -> FoundCode:
    """What was known of a code, and what is read of it now."""
    known = before or FoundCode(code=read.code, times=0)
    states = {*known.states, *([state] if state else [])}
    types = [read.failure_type] if read.failure_type else []
    return replace(
        known,
        states=tuple(one for one in CodeState if one in states),
        failure_types=tuple(dict.fromkeys((*known.failure_types, *types))),
        times=known.times + 1,
    )
