"""Whether other choices are as good as a plan, as far as is proven."""

from fractions import Fraction

from partsplan.domain import Choices, Garage, Plan, Stages


def as_good(figures: Stages, plan: Plan, gap: float) -> bool:
    """Whether choices of these figures are no worse than the plan.

    They may miss as much of the plan's bound as a proven plan may. [fraction]
    """
    best = plan.stages
    return (
        figures.missed_deadlines <= best.missed_deadlines
        and figures.unsafe_vehicle_months <= best.unsafe_vehicle_months
        and figures.undrivable_vehicle_months <= best.undrivable_vehicle_months
        and (
            figures.net_worth >= best.net_worth
            or missing(figures.net_worth, plan.bound) <= gap
        )
    )


def fits_as_many(garage: Garage, choices: Choices, other: Choices) -> bool:
    """Whether choices fit no fewer of the parts that are bought than others do.

    A plan that fits fewer is none, whatever its figures are.
    """
    bought = {option.id for option in garage.options if option.bought}
    return len(bought & choices.orders.keys()) >= len(bought & other.orders.keys())


def missing(worth: int, bound: int) -> float:
    """The gap between a net worth and a bound. [fraction]"""
    return float(Fraction(bound - worth, max(1, abs(worth))))
