"""How far a setting may move before other parts are bought next."""

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction


class Setting(StrEnum):
    """What is turned, all else held."""

    MONEY_PER_POINT = "money_per_point"
    SAFETY = "safety"
    DRIVABILITY = "drivability"
    ENJOYMENT = "enjoyment"
    RESERVE = "reserve"


@dataclass(frozen=True, slots=True, kw_only=True)
class End:
    """One end of a range, both values planned.

    Attributes
    ----------
    holds
        The farthest value up to which every value tried keeps the purchases.
    breaks
        The nearest value beyond that changes them; None if none was found.
    adds, drops
        Options that are bought then and not now, and the other way round.
    possible
        Whether there is a plan at all at ``breaks``.
    """

    holds: Fraction
    breaks: Fraction | None = None
    adds: tuple[str, ...] = ()
    drops: tuple[str, ...] = ()
    possible: bool = True


@dataclass(frozen=True, slots=True, kw_only=True)
class SteadyRange:
    """The values of one setting for which the next purchases stay the same.

    Money in minor units, weights as they are.

    Attributes
    ----------
    step
        How closely an end is placed; farther out it is a hundredth of the value there.
    """

    setting: Setting
    now: Fraction
    step: Fraction
    low: End
    high: End


@dataclass(frozen=True, slots=True, kw_only=True)
class Sensitivity:
    """How steady the orders of the first month are.

    Attributes
    ----------
    purchases
        The options ordered in the first month, in file order.
    plans
        How many plans were made to find this.
    proven
        Whether each of them is proven best to the gap that was asked for.
    interrupted
        Whether somebody stopped the search; ends may then be farther out.
    """

    purchases: tuple[str, ...]
    ranges: tuple[SteadyRange, ...]
    plans: int
    proven: bool
    interrupted: bool
