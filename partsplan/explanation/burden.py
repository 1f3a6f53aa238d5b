"""What is borne while faults wait."""

from fractions import Fraction

from partsplan.domain import Choices, FaultStatus, Garage
from partsplan.scoring import points
from partsplan.verification import Facts


def points_borne(garage: Garage, choices: Choices) -> tuple[Fraction, ...]:
    """Points borne in each month of the horizon, one figure a month.

    Watched faults bear theirs whatever is chosen; what was fitted before relieves like
    what is chosen, and reliefs do not add up.
    """
    facts = Facts(garage, choices)
    borne = [Fraction(0)] * garage.months
    for fault in garage.faults:
        if fault.status is FaultStatus.FIXED:
            continue
        kept = garage.vehicle[fault.vehicle].keep_months
        for month in range(min(garage.months, kept)):
            relief = max(garage.relieved(fault, month), facts.relief(fault.id, month))
            borne[month] += points(garage, fault, month).points * (1 - relief)
    return tuple(borne)
