"""How readers of some places write sums, months and days.

Signs and forms as in the Unicode CLDR: skeletons ``yM`` and ``yMd``; in English, where
a day in figures could be read in two ways, ``yMMM`` and ``yMMMd``. The tests hold them
against Babel. The texts stay English.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass
from datetime import date

from partsplan.domain import Month

_HARD = "\N{NO-BREAK SPACE}"
_NARROW = "\N{NARROW NO-BREAK SPACE}"


@dataclass(frozen=True, slots=True)
class Locale:
    """One way to write.

    Attributes
    ----------
    code
        As BCP 47 names it; empty where it is nobody's own.
    decimal, group
        What parts units from their decimals, and thousands from each other.
    month_form, day_form
        With fields for the year, the month's number or name, and the day.
    names
        Of the months, January first, where a form has them.
    """

    code: str
    decimal: str = "."
    group: str = ","
    month_form: str = "{year}-{month:02}"
    day_form: str = "{year}-{month:02}-{day:02}"
    names: tuple[str, ...] = ()

    def number(self, text: str) -> str:
        """A number written the plain way, such as ``-1,234.50``, in this one."""
        return text.translate({ord("."): self.decimal, ord(","): self.group})

    def month(self, month: Month) -> str:
        """A calendar month."""
        return self._filled(self.month_form, month.year, month.month)

    def day(self, day: date) -> str:
        """A day."""
        return self._filled(self.day_form, day.year, day.month, day.day)

    def _filled(self, form: str, year: int, month: int, day: int = 0) -> str:
        name = self.names[month - 1] if self.names else ""
        return form.format(year=year, month=month, day=day, name=name)


PLAIN = Locale("")
"""Sums as in English, months and days as in ISO 8601."""

BARE = Locale("", group="")
"""The same without groups, so that programs read sums as numbers."""

_BRITISH = "Jan Feb Mar Apr May Jun Jul Aug Sept Oct Nov Dec"
_AMERICAN = "Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec"
_SLASHES = "{month:02}/{year}", "{day:02}/{month:02}/{year}"
_DOTS = "{month}.{year}", "{day}.{month}.{year}"


def _english(code: str, names: str, day: str) -> Locale:
    forms = f"{{name}}{_HARD}{{year}}", day.replace(" ", _HARD)
    return Locale(code, ".", ",", *forms, tuple(names.split()))


LOCALES = {
    one.code: one
    for one in (
        Locale("da", ",", ".", *_DOTS),
        Locale("de", ",", ".", "{month}/{year}", "{day}.{month}.{year}"),
        _english("en-GB", _BRITISH, "{day} {name} {year}"),
        _english("en-US", _AMERICAN, "{name} {day}, {year}"),
        Locale("es", ",", ".", "{month}/{year}", "{day}/{month}/{year}"),
        Locale("fi", ",", _HARD, *_DOTS),
        Locale("fr", ",", _NARROW, *_SLASHES),
        Locale("it", ",", ".", *_SLASHES),
        Locale("nb", ",", _HARD, *_DOTS),
        Locale("nl", ",", ".", "{month}-{year}", "{day}-{month}-{year}"),
        Locale("pl", ",", _HARD, "{month:02}.{year}", "{day}.{month:02}.{year}"),
        Locale("sv", ",", _HARD),
    )
}

_CURRENT: ContextVar[Locale] = ContextVar("locale", default=PLAIN)


def current() -> Locale:
    """The way in which sums, months and days are written now."""
    return _CURRENT.get()


@contextmanager
def written_in(locale: Locale) -> Iterator[None]:
    """Sums, months and days are written so meanwhile, and as before afterwards."""
    before = _CURRENT.set(locale)
    try:
        yield
    finally:
        _CURRENT.reset(before)
