"""Cells that hold a list, its items separated by ``;``."""

from collections.abc import Callable, Iterable
from fractions import Fraction
from functools import lru_cache

from partsplan.domain import ONE, Cure, Currency, Instalment
from partsplan.intake.cells import (
    REMEMBERED,
    Kind,
    check_id,
    fraction,
)
from partsplan.sheets.decimals import decimal
from partsplan.sheets.quoting import shown, wrong

LATEST_INSTALMENT = 60
"""[months after ordering]"""


def names(expects: str, check: Callable[[str], str]) -> Kind:
    """A list of names, each once and each in the form that ``check`` lets pass."""

    def read(text: str, _: Currency) -> tuple[str, ...]:
        items = tuple(check(item) for item in _items(text))
        if not items:
            raise wrong(expects, text)
        _each_once(items)
        return items

    return Kind(expects, read, lambda value, _: ";".join(value))


def _items(text: str) -> list[str]:
    return [item for part in text.split(";") if (item := part.strip())]


def _each_once(items: Iterable[str]) -> None:
    seen = set()
    for item in items:
        if item in seen:
            raise ValueError(f"names {shown(item)} twice")
        seen.add(item)


def _read_fixes(text: str, _: Currency) -> tuple[Cure, ...]:
    cures = tuple(_cure(item) for item in _items(text))
    if not cures:
        raise wrong("fault or fault:relief", text)
    _each_once(cure.fault for cure in cures)
    return cures


def _cure(item: str) -> Cure:
    fault, colon, share = (part.strip() for part in item.partition(":"))
    if not colon:
        return Cure(fault=check_id(fault))
    if not fault:
        raise wrong("fault or fault:relief", item)
    relief = fraction(share, "more than 0, at most 1")
    if not 0 < relief <= 1:
        raise wrong("a relief more than 0, at most 1", share)
    return Cure(fault=check_id(fault), relief=relief)


def _write_fixes(cures: tuple[Cure, ...], _: Currency) -> str:
    return ";".join(
        cure.fault if cure.relief == ONE else f"{cure.fault}:{decimal(cure.relief)}"
        for cure in cures
    )


@lru_cache(maxsize=REMEMBERED)
def _read_instalments(text: str, _: Currency) -> tuple[Instalment, ...]:
    parts = sorted((_instalment(item) for item in _items(text)), key=_due)
    _each_once(f"month {part.months}" for part in parts)
    total = sum((part.share for part in parts), Fraction(0))
    if total != 1:
        raise ValueError(
            f"expected shares that sum to 1, got {decimal(total)} in {shown(text)}"
        )
    return tuple(parts)


def _due(part: Instalment) -> int:
    return part.months


def _instalment(item: str) -> Instalment:
    months, _, share = (part.strip() for part in item.partition(":"))
    if not (months.isascii() and months.isdigit() and len(months) < 4 and share):
        raise wrong("months:share like 0:0.25", item)
    if int(months) > LATEST_INSTALMENT:
        raise wrong(f"an instalment within {LATEST_INSTALMENT} months", item)
    value = fraction(share, "more than 0, at most 1")
    if not 0 < value <= 1:
        raise wrong("a share more than 0, at most 1", share)
    return Instalment(months=int(months), share=value)


def _write_instalments(parts: tuple[Instalment, ...], _: Currency) -> str:
    return ";".join(f"{part.months}:{decimal(part.share)}" for part in parts)


IDS = names("ids with ; between them", check_id)
TEXTS = names("texts with ; between them", lambda item: item)
FIXES = Kind("fault or fault:relief, with ; between them", _read_fixes, _write_fixes)
INSTALMENTS = Kind(
    "months:share, with ; between them; the shares sum to 1",
    _read_instalments,
    _write_instalments,
)
