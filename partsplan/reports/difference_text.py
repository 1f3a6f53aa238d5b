"""The difference of two plans in a sentence, and how sure it is."""

from collections.abc import Iterator

from partsplan.domain import (
    Currency,
    JobFact,
    JobShift,
    PlanDifference,
    Stage,
    StageDifference,
)
from partsplan.reports.figures import count, listed, money, price

MORE_OR_FEWER = {
    Stage.DEADLINES: ("missed deadline", "missed deadlines"),
    Stage.SAFETY: (
        "month with a vehicle that must not be driven",
        "months with a vehicle that must not be driven",
    ),
    Stage.MOBILITY: (
        "month with a vehicle that cannot be driven",
        "months with a vehicle that cannot be driven",
    ),
}
MONTHS = {JobFact.ORDERED, JobFact.FITTED}
WAYS = {JobFact.OPTION, JobFact.ROUTE, JobFact.SUPPLIER}


def in_one_sentence(currency: Currency, difference: PlanDifference) -> str:
    """What changes: jobs first, then what the stages reach."""
    if difference.empty:
        return "Nothing changes: the same jobs in the same months, at the same cost."
    jobs = list(_jobs(difference)) or ["The jobs stay as they are"]
    reached = [
        text for one in difference.stages if (text := _stage(currency, difference, one))
    ]
    return "; ".join([listed(jobs), *reached]) + "."


def moved(shift: JobShift) -> bool:
    """Whether a job has the same option in another month."""
    return JobFact.OPTION not in shift.facts and bool(MONTHS.intersection(shift.facts))


def another_way(shift: JobShift) -> bool:
    """Whether a job comes by another option, route or supplier."""
    return bool(WAYS.intersection(shift.facts))


def another_cost(shift: JobShift) -> bool:
    """Whether its price differs, or its charge although nothing else does."""
    if another_way(shift):
        return False
    prices = {JobFact.PRICE, JobFact.DEPOSIT}.intersection(shift.facts)
    return bool(prices) or (JobFact.CHARGE in shift.facts and not moved(shift))


def _jobs(difference: PlanDifference) -> Iterator[str]:
    ways, moves, costs = (
        sum(map(kind, difference.shifts)) for kind in (another_way, moved, another_cost)
    )
    for how_many, one, many in (
        (len(difference.leave), "leaves", "leave"),
        (len(difference.enter), "enters", "enter"),
        (ways, "is done another way", "are done another way"),
        (moves, "moves", "move"),
        (costs, "costs otherwise", "cost otherwise"),
    ):
        if how_many:
            yield f"{count(how_many, 'job')} {one if how_many == 1 else many}"


def _stage(currency: Currency, difference: PlanDifference, one: StageDifference) -> str:
    """What a stage reaches more or less; empty if that is the same for certain."""
    if one.stage is Stage.WORTH:
        return _net_worth(currency, difference, one)
    words = MORE_OR_FEWER[one.stage]
    if not one.certain:
        return f"whether there are more {words[1]} cannot be told"
    if not one.change:
        return ""
    step = "more" if one.change > 0 else "fewer"
    return f"{count(abs(one.change), f'{step} {words[0]}', f'{step} {words[1]}')}"


def _net_worth(
    currency: Currency, difference: PlanDifference, one: StageDifference
) -> str:
    if difference.otherwise_worth:
        return ""
    if not one.certain:
        both = f"{money(currency, one.before)} and {price(currency, one.after)}"
        return f"the two net worths, {both}, cannot be told apart"
    if not one.change:
        return "the same net worth"
    step = "more" if one.change > 0 else "less"
    return f"{price(currency, abs(one.change))} {step} net worth"
