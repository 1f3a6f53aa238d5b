"""Plans two garages, or one in two ways, and sets the plans side by side."""

from collections.abc import Sequence
from pathlib import Path

from partsplan.domain import Plan, PlanDifference, TwoPlans, Why
from partsplan.errors import InvalidRequest
from partsplan.usecases.live import Progress
from partsplan.usecases.opening import opening_garage
from partsplan.usecases.two_plans import Solving, two_plans


def beside(
    folder: Path,
    other_folder: Path,
    *,
    asked: Sequence[tuple[str, str]] = (),
    other_asked: Sequence[tuple[str, str]] = (),
    from_month: str | None = None,
    seconds: float = 30.0,
    gap: float = 1e-4,
    threads: int = 1,
    progress: Progress | None = None,
) -> TwoPlans:
    """The plans of two folders, which may be one, each with what is asked of it.

    What is asked are pairs such as ``("budget", "240")``, as for a what-if.

    Raises
    ------
    InvalidGarage, SolverFailed, UnsoundPlan
    InvalidRequest
        If the garages have different currencies, or cannot answer what is asked.
    KeyboardInterrupt
        If the search for the first plan was stopped.
    """
    from partsplan.explanation import Search, changed, why_different
    from partsplan.usecases.changes import read_changes

    garage, other_garage = (
        opening_garage(folder, from_month),
        opening_garage(other_folder, from_month),
    )
    if garage.currency != other_garage.currency:
        codes = f"{garage.currency.code} and {other_garage.currency.code}"
        raise InvalidRequest(f"the two garages count in {codes}; expected one currency")
    first = changed(garage, read_changes(garage, asked))
    second = changed(other_garage, read_changes(other_garage, other_asked))
    solving = Solving(seconds=seconds, gap=gap, threads=threads, progress=progress)

    def why(difference: PlanDifference, other_plan: Plan) -> Why | None:
        if first[1] != second[1]:
            return None  # what is forced is no input of a garage
        search = Search(seconds=solving.seconds_for_why, gap=gap, threads=threads)
        return why_different(
            first[0], second[0], other_plan, difference, search, force=second[1]
        )

    return two_plans(first, second, solving, why)
