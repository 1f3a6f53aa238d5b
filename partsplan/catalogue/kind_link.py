"""What usually goes with a kind of fault, and what usually comes before it."""

from dataclasses import dataclass
from enum import StrEnum
from functools import cache

from partsplan.catalogue.tables import Row, read_table


class Link(StrEnum):
    """How two kinds of faults hang together."""

    PAIR = "pair"
    AFTER = "after"


@dataclass(frozen=True, slots=True, kw_only=True)
class KindLink:
    """``kind`` is mended together with, or only after, ``other``.

    A kind that is its own pair is mended in twos, such as dampers on an axle.
    """

    kind: str
    link: Link
    other: str
    why: str


@cache
def kind_links() -> tuple[KindLink, ...]:
    """All links in file order; a pair stands once, whichever is named first.

    Common practice from memory, no source.
    """
    return read_table("kind_links.csv", _kind_link)


def _kind_link(row: Row) -> KindLink:
    return KindLink(
        kind=row.text("kind"),
        link=row.member("link", Link),
        other=row.text("other"),
        why=row.text("why"),
    )
