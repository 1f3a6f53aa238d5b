"""How readers of some countries write sums and months."""

from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass

from partsplan.domain import Month


@dataclass(frozen=True, slots=True)
class Locale:
    """One way to write; common practice, from memory, no source.

    Attributes
    ----------
    code
        The language as BCP 47 names it; empty for the plain way.
    decimal, group
        What parts units from their decimals, and thousands from each other.
    months
        Their names, January first; without any, months are written ``YYYY-MM``.
    """

    code: str
    decimal: str
    group: str
    months: tuple[str, ...] = ()

    def number(self, text: str) -> str:
        """A number written the plain way, such as ``-1,234.50``, in this one."""
        return text.translate({ord("."): self.decimal, ord(","): self.group})

    def month(self, month: Month) -> str:
        """A calendar month."""
        if not self.months:
            return str(month)
        return f"{self.months[month.month - 1]} {month.year}"


PLAIN = Locale("", ".", ",")
_NARROW = "\N{NARROW NO-BREAK SPACE}"


def _locale(code: str, decimal: str, group: str, months: str) -> Locale:
    return Locale(code, decimal, group, tuple(months.split()))


LOCALES = {
    one.code: one
    for one in (
        _locale(
            "de",
            ",",
            ".",
            "Januar Februar März April Mai Juni Juli August September Oktober November "
            "Dezember",
        ),
        _locale(
            "en",
            ".",
            ",",
            "January February March April May June July August September October "
            "November December",
        ),
        _locale(
            "es",
            ",",
            ".",
            "enero febrero marzo abril mayo junio julio agosto septiembre octubre "
            "noviembre diciembre",
        ),
        _locale(
            "fr",
            ",",
            _NARROW,
            "janvier février mars avril mai juin juillet août septembre octobre "
            "novembre décembre",
        ),
        _locale(
            "it",
            ",",
            ".",
            "gennaio febbraio marzo aprile maggio giugno luglio agosto settembre "
            "ottobre novembre dicembre",
        ),
        _locale(
            "nl",
            ",",
            ".",
            "januari februari maart april mei juni juli augustus september oktober "
            "november december",
        ),
    )
}

_CURRENT: ContextVar[Locale] = ContextVar("locale", default=PLAIN)


def current() -> Locale:
    """The way in which sums and months are written now."""
    return _CURRENT.get()


@contextmanager
def written_in(locale: Locale) -> Iterator[None]:
    """Sums and months are written so meanwhile, and as before afterwards."""
    before = _CURRENT.set(locale)
    try:
        yield
    finally:
        _CURRENT.reset(before)
