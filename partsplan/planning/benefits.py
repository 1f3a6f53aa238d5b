"""What offers gain, worked out once for each option."""

from partsplan.domain import Garage, Offer
from partsplan.scoring import benefit


class Benefits:
    """What each offer of a garage gains, by fault and month. [minor units]"""

    def __init__(self, garage: Garage) -> None:
        self._garage = garage
        self._months: dict[tuple[str, int, int], tuple[int, ...]] = {}

    def of(self, offer: Offer, fault: str) -> tuple[int, ...]:
        """The gain of each month in which the offer is in force and counts.

        Shape: one figure a month from ``offer.fitted`` to before ``offer.until``.
        """
        relief = offer.option.relief(fault)
        key = fault, relief.numerator, relief.denominator
        if key not in self._months:
            self._months[key] = benefit(self._garage, self._garage.fault[fault], relief)
        return self._months[key][offer.fitted : offer.until]

    def total(self, offer: Offer) -> int:
        """What the offer gains if nothing else touches its faults."""
        return sum(sum(self.of(offer, fault)) for fault in offer.faults)
