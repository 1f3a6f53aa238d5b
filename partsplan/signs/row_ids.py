"""Ids for rows that nobody has named."""

from collections.abc import Collection
from itertools import count

from partsplan.signs.leads import Lead

LONGEST = 56
"""An id may have 64 characters; the rest is for a number. [characters]"""


def row_id(lead: Lead, vehicle: str, taken: Collection[str]) -> str:
    """The vehicle and the first sign, such as ``hatch-p0301``; a number if it is taken.

    Capitals make no difference, so that nobody mistakes one id for another.
    """
    used = {one.casefold() for one in taken}
    base = f"{vehicle}-{_sign(lead)}"
    if len(base) > LONGEST:
        base = f"{vehicle[: LONGEST - len(_sign(lead)) - 1]}-{_sign(lead)}"
    names = (base if number == 1 else f"{base}-{number}" for number in count(1))
    return next(name for name in names if name.casefold() not in used)


def _sign(lead: Lead) -> str:
    if lead.codes:
        return lead.codes[0].code.lower()
    if lead.units:
        return f"{lead.units[0]}-unit"
    return f"{lead.lamps[0]}-lamp"
