"""Texts, ids, numbers and months at random, as awkward as a garage may hold."""

from collections.abc import Sequence
from fractions import Fraction

from hypothesis import strategies as st

from partsplan.domain import Month

_CHARACTERS = st.one_of(
    st.sampled_from("aB1 ,\"';:=+-@|\t"),
    st.characters(exclude_categories=("Cc", "Cs")),
)


def texts(least: int = 0) -> st.SearchStrategy[str]:
    """Text of one line, as awkward as a cell may hold."""
    line = st.text(_CHARACTERS, min_size=least, max_size=8)
    return line.map(lambda text: text.replace("\t", " ").strip()).filter(
        lambda text: len(text) >= least
    )


def ids(prefix: str, least: int, most: int) -> st.SearchStrategy[list[str]]:
    """Different ids; the prefix of one kind keeps them apart from those of others."""
    one = texts(0).map(
        lambda text: f"{prefix}{text.replace(';', '').replace(':', '')}".strip()
    )
    return st.lists(one, min_size=least, max_size=most, unique=True)


def fractions(low: int, high: int) -> st.SearchStrategy[Fraction]:
    """Exact numbers, some of which no decimal text can say."""
    return st.fractions(low, high, max_denominator=60)


def amounts() -> st.SearchStrategy[int]:
    """[minor units]"""
    return st.integers(0, 500_000)


def months() -> st.SearchStrategy[Month]:
    """Calendar months around the starts of the garages."""
    return st.builds(Month, st.integers(2025, 2030), st.integers(1, 12))


def notes() -> st.SearchStrategy[str]:
    """Text that may span lines."""
    return st.lists(texts(), max_size=3).map(lambda lines: "\n".join(lines).strip())


def some(names: Sequence[str], most: int = 2) -> st.SearchStrategy[tuple[str, ...]]:
    """A few of these names, each once."""
    if not names:
        return st.just(())
    return st.lists(st.sampled_from(names), max_size=most, unique=True).map(tuple)
