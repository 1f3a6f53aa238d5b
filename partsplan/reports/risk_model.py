"""What the futures of a plan are made of, and what they leave out, in words."""

from collections.abc import Iterator
from math import sqrt

from partsplan.domain import NEW_FAULT_MEDIAN, Garage, Option, Plan, Risk
from partsplan.reports.figures import number, percent


def model(garage: Garage, plan: Plan, risk: Risk) -> Iterator[str]:
    """The assumptions that matter for this plan, as sentences."""
    options = [garage.option[job.option] for job in plan.jobs]
    if any(low < high for low, high in map(price_span, options)):
        yield "Prices: between the lowest and highest seen, most likely the quote."
    if any(one.dud_chance for one in options):
        yield (
            "Bad parts: found when fitted; ordered again the month after, paid again "
            "without warranty, fitted after the same lead time, with own hours again."
        )
    if risk.settings.late_chance and any(one.lead_days for one in options):
        yield (
            f"Late parts: each delivery slips by a month with a chance of "
            f"{percent(risk.settings.late_chance)} (--late)."
        )
    if any(one.core_deposit for one in options):
        yield (
            "Old units: the deposit comes back whole or not at all; what comes back "
            "after the last month is not seen here."
        )
    yield _new_faults(risk)
    yield (
        "The plan is carried out to the letter: no job is put off for want of money or "
        "because another came late. You would plan again."
    )
    yield (
        f"Drawing makes chances uncertain by up to {_error(risk)}; the chances and "
        "prices that you wrote down matter more."
    )


def price_span(option: Option) -> tuple[int, int]:
    """Lowest and highest price of a piece. [minor units of the option's currency]"""
    low, high = option.price_low, option.price_high
    return (
        option.price if low is None else low,
        option.price if high is None else high,
    )


def _new_faults(risk: Risk) -> str:
    if not risk.settings.new_faults:
        return "New faults: none (--new-faults); accidents and lost income neither."
    return (
        f"New faults: {number(risk.settings.new_faults, 3)} a driven month and "
        f"vehicle, paid at once; half cost more than {percent(NEW_FAULT_MEDIAN)} of a "
        "mean month's budget."
    )


def _error(risk: Risk) -> str:
    """Two standard errors of a chance of one half."""
    return percent(1 / sqrt(risk.settings.futures))
