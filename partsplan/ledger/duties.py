"""What is to be done, and by which day."""

from collections.abc import Set
from datetime import date

from partsplan.domain import Duty, Garage, Ledger
from partsplan.ledger.fault_duties import (
    cures_by_a_day,
    not_to_be_driven,
    quotes_that_end,
)
from partsplan.ledger.part_duties import instalments_to_pay, of_part


def duties(
    garage: Garage, ledger: Ledger, today: date, do_not_drive: Set[str]
) -> tuple[Duty, ...]:
    """All that is to be done, by day; what is overdue comes first.

    ``do_not_drive`` names the faults with which a vehicle must not be driven.
    """
    found = [
        *not_to_be_driven(garage, ledger, today, do_not_drive),
        *cures_by_a_day(garage, ledger, today),
        *(duty for part in ledger.parts.values() for duty in of_part(part, today)),
        *instalments_to_pay(ledger, today),
        *quotes_that_end(garage, ledger, today),
    ]
    return tuple(sorted(found, key=lambda duty: duty.day))
