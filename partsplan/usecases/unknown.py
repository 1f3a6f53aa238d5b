"""Names that are not there, with the one that was probably meant."""

from collections.abc import Iterable

from partsplan.errors import InvalidRequest
from partsplan.intake.suggest import Suggester


def unknown(what: str, name: str, known: Iterable[str]) -> InvalidRequest:
    """The error for a name that is none of those known."""
    near = Suggester(known).nearest(name)
    meant = f' Did you mean "{near}"?' if near else ""
    return InvalidRequest(f'There is no {what} "{name}".{meant}')
