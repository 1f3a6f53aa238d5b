"""A part while its entries are still being taken."""

from dataclasses import dataclass
from datetime import date
from fractions import Fraction

from partsplan.domain import ZERO, Option, Part, PartDeposit, PartState
from partsplan.ledger.days import days_after, months_after


@dataclass(slots=True, kw_only=True)
class OpenPart:
    """The same as a ``Part``, but it may change: a fold is twice as fast with it."""

    terms: Option
    ordered: date
    state: PartState = PartState.ON_THE_WAY
    arrived: date | None = None
    fitted: date | None = None
    failed: date | None = None
    price: int = 0
    hours: Fraction = ZERO
    deposit: PartDeposit | None = None
    replaces: bool = False
    order_known: bool = False

    @property
    def to_be_replaced(self) -> bool:
        """Whether it is a dud that failed while it was under warranty."""
        return self.failed is not None and self.frozen().to_be_replaced

    def frozen(self) -> Part:
        """As it is now."""
        return Part(
            option=self.terms.id,
            state=self.state,
            ordered=self.ordered,
            expected=self.arrived or days_after(self.ordered, self.terms.lead_days),
            arrived=self.arrived,
            fitted=self.fitted,
            failed=self.failed,
            price=self.price,
            warranty_until=self._warranty_until(),
            hours=self.hours,
            deposit=self.deposit,
            replaces=self.replaces,
            order_known=self.order_known,
        )

    def _warranty_until(self) -> date | None:
        months = self.terms.warranty_months
        return months_after(self.arrived or self.ordered, months) if months else None
