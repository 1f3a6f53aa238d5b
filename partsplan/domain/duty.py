"""What is to be done by which day; reports make the sentences."""

from dataclasses import dataclass
from datetime import date
from typing import ClassVar


@dataclass(frozen=True, slots=True, kw_only=True)
class Duty:
    """Something to be done.

    Attributes
    ----------
    day
        Last day on which it is in time, unless said otherwise.
    """

    code: ClassVar[str]
    day: date


@dataclass(frozen=True, slots=True, kw_only=True)
class DoNotDrive(Duty):
    """A vehicle must not be driven; the day is today."""

    code = "do_not_drive"
    vehicle: str
    faults: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CureFault(Duty):
    """A fault is to be cured by its own deadline, or by a milestone's."""

    code = "cure_fault"
    fault: str
    milestone: str | None


@dataclass(frozen=True, slots=True, kw_only=True)
class SendBack(Duty):
    """The old unit is to be sent back, or its deposit is lost. [minor units]"""

    code = "send_back"
    option: str
    deposit: int


@dataclass(frozen=True, slots=True, kw_only=True)
class ReturnMissed(Duty):
    """The last day of a return is past: lost unless the supplier relents.

    [minor units]
    """

    code = "return_missed"
    option: str
    deposit: int


@dataclass(frozen=True, slots=True, kw_only=True)
class AskForCredit(Duty):
    """The old unit was sent back on ``sent``, but nothing came of it. [minor units]"""

    code = "ask_for_credit"
    option: str
    deposit: int
    sent: date


@dataclass(frozen=True, slots=True, kw_only=True)
class AskForPart(Duty):
    """A part should have arrived on that day."""

    code = "ask_for_part"
    option: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FitPart(Duty):
    """A part has been in hand since that day."""

    code = "fit_part"
    option: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ClaimWarranty(Duty):
    """A dud is to be claimed while it is under warranty."""

    code = "claim_warranty"
    option: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PayInstalment(Duty):
    """An instalment is to be paid, or what is left of it. [minor units]"""

    code = "pay_instalment"
    option: str
    amount: int


@dataclass(frozen=True, slots=True, kw_only=True)
class QuoteEnds(Duty):
    """A quote ends of an option that would cure faults nothing else is bought for."""

    code = "quote_ends"
    option: str
    faults: tuple[str, ...]
