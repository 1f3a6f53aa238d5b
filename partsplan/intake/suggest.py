"""Near-miss names, so that a typo is mended in one go."""

from collections.abc import Iterable
from difflib import get_close_matches

from partsplan.sheets.quoting import shown

LONGEST = 64
"""Longer names are not looked up. [characters]"""

COMPARISONS = 200_000
"""Names that one suggester compares in all; about two seconds' worth."""


class Suggester:
    """Finds the known name that somebody probably meant.

    A table with thousands of wrong names must not keep its owner waiting, so there are
    no more suggestions once ``COMPARISONS`` names have been compared.
    """

    def __init__(self, names: Iterable[str]) -> None:
        self._names = tuple(names)
        self._left = COMPARISONS
        self._found: dict[str, str] = {}

    def nearest(self, name: str) -> str | None:
        """The known name nearest to ``name``, if one is near."""
        if name not in self._found:
            if self._left < 0 or len(name) > LONGEST:
                return None
            self._left -= len(self._names)
            lowered = {known.lower(): known for known in reversed(self._names)}
            near = get_close_matches(name.lower(), lowered, n=1)
            self._found[name] = lowered[near[0]] if near else ""
        return self._found[name] or None

    def hint(self, name: str, asks: str = "did you mean") -> str:
        """``; did you mean "x"?``, or nothing."""
        near = self.nearest(name)
        return f"; {asks} {shown(near)}?" if near else ""


def hint(name: str, names: Iterable[str], asks: str = "did you mean") -> str:
    """``; did you mean "x"?`` for the nearest of a few names, or nothing."""
    return Suggester(names).hint(name, asks)
