"""The currencies a garage may name."""

from partsplan import catalogue
from partsplan.domain import Currency
from partsplan.intake.cells import Kind
from partsplan.intake.suggest import hint
from partsplan.sheets.quoting import shown

EUR = "EUR"
"""The currency of the catalogue's figures."""


def currency(code: str) -> Currency:
    """The currency of an ISO 4217 code.

    Raises
    ------
    ValueError
        If there is none of that code.
    """
    digits = catalogue.currencies()
    if code.upper() not in digits:
        near = hint(code.upper(), digits)
        raise ValueError(f"expected an ISO 4217 code like EUR, got {shown(code)}{near}")
    return Currency(code.upper(), digits[code.upper()])


CODE = Kind(
    "an ISO 4217 code like EUR",
    lambda text, _: currency(text).code,
    lambda value, _: str(value),
)
