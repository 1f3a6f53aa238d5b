"""Whether what an entry names is there."""

from collections.abc import Mapping
from difflib import get_close_matches
from typing import Any

from partsplan.domain import OF_PARTS, EntryKind, Garage, Happening

_LONGEST = 64
"""Longer names are not looked up. [characters]"""

_NAMES = {
    **dict.fromkeys(OF_PARTS, ("option",)),
    EntryKind.CHECKED: ("fault",),
    EntryKind.ODOMETER: ("vehicle",),
}
"""What entries of a kind name; the rest may name anything."""
_ANYTHING = ("option", "tool", "vehicle", "fault", "supplier")


def unknown_subject(garage: Garage, what: Happening) -> str | None:
    """That the garage does not have what an entry names, if so.

    Entries of the kind ``undone`` name other entries, so they are not looked at.
    """
    if not what.subject or what.kind is EntryKind.UNDONE:
        return None
    rooms = _NAMES.get(what.kind, _ANYTHING)
    for room in rooms:
        if what.subject in _ids(garage, room):
            return None
    for room in _ANYTHING:
        if what.subject in _ids(garage, room):
            return f'expected {_a(rooms[0])}, got the {room} "{what.subject}"'
    named = rooms[0] if len(rooms) == 1 else "option, tool, vehicle, fault or supplier"
    return f'there is no {named} "{what.subject}"'


def subjects(garage: Garage, kind: EntryKind) -> tuple[str, ...]:
    """The ids that entries of a kind may name; none of ``undone``, which names entries.

    In file order.
    """
    rooms = () if kind is EntryKind.UNDONE else _NAMES.get(kind, _ANYTHING)
    return tuple(name for room in rooms for name in _ids(garage, room))


def unknown_cause(garage: Garage, what: Happening) -> str | None:
    """That a fault is not suspected to have the cause that was checked, if so."""
    checks = what.kind is EntryKind.CHECKED and what.subject in garage.fault
    if not checks or (what.subject, what.cause) in garage.cause:
        return None
    return f'"{what.cause}" is none of the causes suspected of {what.subject}'


def nearest_cause(garage: Garage, what: Happening) -> str:
    """``; did you mean "x"?`` for the suspected cause that is nearest, or nothing."""
    causes = [cause for fault, cause in garage.cause if fault == what.subject]
    return _did_you_mean(what.cause, causes)


def nearest_subject(garage: Garage, what: Happening) -> str:
    """``; did you mean "x"?`` for the name that is nearest, or nothing."""
    return _did_you_mean(what.subject, [*subjects(garage, what.kind)])


def _did_you_mean(name: str, known: list[str]) -> str:
    """``; did you mean "x"?`` for the nearest of the known names, or nothing."""
    if len(name) > _LONGEST:
        return ""
    lowered = {one.lower(): one for one in reversed(known)}
    near = get_close_matches(name.lower(), lowered, n=1)
    return f'; did you mean "{lowered[near[0]]}"?' if near else ""


def _ids(garage: Garage, room: str) -> Mapping[str, Any]:
    ids: Mapping[str, Any] = getattr(garage, room)
    return ids


def _a(word: str) -> str:
    return f"an {word}" if word[0] in "aeiou" else f"a {word}"
