"""What is left to spend in a month that has begun, and what will come back."""

from dataclasses import dataclass

from partsplan.domain.months import Month


@dataclass(frozen=True, slots=True, kw_only=True)
class MoneyNow:
    """Where the money of a month stands. [minor units]

    Attributes
    ----------
    opening
        What the months before left over, or still owe.
    promised
        Dues of this month and of earlier ones, not yet paid.
    expected_back
        Deposits that should come back in this month; not counted as free.
    reserve
        What is to be left at the month's end.
    """

    month: Month
    opening: int
    budget: int
    spent: int
    received: int
    promised: int
    expected_back: int
    reserve: int

    @property
    def balance(self) -> int:
        """What is there now."""
        return self.opening + self.budget + self.received - self.spent

    @property
    def free(self) -> int:
        """What may still be spent; below 0 if too much is promised."""
        return self.balance - self.promised - self.reserve


@dataclass(frozen=True, slots=True, kw_only=True)
class DepositBack:
    """A deposit that should come back in a month. [minor units]"""

    option: str
    month: Month
    amount: int
