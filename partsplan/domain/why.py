"""The defence of a plan: why this job, why not that one."""

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from partsplan.domain.reasons import Reason


@dataclass(frozen=True, slots=True, kw_only=True)
class Loss:
    """What another plan loses against the plan; below zero it gains.

    Attributes
    ----------
    net_worth
        [minor units]
    point_months
        Points borne for one month each, within the horizon.
    certain
        Whether the difference is larger than what both plans' gaps leave open.
    worth_certain
        The same of net worth alone, where counts differ too.
    """

    missed_deadlines: int
    unsafe_vehicle_months: int
    undrivable_vehicle_months: int
    net_worth: int
    point_months: Fraction
    certain: bool
    worth_certain: bool = True


@dataclass(frozen=True, slots=True, kw_only=True)
class Moved:
    """A job that another plan fits in another month; months from the start."""

    option: str
    before: int
    after: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Instead:
    """The best plan that does as told, against the plan.

    Attributes
    ----------
    enters, leaves
        Options of the jobs that come in and that fall out.
    """

    enters: tuple[str, ...]
    leaves: tuple[str, ...]
    moved: tuple[Moved, ...]
    loss: Loss


class Turn(StrEnum):
    """What a choice can be turned by."""

    PRICE = "price"
    POINTS = "points"
    ENJOYMENT = "enjoyment"
    BUDGET = "budget"


@dataclass(frozen=True, slots=True, kw_only=True)
class Threshold:
    """From where on something would be chosen, found by planning.

    Attributes
    ----------
    option
        Whose price is turned; None for what belongs to the fault or the garage.
    now
        Price in minor units of the option's currency, points 0-100, enjoyment 0-10,
        budget in minor units a month.
    at
        The nearest value at which it was planned and chosen; None if none was found.
    not_at
        The nearest value at which it was planned and not chosen.
    """

    turn: Turn
    option: str | None
    now: Fraction
    at: Fraction | None
    not_at: Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class WhyNot:
    """Why a fault or an option is left alone.

    Attributes
    ----------
    subject
        Id of the fault or option.
    ruled_out
        What rules its options out alone; where every one is, nothing follows.
    instead
        The best plan with it forced in; None if no plan can hold it, or it is ruled
        out.
    thresholds
        What would have to change for it to be chosen.
    later
        Fitting month if the plan looked further ahead; None if not tried or not then.
    cut_short
        Whether the time was up before all of that was looked for.
    """

    subject: str
    ruled_out: tuple[Reason, ...] = ()
    instead: Instead | None = None
    thresholds: tuple[Threshold, ...] = ()
    later: int | None = None
    cut_short: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class WhyChosen:
    """Why a job is in the plan.

    Attributes
    ----------
    option
        Id of its option.
    forced_by
        What asks for it besides its worth.
    runner_up
        The best plan without this option; None if it is the only way.
    by
        The option that then cures its faults; None if none does.
    without
        The best plan that leaves its faults alone.
    """

    option: str
    forced_by: tuple[Reason, ...]
    runner_up: Instead | None
    by: str | None
    without: Instead | None
