"""One check after the other, as sentences."""

from collections.abc import Iterator, Sequence

from partsplan.domain import CheckStep, Garage
from partsplan.pricing import flagged
from partsplan.reports.figures import money, number, percent
from partsplan.reports.names import LICENSED
from partsplan.reports.words import option_name


def step_lines(garage: Garage, steps: Sequence[CheckStep]) -> Iterator[str]:
    """What each check costs, how likely it finds the cause, and what cures it."""
    for step in steps:
        yield (
            f"{step.cause.cause} ({_check(garage, step)}): {_likely(step)}. "
            f"{_cure(garage, step)}"
        )


def named_cure(garage: Garage, step: CheckStep) -> str:
    """The cure by its option; marked where it is for a licensed person."""
    if not step.cause.cure:
        return ""
    mark = LICENSED if flagged(garage, garage.option[step.cause.cure]) else ""
    return f"{option_name(garage, step.cause.cure)}{mark}"


def _check(garage: Garage, step: CheckStep) -> str:
    if not step.checked:
        return "no check needed"
    cost = money(garage.currency, step.check) if step.check else "free"
    hours = step.cause.check_hours
    return f"{cost}, {number(hours)} h" if hours else cost


def _likely(step: CheckStep) -> str:
    first = f"{percent(step.cause.chance)} likely"
    if step.chance == step.cause.chance:
        return first
    if not step.checked:
        return f"{first}, and what is left if it is none of the others"
    return f"{first}, {percent(step.chance)} when its turn comes"


def _cure(garage: Garage, step: CheckStep) -> str:
    if step.cure_cost is None:
        return "No cure to buy is named."
    cost = money(garage.currency, step.cure_cost)
    return f"Cure: {named_cure(garage, step)}, {cost}. {_unchecked(step)}".rstrip()


def _unchecked(step: CheckStep) -> str:
    """How sure one must be to buy the cure without the check."""
    if not step.checked:
        return ""
    if not step.sure_enough:
        return "The check costs no less than the cure: buy it without."
    if step.skips_check:
        return f"{percent(step.sure_enough)} is sure enough: buy it without the check."
    if not step.check:
        return "The check is free: never buy unchecked."
    at_least = percent(step.sure_enough)
    if at_least == percent(1):
        return "Buy unchecked only if all but sure."
    return f"Buy unchecked only if at least {at_least} sure."
