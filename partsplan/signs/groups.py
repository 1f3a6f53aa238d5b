"""Signs that are there together."""

from collections.abc import Sequence
from dataclasses import dataclass

from partsplan.catalogue import SignGroup
from partsplan.domain import Signs, Together
from partsplan.signs.tables import SignTables


@dataclass(frozen=True, slots=True)
class Match:
    """A group, and those of its signs that are there."""

    group: SignGroup
    signs: tuple[str, ...]

    @property
    def together(self) -> Together:
        """The same as a fact."""
        return Together(key=self.group.key, signs=self.signs, says=self.group.says)


def matches(signs: Signs, tables: SignTables) -> list[Match]:
    """The groups that are there, but those of which an earlier one says it all."""
    there = present(signs, tables)
    found: list[Match] = []
    for group in tables.groups:
        match = _match(group, there)
        if match and not any(set(match.signs) <= set(one.signs) for one in found):
            found.append(match)
    return found


def present(signs: Signs, tables: SignTables) -> tuple[str, ...]:
    """The signs as groups name them; a silent unit counts as the code for that."""
    every = (
        *(one.code for one in signs.codes),
        *(tables.silence(unit) for unit in signs.units),
        *(f"lamp:{lamp}" for lamp in signs.lamps),
    )
    return tuple(dict.fromkeys(every))


def _match(group: SignGroup, there: Sequence[str]) -> Match | None:
    needed = [one for one in there if _among(one, group.all_of)]
    some = [one for one in there if _among(one, group.some_of)]
    complete = all(any(_among(one, [sign]) for one in there) for sign in group.all_of)
    if not complete or len(some) < group.least:
        return None
    return Match(group, tuple(dict.fromkeys((*needed, *some))))


def _among(one: str, signs: Sequence[str]) -> bool:
    return any(_fits(one, sign) for sign in signs)


def _fits(one: str, sign: str) -> bool:
    if ":" in sign or "-" not in sign:
        return one == sign
    first, last = sign.split("-")
    return one[0] == first[0] and first <= one <= last
