"""Kinds of cells: what may stand in one, and how it is written back."""

import re
from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import date
from enum import IntEnum, StrEnum, auto
from fractions import Fraction
from functools import lru_cache
from typing import Any

from partsplan.domain import LONG_AGO, Currency, Month
from partsplan.intake.suggest import hint
from partsplan.sheets.decimals import decimal
from partsplan.sheets.quoting import LONGEST_SHOWN, plain, shown, wrong

LONGEST_ID = 64
"""[characters]"""

FEW = 10
"""Whole numbers of a range that are still listed one by one."""

REMEMBERED = 4096
"""Numbers that a kind keeps; most cells of a long table say what others said."""

_NUMBER = re.compile(r"-?[0-9]{1,12}(\.[0-9]{1,12})?|-?[0-9]{1,30}/0*[1-9][0-9]{0,29}")
_WHOLE = re.compile(r"-?[0-9]{1,9}")
_DAY = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")


class Sort(StrEnum):
    """What a cell of a workbook holds where a CSV file has nothing but text."""

    TEXT = auto()
    NUMBER = auto()
    MONEY = auto()
    MONTH = auto()
    DAY = auto()
    YES_NO = auto()


@dataclass(frozen=True, slots=True)
class Kind:
    """What may stand in a cell.

    Attributes
    ----------
    expects
        What is expected, as people are told.
    read
        The value of a text that is not blank, given the currency of the cell; raises
        ValueError with a message for its owner.
    write
        The text that reads back as the value.
    many_lines
        Whether its text may hold line ends and tabs.
    nothing
        What says that the cell is empty on purpose, where a blank one may be filled.
    sort
        What it is in a workbook.
    words
        All that it may hold, where that is a closed list.
    """

    expects: str
    read: Callable[[str, Currency], Any]
    write: Callable[[Any, Currency], str]
    many_lines: bool = False
    nothing: str = ""
    sort: Sort = Sort.TEXT
    words: tuple[str, ...] = ()


@lru_cache(maxsize=REMEMBERED)
def fraction(text: str, expected: str) -> Fraction:
    """The number that plain decimal text, or ``a/b``, names."""
    if not _NUMBER.fullmatch(text):
        raise wrong(f"a number, {expected}", text)
    return Fraction(text)


def number(
    low: int | None = 0,
    high: int | None = None,
    *,
    above: bool = False,
    below: bool = False,
) -> Kind:
    """An exact number from ``low`` to ``high``.

    ``above`` and ``below`` leave out the ends themselves.
    """
    expects = _range(low, high, above, below)

    @lru_cache(maxsize=REMEMBERED)
    def read(text: str, _: Currency) -> Fraction:
        value = fraction(text, expects)
        too_low = low is not None and (value <= low if above else value < low)
        too_high = high is not None and (value >= high if below else value > high)
        if too_low or too_high:
            raise wrong(expects, text)
        return value

    return Kind(expects, read, lambda value, _: decimal(value), sort=Sort.NUMBER)


def whole(low: int, high: int) -> Kind:
    """A whole number from ``low`` to ``high``."""
    expects = f"{low}-{high}"

    def read(text: str, _: Currency) -> int:
        if not _WHOLE.fullmatch(text):
            raise wrong(f"a whole number, {expects}", text)
        if not low <= int(text) <= high:
            raise wrong(expects, text)
        return int(text)

    few = tuple(map(str, range(low, high + 1))) if high - low < FEW else ()
    return Kind(expects, read, lambda value, _: str(value), sort=Sort.NUMBER, words=few)


def money(*, debt: bool = False) -> Kind:
    """An amount, below zero only where it may be a debt. [minor units]"""

    @lru_cache(maxsize=REMEMBERED)
    def read(text: str, currency: Currency) -> int:
        if plain(text) != text:
            raise wrong(f"an amount like {currency.format(1250)}", text)
        amount = currency.parse(text)
        if amount < 0 and not debt:
            raise wrong("0 or more", text)
        return amount

    expects = "an amount, or a debt below 0" if debt else "an amount, 0 or more"
    return Kind(
        expects,
        read,
        lambda value, currency: currency.format(value),
        sort=Sort.MONEY,
    )


