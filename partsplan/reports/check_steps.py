"""One check after the other, as sentences."""

from collections.abc import Iterator, Sequence

from partsplan.domain import CheckStep, Garage
from partsplan.pricing import flagged
from partsplan.reports.csv_tables import keep
from partsplan.reports.figures import money, number, percent
from partsplan.reports.names import LICENSED
from partsplan.reports.tables import figure, text
from partsplan.reports.words import option_name


def step_lines(garage: Garage, steps: Sequence[CheckStep]) -> Iterator[str]:
    """What each check costs, how likely it finds the cause, and what cures it."""
    for step in steps:
        yield (
            f"{step.cause.cause} ({_check(garage, step)}): {_likely(step)}. "
            f"{_cure(garage, step)}"
        )


def keep_steps(garage: Garage, fault: str, steps: Sequence[CheckStep]) -> None:
    """The same as a table, for programs alone."""
    unit = garage.currency.code
    columns = [
        text("Check"),
        figure("Likely"),
        figure("When its turn comes"),
        figure("Check costs", unit=unit),
        figure("Own hours"),
        text("Cure"),
        figure("Cure costs", unit=unit),
        figure("Sure enough to buy unchecked"),
    ]
    rows = [
        [
            step.cause.cause,
            percent(step.cause.chance),
            percent(step.chance),
            money(garage.currency, step.check) if step.checked else "",
            number(step.cause.check_hours) if step.checked else "",
            step.cause.cure or "",
            "" if step.cure_cost is None else money(garage.currency, step.cure_cost),
            percent(step.sure_enough) if step.checked and step.sure_enough else "",
        ]
        for step in steps
    ]
    keep("checks", columns, rows, ("Fault", fault))


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
