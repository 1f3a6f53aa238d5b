"""Everything that a logbook holds."""

from dataclasses import dataclass

from partsplan.domain import Entry
from partsplan.logbook.plans import KeptPlan


@dataclass(frozen=True, slots=True, kw_only=True)
class Export:
    """Everything that a logbook holds.

    Attributes
    ----------
    currency
        Code of the currency of all amounts, which the logbook does not know itself.
    """

    currency: str
    entries: tuple[Entry, ...]
    plans: tuple[KeptPlan, ...]
