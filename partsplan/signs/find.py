"""All signs in a text."""

from partsplan.domain import Signs
from partsplan.signs.found_codes import find_codes
from partsplan.signs.tables import SignTables
from partsplan.signs.told_lamps import find_lamps
from partsplan.signs.told_units import find_units


def find_signs(text: str, tables: SignTables, *, as_bytes: bool = False) -> Signs:
    """Trouble codes, lamps and silent units of any text; none of it is believed.

    ``as_bytes`` takes every four hexadecimal digits for a code of two bytes.
    """
    return Signs(
        codes=find_codes(text, as_bytes=as_bytes),
        lamps=find_lamps(text, tables.lamps.values()),
        units=find_units(text, tables.units.values()),
    )
