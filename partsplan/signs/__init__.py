"""Signs in any text (codes, lamps, silent units), and the faults they suggest."""

from partsplan.signs.code_form import from_two_bytes, well_formed
from partsplan.signs.find import find_signs
from partsplan.signs.found_codes import find_codes
from partsplan.signs.propose import propose
from partsplan.signs.tables import SignTables

__all__ = [
    "SignTables",
    "find_codes",
    "find_signs",
    "from_two_bytes",
    "propose",
    "well_formed",
]
