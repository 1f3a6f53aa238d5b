"""Plans a garage as it is and with changes, and tells the difference."""

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from partsplan.domain import Change, Plan, PlanDifference, TwoPlans, Why
from partsplan.errors import InvalidRequest
from partsplan.usecases.live import Progress
from partsplan.usecases.opening import opening_garage
from partsplan.usecases.two_plans import Solving, two_plans


@dataclass(frozen=True, slots=True, kw_only=True)
class WhatIfAnswer:
    """What was changed, and the plans without and with it, both sound."""

    changes: tuple[Change, ...]
    plans: TwoPlans


def whatif(
    folder: Path,
    asked: Sequence[tuple[str, str]],
    *,
    from_month: str | None = None,
    seconds: float = 30.0,
    gap: float = 1e-4,
    threads: int = 1,
    progress: Progress | None = None,
) -> WhatIfAnswer:
    """The garage in ``folder`` planned as it is, then with all that is asked.

    ``asked`` are pairs such as ``("price", "hose-new=19.50")``; the kinds are those of
    ``changes.READERS``.

    Raises
    ------
    InvalidGarage, SolverFailed, UnsoundPlan
    InvalidRequest
        If nothing is asked, or something that the garage cannot answer.
    KeyboardInterrupt
        If the search for the plan as it is was stopped.
    """
    from partsplan.explanation import Search, changed, why_changed
    from partsplan.planning import Force
    from partsplan.usecases.changes import read_changes

    if not asked:
        raise InvalidRequest("nothing is changed")
    garage = opening_garage(folder, from_month)
    changes = read_changes(garage, asked)
    other_garage, force = changed(garage, changes)
    solving = Solving(seconds=seconds, gap=gap, threads=threads, progress=progress)

    def why(_: PlanDifference, other_plan: Plan) -> Why | None:
        if len(changes) == 1:
            return None  # it can be due to nothing else
        search = Search(seconds=solving.seconds_for_why, gap=gap, threads=threads)
        return why_changed(garage, changes, other_garage, other_plan, search)

    plans = two_plans((garage, Force()), (other_garage, force), solving, why)
    return WhatIfAnswer(changes=changes, plans=plans)