def words(allowed: type[StrEnum] | type[IntEnum]) -> Kind:
    """One of a closed list of words; capitals do not matter."""
    members = {str(member.value).lower(): member for member in allowed}
    texts = [str(member.value) for member in allowed]
    expects = f"one of {', '.join(texts)}"
    if all(len(text) == 1 for text in texts):
        expects = f"{texts[0]}-{texts[-1]}"

    def read(text: str, _: Currency) -> StrEnum | IntEnum:
        member = members.get(text.lower())
        if member is None:
            raise ValueError(
                f"expected {expects}, got {shown(text)}{hint(text, texts)}"
            )
        return member

    return Kind(
        expects,
        read,
        lambda value, _: str(value.value),
        sort=Sort.NUMBER if issubclass(allowed, IntEnum) else Sort.TEXT,
        words=tuple(texts),
    )


def or_none(kind: Kind, nothing: object, meaning: str) -> Kind:
    """A kind that also takes the word ``none`` for ``nothing``.

    A blank cell may be filled from the catalogue; ``none`` says that it stays empty.
    """

    def read(text: str, currency: Currency) -> Any:
        return nothing if text.lower() == "none" else kind.read(text, currency)

    return replace(
        kind,
        expects=f"{kind.expects}, or none ({meaning})",
        read=read,
        nothing="none",
        words=(*kind.words, "none") if kind.words else (),
    )


def check_id(text: str) -> str:
    """An id as it is, if it can stand in lists."""
    if len(text) > LONGEST_ID:
        raise ValueError(
            f"expected an id of at most {LONGEST_ID} characters, got {len(text)}"
        )
    if ";" in text or ":" in text:
        raise wrong('an id without ";" and ":"', text)
    return text


def _range(low: int | None, high: int | None, above: bool, below: bool) -> str:
    if low is not None and high is not None and not above and not below:
        return f"{low}-{high}" if low >= 0 else f"{low} to {high}"
    ends = []
    if low is not None:
        ends.append(f"more than {low}" if above else f"{low} or more")
    if high is not None:
        ends.append(f"less than {high}" if below else f"at most {high}")
    return ", ".join(ends)


def _month(text: str, _: Currency) -> Month:
    if plain(text) != text:
        raise wrong("a month YYYY-MM", text)
    return Month.parse(text)


def _driven_from(text: str, currency: Currency) -> Month | None:
    if text.lower() == "no":
        return None
    if not text[:4].isdigit():
        raise wrong("a month YYYY-MM, or no", text)
    return _month(text, currency)


def _day(text: str, _: Currency) -> str:
    try:
        if _DAY.fullmatch(text):
            Month.parse(text[:7])
            return date.fromisoformat(text).isoformat()
        return str(Month.parse(text[:LONGEST_SHOWN]))
    except ValueError:
        raise wrong("a day YYYY-MM-DD, or a month YYYY-MM", text) from None


def _yes_no(text: str, _: Currency) -> bool:
    answer = {"yes": True, "no": False}.get(text.lower())
    if answer is None:
        raise wrong("yes or no", text)
    return answer


def _as_text(value: object, _: Currency) -> str:
    return str(value)


TEXT = Kind("text", lambda text, _: text, _as_text)
NOTES = Kind("text, may span lines", lambda text, _: text, _as_text, many_lines=True)
IDENT = Kind("an id", lambda text, _: check_id(text), _as_text)
MONEY = money()
FINE_MONEY = Kind(
    "an amount, 0 or more, of any decimals",
    lambda text, currency: number().read(text, currency) * currency.unit,
    lambda value, currency: decimal(value / currency.unit),
    sort=Sort.NUMBER,
)
MONTH = Kind("a month YYYY-MM", _month, _as_text, sort=Sort.MONTH)
DRIVEN_FROM = Kind(
    f"a month YYYY-MM, or no ({LONG_AGO} = from the start)",
    _driven_from,
    _as_text,
    nothing="no",
    sort=Sort.MONTH,
)
DAY = Kind("a day YYYY-MM-DD, or a month YYYY-MM", _day, _as_text, sort=Sort.DAY)
YES_NO = Kind(
    "yes or no",
    _yes_no,
    lambda value, _: "yes" if value else "no",
    sort=Sort.YES_NO,
    words=("yes", "no"),
)
