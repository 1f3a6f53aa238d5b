"""Tells the words that a cell may hold."""

from collections.abc import Mapping

from partsplan.catalogue import Word, scales


def words(scale: str | None = None) -> Mapping[str, tuple[Word, ...]]:
    """The lists of words by the name of their scale, or one of them.

    Raises
    ------
    InvalidRequest
        If there is no scale of that name.
    """
    from partsplan.usecases.unknown import unknown

    known = scales()
    if scale is None:
        return known
    if scale not in known:
        raise unknown("list of words", scale, known)
    return {scale: known[scale]}
