"""Amounts that somebody asks with."""

from partsplan.domain import Garage
from partsplan.errors import InvalidRequest


def amount_from_zero(garage: Garage, name: str, text: str) -> int:
    """The sum that ``text`` names, in the garage's currency. [minor units]

    Raises
    ------
    InvalidRequest
        If it is no amount, or below 0; ``name`` says what it was for.
    """
    try:
        amount = garage.currency.parse(text)
    except ValueError as error:
        raise InvalidRequest(f"{name}: {error}") from error
    if amount < 0:
        raise InvalidRequest(f'{name}: expected 0 or more, got "{text}"')
    return amount
