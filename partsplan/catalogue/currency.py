"""The currencies of ISO 4217."""

from collections.abc import Mapping
from functools import cache
from types import MappingProxyType

from partsplan.catalogue.tables import Row, read_table


@cache
def currencies() -> Mapping[str, int]:
    """Minor digits of each currency code, in the order of the codes.

    Codes without minor units (metals, units of account, the test code) are no money
    to keep a budget in, and are left out. Source: ISO 4217, see data/SOURCES.md.
    """
    found = read_table("currencies.csv", _digits)
    return MappingProxyType(
        {code: digits for code, digits in found if digits is not None}
    )


def _digits(row: Row) -> tuple[str, int | None]:
    return row.text("code"), row.optional("minor_units", row.whole)
