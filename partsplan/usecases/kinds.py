"""Finds kinds of faults in the catalogue."""

from collections.abc import Iterable

from partsplan.catalogue import FaultKind


def kinds(words: Iterable[str] = ()) -> tuple[FaultKind, ...]:
    """The kinds whose key, title or system holds every one of the words."""
    from partsplan.catalogue import fault_kinds

    wanted = [word.lower() for word in words]
    return tuple(
        kind
        for kind in fault_kinds().values()
        if all(
            word in f"{kind.key} {kind.title} {kind.system}".lower() for word in wanted
        )
    )
