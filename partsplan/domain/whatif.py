"""What somebody may want to be different, one change a type."""

from dataclasses import dataclass
from fractions import Fraction
from typing import ClassVar

from partsplan.domain.months import Month
from partsplan.domain.scales import Route


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """One thing that a what-if changes."""

    code: ClassVar[str]


# Changes of the garage.


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeBudget(Change):
    """Another sum in one month, or in all of them if ``month`` is None.

    [minor units]
    """

    code = "budget"
    amount: int
    month: Month | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeHours(Change):
    """Other own hours in one month, or in all of them if ``month`` is None. [h]"""

    code = "hours"
    hours: Fraction
    month: Month | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangePrice(Change):
    """Another price of one piece. [minor units of the option's currency]"""

    code = "price"
    option: str
    price: int


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeReserve(Change):
    """Another balance that no month's end may fall below. [minor units]"""

    code = "reserve"
    reserve: int


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeMonths(Change):
    """A longer or shorter plan. [months]"""

    code = "months"
    months: int


@dataclass(frozen=True, slots=True, kw_only=True)
class ParkVehicle(Change):
    """Not driven before that month; not at all if ``until`` is None."""

    code = "park"
    vehicle: str
    until: Month | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class GiveUpVehicle(Change):
    """Gone from that month on."""

    code = "give-up"
    vehicle: str
    month: Month


# Changes of what the plan may choose.


@dataclass(frozen=True, slots=True, kw_only=True)
class TakeFault(Change):
    """Some job must name the fault."""

    code = "take"
    fault: str


@dataclass(frozen=True, slots=True, kw_only=True)
class LeaveFault(Change):
    """No job may name the fault."""

    code = "leave"
    fault: str


@dataclass(frozen=True, slots=True, kw_only=True)
class UseOption(Change):
    """The option must be chosen."""

    code = "use"
    option: str


@dataclass(frozen=True, slots=True, kw_only=True)
class AvoidOption(Change):
    """The option must not be chosen."""

    code = "avoid"
    option: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RefuseRoute(Change):
    """Nothing comes by that route, for one vehicle or, if it is None, for all."""

    code = "refuse"
    route: Route
    vehicle: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Parking:
    """A vehicle that would be better parked, by the plan as it is.

    Attributes
    ----------
    months
        The months in which it is driven but must not be.
    until
        The first month from which on it may be driven to the end of the plan; None if
        there is none.
    """

    vehicle: str
    months: tuple[int, ...]
    until: Month | None
