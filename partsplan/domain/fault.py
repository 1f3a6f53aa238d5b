"""What is wrong with a vehicle, or wished for, and what may cause it."""

from dataclasses import dataclass
from fractions import Fraction

from partsplan.domain.months import Month
from partsplan.domain.numbers import ZERO
from partsplan.domain.scales import (
    FaultStatus,
    Inspection,
    Likelihood,
    Severity,
    System,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Fitted:
    """What was fitted before the first month, and ends before ``until``."""

    option: str
    relief: Fraction
    until: Month


@dataclass(frozen=True, slots=True, kw_only=True)
class Fault:
    """One thing wrong with a vehicle, or wished for.

    Attributes
    ----------
    severity, likelihood
        Of the harm it can do; None and F when it can do none.
    drivability
        0 none, 1 nuisance, 2 hampers, 3 hardly drivable, 4 not drivable.
    loss_per_month
        Money it costs while it waits. [minor units a month]
    damage_chance
        Chance of further damage. [0-1 a month]
    damage_cost
        What that damage would cost. [minor units]
    enjoyment
        Worth of a cosmetic wish to its owner. [0-10]
    points
        The owner's own figure; replaces the weighted score. [0-100]
    growth
        By how much its points grow. [share a month]
    fitted
        What relieves it already, for a time or in part.
    """

    id: str
    vehicle: str
    title: str
    kind: str = ""
    system: System = System.OTHER
    severity: Severity | None = None
    likelihood: Likelihood = Likelihood.ELIMINATED
    inspection: Inspection = Inspection.NONE
    drivability: int = 0
    loss_per_month: int = 0
    damage_chance: Fraction = ZERO
    damage_cost: int = 0
    enjoyment: Fraction = ZERO
    points: Fraction | None = None
    growth: Fraction = ZERO
    lamps: tuple[str, ...] = ()
    codes: tuple[str, ...] = ()
    pair_with: tuple[str, ...] = ()
    after: tuple[str, ...] = ()
    fix_by: Month | None = None
    status: FaultStatus = FaultStatus.OPEN
    fitted: tuple[Fitted, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Cause:
    """A suspected cause of a fault, and what a check of it takes."""

    fault: str
    cause: str
    chance: Fraction
    check_cost: int = 0
    check_hours: Fraction = ZERO
    cure: str | None = None
