"""What falls on which day of a calendar; reports make the sentences."""

from abc import ABC, abstractmethod
from dataclasses import dataclass
from datetime import date
from typing import ClassVar


@dataclass(frozen=True, slots=True, kw_only=True)
class Occasion(ABC):
    """Something that falls on a day.

    Attributes
    ----------
    notice
        How long before it somebody wants to be reminded. [days]
    day
        Where it is something to do that should have been done before, today.
    """

    code: ClassVar[str]
    notice: ClassVar[int] = 1
    day: date

    @property
    @abstractmethod
    def names(self) -> tuple[str, ...]:
        """Ids that tell it from others of its kind, whatever day it falls on."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderDay(Occasion):
    """Options to be ordered together, or one that has no supplier.

    It is told from others by its first option: should the rest be ordered in another
    month, it is still the same order.
    """

    code = "order"
    supplier: str | None
    options: tuple[str, ...]

    @property
    def names(self) -> tuple[str, ...]:
        """The first of its options by name."""
        return (min(self.options),)


@dataclass(frozen=True, slots=True, kw_only=True)
class ToolDay(Occasion):
    """A tool is to be bought. [minor units]"""

    code = "tool"
    tool: str
    price: int

    @property
    def names(self) -> tuple[str, ...]:
        """The tool."""
        return (self.tool,)


@dataclass(frozen=True, slots=True, kw_only=True)
class FittingDay(Occasion):
    """An option is in hand by then and to be fitted."""

    code = "fit"
    option: str

    @property
    def names(self) -> tuple[str, ...]:
        """The option."""
        return (self.option,)


@dataclass(frozen=True, slots=True, kw_only=True)
class ReturnDay(Occasion):
    """The last day to send an old unit back. [minor units]

    Attributes
    ----------
    certain
        Whether the old unit is off already; otherwise the day is as planned.
    """

    code = "return"
    notice = 7
    option: str
    deposit: int
    certain: bool

    @property
    def names(self) -> tuple[str, ...]:
        """The option."""
        return (self.option,)


@dataclass(frozen=True, slots=True, kw_only=True)
class QuoteDay(Occasion):
    """The last day of a quote by which something is planned to be ordered."""

    code = "quote"
    notice = 7
    option: str

    @property
    def names(self) -> tuple[str, ...]:
        """The option."""
        return (self.option,)


@dataclass(frozen=True, slots=True, kw_only=True)
class DeadlineDay(Occasion):
    """The last day on which a fault is cured in time."""

    code = "deadline"
    fault: str

    @property
    def names(self) -> tuple[str, ...]:
        """The fault."""
        return (self.fault,)


@dataclass(frozen=True, slots=True, kw_only=True)
class MilestoneDay(Occasion):
    """The last day of a milestone's month, and its faults that are still there."""

    code = "milestone"
    milestone: str
    faults: tuple[str, ...]

    @property
    def names(self) -> tuple[str, ...]:
        """The milestone."""
        return (self.milestone,)
