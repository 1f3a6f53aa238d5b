"""What must hold between the rows of a garage, and what is odd.

Each check yields all that it finds.
"""

from collections.abc import Callable, Iterable, Iterator

from partsplan.errors import Problem
from partsplan.intake import fault_checks, option_checks
from partsplan.intake.columns import FAULTS, MOST_FAULTS, VEHICLES
from partsplan.intake.draft import Draft
from partsplan.intake.references import known_names

Check = Callable[[Draft], Iterable[Problem]]


def some_vehicle(draft: Draft) -> Iterator[Problem]:
    """Without a vehicle there is nothing to plan."""
    vehicles = draft.tables[VEHICLES.name]
    if vehicles.whole and not vehicles.rows and not vehicles.problems:
        yield Problem(vehicles.file, 0, "", "expected at least one vehicle, got none")


def not_too_many_faults(draft: Draft) -> Iterator[Problem]:
    """A limit that no plan could be made beyond."""
    faults = draft.tables[FAULTS.name]
    if (got := len(faults.rows)) > MOST_FAULTS:
        message = f"expected at most {MOST_FAULTS:,} faults, got {got:,}"
        yield Problem(faults.file, 0, "", message)


PROBLEMS: tuple[Check, ...] = (
    some_vehicle,
    not_too_many_faults,
    known_names,
    fault_checks.not_itself,
    fault_checks.no_circles,
    fault_checks.chances_of_causes,
    option_checks.one_vehicle,
    option_checks.price_range,
    option_checks.stand_ins,
    option_checks.fitting_window,
    option_checks.rates_known,
)
"""A garage that fails one of these is not read."""

WARNINGS: tuple[Check, ...] = (
    fault_checks.cures_that_miss,
    fault_checks.waits_for_watched,
    fault_checks.pairs_across_vehicles,
    fault_checks.odd_codes,
    option_checks.idle_costs,
    option_checks.tax_left_out,
    option_checks.old_quotes,
)
"""What these find is told, and planned with all the same."""


def run(checks: Iterable[Check], draft: Draft) -> Iterator[Problem]:
    """All that some checks find."""
    for check in checks:
        yield from check(draft)
