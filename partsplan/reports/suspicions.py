"""Jobs that a plan buys on a suspicion only."""

from collections import defaultdict
from collections.abc import Iterator
from fractions import Fraction

from partsplan.domain import Cause, Garage, Plan
from partsplan.reports.figures import count, percent
from partsplan.reports.names import fault_name
from partsplan.reports.page import Page


def check_first(page: Page, garage: Garage, plan: Plan) -> None:
    """Jobs for faults with suspected causes; nothing if there are none."""
    if lines := list(unchecked(garage, plan)):
        page.heading("Check before buying")
        page.bullets(lines)


def unchecked(garage: Garage, plan: Plan) -> Iterator[str]:
    """A sentence for each job that may not be the cure, since its fault has causes.

    What is bought already cannot be checked before.
    """
    suspected_of: dict[str, list[Cause]] = defaultdict(list)
    for one in garage.causes:
        suspected_of[one.fault].append(one)
    for job in plan.jobs:
        for fault in () if job.bought else job.faults:
            causes = suspected_of[fault]
            named = [one.chance for one in causes if one.cure == job.option]
            likely = sum(named, Fraction(0))
            if not causes or likely == 1:
                continue
            cures = (
                f"{job.option} cures what is {percent(likely)} likely"
                if named
                else f"{job.option} is named as the cure of none"
            )
            suspected = count(len(causes), "cause is", "causes are")
            yield (
                f"{fault_name(garage.fault[fault])}: {suspected} suspected, "
                f"and {cures}. What to check first, and what that saves: "
                "partsplan diagnose."
            )
