"""What a vehicle shows: trouble codes, lamps, units that fall silent."""

from dataclasses import dataclass
from enum import StrEnum

from partsplan.domain.fault import Fault
from partsplan.domain.garage import Garage
from partsplan.domain.scales import System

UNNAMED = "unnamed"
"""A silent unit whose name nobody wrote down."""


class CodeState(StrEnum):
    """How sure the control unit is of a code."""

    STORED = "stored"
    PENDING = "pending"
    PERMANENT = "permanent"


class Confidence(StrEnum):
    """How far a sign leads; it never is a diagnosis.

    High: a code that stands for one kind of fault. Medium: several kinds, or a lamp or
    a silent unit without a code. Low: only the range of the code is known, or nothing.
    """

    HIGH = "high"
    MEDIUM = "medium"
    LOW = "low"


@dataclass(frozen=True, slots=True, kw_only=True)
class FoundCode:
    """One trouble code of a text, however often it stands there.

    Attributes
    ----------
    states
        What the text says of it, each once; empty where it says nothing.
    failure_types
        The two hexadecimal digits that may follow a code, each once.
    times
        How often it was read.
    """

    code: str
    states: tuple[CodeState, ...] = ()
    failure_types: tuple[str, ...] = ()
    times: int = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class Signs:
    """All that was found in a text, in its order, each sign once.

    Attributes
    ----------
    lamps
        Names of the scale ``lamp``.
    units
        Control units that do not reply.
    """

    codes: tuple[FoundCode, ...] = ()
    lamps: tuple[str, ...] = ()
    units: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Proposal:
    """A fault that signs suggest, to be looked at before it is believed.

    Attributes
    ----------
    fault
        The row to be added; its kind is the most usual one, a suspicion.
    kinds
        Every kind that the signs may stand for, that of the row first.
    cautious
        Parts of the vehicle whose cautions matter.
    units
        Control units that do not reply.
    akin
        Faults of the vehicle that are not fixed and of the same kind.
    came_back
        Faults marked as fixed that showed one of these codes.
    """

    fault: Fault
    confidence: Confidence
    kinds: tuple[str, ...]
    cautious: tuple[System, ...]
    codes: tuple[FoundCode, ...] = ()
    units: tuple[str, ...] = ()
    akin: tuple[str, ...] = ()
    came_back: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Together:
    """Signs that say more together; ``signs`` as people call them."""

    key: str
    signs: tuple[str, ...]
    says: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """What a text of a scan tool comes to, for one vehicle of a garage.

    Attributes
    ----------
    known
        Signs that a fault of the garage has already, and that fault's id.
    """

    garage: Garage
    vehicle: str
    signs: Signs
    proposals: tuple[Proposal, ...]
    together: tuple[Together, ...]
    known: tuple[tuple[str, str], ...]
