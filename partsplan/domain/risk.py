"""How a plan may turn out: chances over many futures."""

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

QUANTILES = (5, 25, 50, 75, 95)
"""Of the balance of each month. [%]"""
KEPT = Fraction(9, 10)
"""The share of futures that the extra reserve keeps from going below zero."""
NEW_FAULT_MEDIAN = Fraction(2, 5)
"""Median cost of a new fault, in mean monthly budgets. Common practice, no source."""
NEW_FAULT_SPREAD = Fraction(4, 5)
"""Standard deviation of the logarithm of that cost: one in six costs more than 2.2
times the median. Common practice, no source."""


class Promise(StrEnum):
    """What a plan promises, beside money and hours."""

    DEADLINE = "deadline"
    MILESTONE = "milestone"
    CURE = "do_not_drive_cure"


class RiskSource(StrEnum):
    """Where the spread of the money comes from."""

    OPTION = "option"
    SHIPPING = "shipping"
    NEW_FAULTS = "new_faults"


@dataclass(frozen=True, slots=True, kw_only=True)
class RiskSettings:
    """What is drawn, and how often.

    Attributes
    ----------
    late_chance
        Chance that a delivery slips by one month. Common practice, no source. [0-1]
    new_faults
        Expected new faults a vehicle and driven month.
    """

    futures: int = 10_000
    seed: int = 0
    late_chance: float = 0.05
    new_faults: float = 0.0

    def __post_init__(self) -> None:
        if self.futures < 1:
            raise ValueError(f"futures: expected 1 or more, got {self.futures}")
        if self.seed < 0:
            raise ValueError(f"seed: expected 0 or more, got {self.seed}")
        if not 0 <= self.late_chance <= 1:
            raise ValueError(f"late_chance: expected 0-1, got {self.late_chance}")
        if not self.new_faults >= 0:  # refuses what is no number, too
            raise ValueError(f"new_faults: expected 0 or more, got {self.new_faults}")


@dataclass(frozen=True, slots=True, kw_only=True)
class MonthRisk:
    """One month over all futures; its place counts from the start.

    Attributes
    ----------
    planned, mean
        Balance at its end, in the plan and on average. [minor units]
    quantiles
        Of the balance, one for each of ``QUANTILES``. [minor units]
    holds, solvent
        Chance that the balance is no less than the reserve, and than 0. [0-1]
    planned_hours, mean_hours
        Own hours. [h]
    hours_over
        Chance that they are more than the month has. [0-1]
    """

    month: int
    planned: int
    mean: float
    quantiles: tuple[int, ...]
    holds: float
    solvent: float
    planned_hours: Fraction
    mean_hours: float
    hours_over: float


@dataclass(frozen=True, slots=True, kw_only=True)
class PromiseRisk:
    """A deadline, a milestone or the cure of a do-not-drive fault.

    Attributes
    ----------
    subject
        Id of the fault or of the milestone.
    month
        By when, counted from the start; for a cure the first month the plan has it.
    planned
        Whether the plan keeps it at all.
    chance
        That it is kept. [0-1]
    """

    promise: Promise
    subject: str
    month: int
    planned: bool
    chance: float


@dataclass(frozen=True, slots=True, kw_only=True)
class RiskShare:
    """What one source adds to the spread of the money.

    Attributes
    ----------
    subject
        Id of the option, of the vehicle for new faults; None for shipping.
    share
        Of the variance of all money moved within the horizon; the shares of all
        sources sum to 1, and one may be negative.
    deviation
        Standard deviation of its own money. [minor units]
    planned, mean
        What it costs within the horizon, in the plan and on average. [minor units]
    later
        Chance that an option is in force later than planned; 0 for other sources. [0-1]
    """

    source: RiskSource
    subject: str | None
    share: float
    deviation: float
    planned: int
    mean: float
    later: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Risk:
    """How a plan fares over many futures.

    Attributes
    ----------
    shares
        Largest first; sources that move no money are left out.
    holds, solvent, in_hours
        Chance that every month ends with no less than the reserve, with no less than
        0, and within its own hours. [0-1]
    extra_reserve
        Least extra money that keeps ``KEPT`` of the futures from going below zero in
        any month: before the first month, or in every month where unspent money does
        not move on. [minor units]
    planned_cost, mean_cost, deviation
        Money out less money back within the horizon: in the plan, on average, and its
        standard deviation. [minor units]
    """

    settings: RiskSettings
    months: tuple[MonthRisk, ...]
    promises: tuple[PromiseRisk, ...]
    shares: tuple[RiskShare, ...]
    holds: float
    solvent: float
    in_hours: float
    extra_reserve: int
    planned_cost: int
    mean_cost: float
    deviation: float
