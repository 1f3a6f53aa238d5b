"""Signs as people call them."""

from partsplan.catalogue import lamp_signs, trouble_codes
from partsplan.domain import UNNAMED, FoundCode, Signs
from partsplan.reports.figures import count, listed

_LAMP = "lamp:"


def sign_words(sign: str, signs: Signs) -> str:
    """A sign by its key: a code, ``lamp:abs``, or the code of a unit that is silent."""
    if sign.startswith(_LAMP):
        return f"{lamp_signs()[sign.removeprefix(_LAMP)].name} lamp"
    if sign == f"unit:{UNNAMED}":
        return "a unit without reply"
    if any(one.code == sign for one in signs.codes):
        return sign
    return trouble_codes()[sign].meaning


def found_words(signs: Signs) -> str:
    """How much was found."""
    parts = [
        (len(signs.codes), "trouble code", ""),
        (len(signs.lamps), "lamp", ""),
        (len(signs.units), "unit that does not reply", "units that do not reply"),
    ]
    return listed(count(*part) for part in parts if part[0])


def seen_words(codes: tuple[FoundCode, ...]) -> str:
    """What the text says of codes, each thing once: ``stored, pending``."""
    return ", ".join(dict.fromkeys(state for one in codes for state in one.states))
