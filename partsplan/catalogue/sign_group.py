"""Signs that say more together than one by one."""

from dataclasses import dataclass
from functools import cache

from partsplan.catalogue.tables import Row, read_table


@dataclass(frozen=True, slots=True, kw_only=True)
class SignGroup:
    """Signs that are seen together, and what to check first then.

    A sign is a code, two codes as ends of a range (``P0301-P0308``), ``lamp:abs``, or
    ``unit:unnamed`` for a silent unit whose name nobody wrote down; one with a name
    counts as the code for its silence.

    Attributes
    ----------
    all_of
        Signs that must all be there.
    some_of
        Signs of which at least ``least`` must be there.
    kind
        The fault kind that is suspected behind all of them; None where the signs stay
        faults of their own.
    says
        What to check first, as a sentence.
    """

    key: str
    all_of: tuple[str, ...]
    some_of: tuple[str, ...]
    least: int
    kind: str | None
    says: str


@cache
def sign_groups() -> tuple[SignGroup, ...]:
    """All groups in file order; common practice, no source."""
    return read_table("sign_groups.csv", _sign_group)


def _sign_group(row: Row) -> SignGroup:
    return SignGroup(
        key=row.text("key"),
        all_of=row.words("all_of"),
        some_of=row.words("some_of"),
        least=row.whole("least"),
        kind=row.optional("kind", row.text),
        says=row.text("says"),
    )
