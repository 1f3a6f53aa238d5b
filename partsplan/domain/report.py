"""A plan and all that is told beside it on one page."""

from dataclasses import dataclass
from fractions import Fraction

from partsplan.domain.comparison import Comparison
from partsplan.domain.curve import BudgetCurve
from partsplan.domain.departure import Faithfulness
from partsplan.domain.garage import Garage
from partsplan.domain.plan import Plan, Shortfall, Skip
from partsplan.domain.standing import Now


@dataclass(frozen=True, slots=True, kw_only=True)
class Report:
    """What a reader wants beside a plan; nothing here is left to be worked out.

    Attributes
    ----------
    garage
        As it was planned.
    faithfulness
        How the plan treats the one that was kept last; None if none was.
    now
        Where things stand on the day of the report.
    comparisons
        The options of each fault that the plan buys something for.
    borne, borne_without
        Points borne in each month, with the plan and with no job done at all.
    curve
        What other monthly sums would buy; None if nobody asked.
    usual
        The garage's own sum, if it is the same every month. [minor units]
    """

    garage: Garage
    plan: Plan
    skips: tuple[Skip, ...]
    shortfalls: tuple[Shortfall, ...]
    faithfulness: Faithfulness | None
    now: Now
    comparisons: tuple[Comparison, ...]
    borne: tuple[Fraction, ...]
    borne_without: tuple[Fraction, ...]
    curve: BudgetCurve | None = None
    usual: int | None = None
