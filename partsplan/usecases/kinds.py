"""Finds kinds of faults in the catalogue."""

from collections.abc import Sequence

from partsplan.catalogue import FaultKind


def kinds(words: Sequence[str] = ()) -> tuple[FaultKind, ...]:
    """The kinds whose key, title or system holds every one of the words.

    A key as the only word stands for its kind alone.
    """
    from partsplan.catalogue import fault_kinds

    wanted = [word.lower() for word in words]
    known = fault_kinds()
    if len(wanted) == 1 and wanted[0] in known:
        return (known[wanted[0]],)
    return tuple(
        kind
        for kind in known.values()
        if all(
            word in f"{kind.key} {kind.title} {kind.system}".lower() for word in wanted
        )
    )
