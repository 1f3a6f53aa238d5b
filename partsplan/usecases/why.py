"""Asks a plan why: for jobs, for faults that wait, for options not taken."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path

from partsplan.domain import Garage, Needs, Plan, WhyChosen, WhyNot
from partsplan.usecases.countdown import Clock, countdown
from partsplan.usecases.live import in_units
from partsplan.usecases.opening import opening_garage
from partsplan.usecases.plan import asked as as_asked
from partsplan.usecases.sound import sound
from partsplan.usecases.unknown import unknown

Progress = Callable[[str, float, float | None, float | None], None]

WHY = "reasons"
SEARCH_SECONDS = 2.5
"""Most time to look for the price, points and budget of one subject. [s]"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """What a plan says of one fault or option."""

    subject: str
    answers: tuple[WhyChosen | WhyNot, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class WhyAnswer:
    """A garage, its plan, and the defence of what was asked about."""

    garage: Garage
    plan: Plan | Needs
    answers: tuple[Answer, ...] = ()
    stopped: bool = False


def why(
    folder: Path,
    subjects: Sequence[str] = (),
    *,
    everything: bool = False,
    from_month: str | None = None,
    months: int | None = None,
    budget: str | None = None,
    seconds: float = 30.0,
    gap: float = 1e-4,
    threads: int = 1,
    search_seconds: float = SEARCH_SECONDS,
    clock: Clock,
    progress: Progress | None = None,
) -> WhyAnswer:
    """Why each subject is in the plan or not; without any, the faults left alone.

    ``everything`` asks about every job, too. ``clock`` tells seconds. A search that is
    stopped tells what is known by then.

    Raises
    ------
    InvalidGarage, InvalidRequest, SolverFailed, UnsoundPlan
    """
    from partsplan import explanation
    from partsplan.planning import Limits, Planner, must_be

    garage = as_asked(opening_garage(folder, from_month), months=months, budget=budget)
    _known(garage, subjects)
    planner = Planner(garage)
    limits = Limits(seconds=seconds, gap=gap, threads=threads)
    told = in_units(progress, garage.currency)
    plan = sound(garage, must_be(planner.best(limits, progress=told)))
    if isinstance(plan, Needs):
        return WhyAnswer(garage=garage, plan=plan)
    asked = list(subjects) or [
        one
        for one in explanation.subjects(garage, plan)
        if everything or one not in plan.choices.orders
    ]
    answers: list[Answer] = []
    stopped = plan.interrupted
    try:
        for subject in () if stopped else asked:
            if progress:
                progress(f"{WHY} for {subject}", plan.seconds, None, None)
            left = countdown(clock, search_seconds)
            found = explanation.why(planner, plan, subject, limits=limits, left=left)
            answers.append(Answer(subject=subject, answers=found))
    except KeyboardInterrupt:
        stopped = True
    return WhyAnswer(garage=garage, plan=plan, answers=tuple(answers), stopped=stopped)


def _known(garage: Garage, subjects: Sequence[str]) -> None:
    names = [*garage.fault, *garage.option]
    for subject in subjects:
        if subject not in names:
            raise unknown("fault or option", subject, names)
