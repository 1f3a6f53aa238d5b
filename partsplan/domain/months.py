"""Calendar months, written ``YYYY-MM``."""

import re
from calendar import monthrange
from datetime import date
from typing import NamedTuple

_FORM = re.compile(r"([0-9]{4})-([0-9]{2})")


class Month(NamedTuple):
    """A calendar month; months order as they follow each other."""

    year: int
    month: int

    @classmethod
    def parse(cls, text: str) -> "Month":
        """The month that ``text`` names.

        Raises
        ------
        ValueError
            If the text is not ``YYYY-MM`` with a year from 1900 and a real month.
        """
        found = _FORM.fullmatch(text)
        if not found or not 1 <= int(found[2]) <= 12 or int(found[1]) < 1900:
            raise ValueError(f'expected a month YYYY-MM, got "{text}"')
        return cls(int(found[1]), int(found[2]))

    @classmethod
    def of(cls, day: date) -> "Month":
        """The month that a day is in."""
        return cls(day.year, day.month)

    @property
    def last_day(self) -> date:
        """The day on which it ends."""
        return date(self.year, self.month, monthrange(self.year, self.month)[1])

    def plus(self, months: int) -> "Month":
        """The month that many months later (or earlier, below zero). [months]"""
        year, month = divmod(self.year * 12 + self.month - 1 + months, 12)
        return Month(year, month + 1)

    def since(self, start: "Month") -> int:
        """Months from ``start`` to this one; negative before it. [months]"""
        return (self.year - start.year) * 12 + self.month - start.month

    def __str__(self) -> str:
        return f"{self.year:04d}-{self.month:02d}"
