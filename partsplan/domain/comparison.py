"""All options of one fault side by side."""

from dataclasses import dataclass
from enum import StrEnum

from partsplan.domain.garage import Assumed
from partsplan.domain.offer import Price
from partsplan.domain.option import Option
from partsplan.domain.reasons import Reason


class Lever(StrEnum):
    """What a break-even can turn on."""

    CORE_CHANCE = "core_chance"
    DUD_CHANCE = "dud_chance"
    CODING_COST = "coding_cost"
    PRICE = "price"
    LIFE = "life_months"


@dataclass(frozen=True, slots=True, kw_only=True)
class BreakEven:
    """Where one option and its best rival cost the same for a month of service.

    Attributes
    ----------
    lever
        What is turned, all else held.
    now
        The option's own value; None for a life without an end.
    at
        The value at which both cost the same. Chances 0-1, money in minor units
        (a price in the option's own currency), life in months.
    cheaper_above
        Whether the option is the cheaper one above that value, else below it.
    """

    option: str
    rival: str
    lever: Lever
    now: float | None
    at: float
    cheaper_above: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Candidate:
    """One option of a fault, ordered in the first month that allows it.

    Attributes
    ----------
    price
        All its costs. [minor units]
    ordered, fitted
        First ordering month that leads to a fitting, and that fitting month; None if
        there is none, and then ``bars`` says why.
    cash_now
        Due with the order, deposit included. [minor units]
    cash_back
        Deposit that is counted on to come back. [minor units]
    service
        Months of service it gives while the vehicle is kept; None if barred.
    per_month
        Expected cost for a month of service. [minor units a month]
    """

    option: Option
    price: Price
    ordered: int | None
    fitted: int | None
    cash_now: int
    cash_back: int
    service: int | None
    per_month: float | None
    flagged: bool
    bars: tuple[Reason, ...]
    assumed: tuple[Assumed, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Comparison:
    """The options of one fault, cheapest month of service first, barred ones last."""

    fault: str
    candidates: tuple[Candidate, ...]
    break_evens: tuple[BreakEven, ...]
