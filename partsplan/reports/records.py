"""Lines for other programs: one record a line, its fields split by tabs."""

from collections.abc import Iterable, Sequence


def record_lines(records: Iterable[Sequence[str]]) -> str:
    """The records as text; fields lose the marks that split them."""
    return "\n".join("\t".join(_field(one) for one in record) for record in records)


def _field(text: str) -> str:
    return " ".join(text.split())
