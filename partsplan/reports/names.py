"""How jobs, faults, vehicles and suppliers are called in a text."""

from fractions import Fraction

from partsplan.domain import CURED, Fault, Garage, Job, Route
from partsplan.pricing import flagged
from partsplan.reports.figures import month_name, percent

LICENSED = "*"
LICENSED_NOTE = f"{LICENSED} Work for a licensed person, or to be checked by one."


def fault_name(fault: Fault) -> str:
    """A fault's title with the id by which it is asked for."""
    return f"{fault.title} ({fault.id})"


def relieved_now(garage: Garage, fault: Fault) -> str:
    """What was fitted before does for a fault, such as "cured until 2027-03".

    Empty if that is nothing in the first month; without a month if it does not run out
    as long as the fault counts.
    """
    relief = garage.relieved(fault, 0)
    if not relief:
        return ""
    what = "cured" if relief >= CURED else f"relieved by {percent(relief)}"
    until = max(one.until for one in fault.fitted if one.relief == relief)
    if garage.index(until) >= garage.counted_end(garage.vehicle[fault.vehicle]):
        return what
    return f"{what} until {month_name(until.plus(-1))}"


def job_name(garage: Garage, job: Job) -> str:
    """A job by its option; marked where it is for a licensed person."""
    mark = LICENSED if flagged(garage, garage.option[job.option]) else ""
    return f"{job.option}{mark}"


def option_is_flagged(garage: Garage, option: str) -> bool:
    """Whether its job is for a licensed person; no if the garage has it no more."""
    found = garage.option.get(option)
    return found is not None and flagged(garage, found)


def of_workshop(garage: Garage, option: str) -> bool:
    """Whether somebody is paid for it; no if the garage has it no more."""
    found = garage.option.get(option)
    return found is not None and found.route is Route.WORKSHOP


def job_target(garage: Garage, job: Job) -> str:
    """What a job is for: its faults, and their vehicle where there are several."""
    option = garage.option[job.option]
    faults = [garage.fault[fault] for fault in job.faults]
    titles = "; ".join(
        fault.title + _partly(option.relief(fault.id)) for fault in faults
    )
    if len(garage.vehicles) == 1:
        return titles
    return f"{titles}, {garage.vehicle[faults[0].vehicle].name}"


def supplier_name(garage: Garage, supplier: str | None) -> str:
    """A supplier's name; empty without one."""
    return garage.supplier[supplier].name if supplier else ""


def _partly(relief: Fraction) -> str:
    return "" if relief == 1 else f" (relieved by {percent(relief)})"
