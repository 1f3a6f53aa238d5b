"""Which entries still say something after others have undone them."""

from collections.abc import Iterable

from partsplan.domain import Entry, EntryKind, Flag

_LONGEST = 18
"""Longer digits are no entry's number. [characters]"""


def holding(entries: Iterable[Entry]) -> tuple[tuple[Entry, ...], tuple[Flag, ...]]:
    """The entries that hold, by number, and flags of those that undo nothing.

    An ``undone`` takes back an earlier entry, or all earlier ones of a batch; it can be
    undone itself, and then they hold again.
    """
    kept: list[Entry] = []
    flags: list[Flag] = []
    undone_by: dict[int | str, int] = {}
    reached: set[int | str] = set()
    for entry in sorted(entries, key=_number, reverse=True):  # later ones decide
        names = undone_by.keys() & {entry.number, entry.what.batch or entry.number}
        if names:
            reached |= names
            continue
        kept.append(entry)
        if entry.what.kind is EntryKind.UNDONE:
            name = undone_name(entry.what.subject)
            if later := undone_by.get(name):
                flags.append(Flag(entry=later, message=undone_before(name)))
            undone_by[name] = entry.number
    for name in undone_by.keys() - reached:
        flags.append(Flag(entry=undone_by[name], message=nothing_to_undo(name)))
    return tuple(reversed(kept)), tuple(flags)


def undone_name(subject: str) -> int | str:
    """What an ``undone`` names: an entry by its number, else a batch."""
    is_number = subject.isdecimal() and len(subject) <= _LONGEST
    return int(subject) if is_number else subject


def nothing_to_undo(name: int | str) -> str:
    """That there is nothing of that name."""
    if isinstance(name, int):
        return f"there is no entry {name} before it"
    return f'there is no entry of a batch "{name}" before it'


def undone_before(name: int | str) -> str:
    """That what has that name says nothing any more."""
    what = f"entry {name}" if isinstance(name, int) else f'the batch "{name}"'
    return f"{what} is undone already"


def _number(entry: Entry) -> int:
    return entry.number
