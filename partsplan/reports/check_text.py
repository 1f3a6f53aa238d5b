"""What was found in a garage, what was assumed, and what looks doubtful."""

from partsplan.domain import FaultStatus, Garage, Standing
from partsplan.reports.assumptions import filled, warnings
from partsplan.reports.figures import count, listed, month_name, number, price
from partsplan.reports.names import fault_name
from partsplan.reports.page import Page


def check_text(standing: Standing, *, width: int = 100, colour: bool = False) -> str:
    """The findings as text."""
    garage, page = standing.garage, Page(width, colour)
    page.title(f"{garage.name}: everything can be read")
    page.paragraph(f"Found {listed(_counts(standing))}.")
    page.paragraph(
        f"{count(garage.months, 'month')} from {month_name(garage.start)}; on average "
        f"{price(garage.currency, garage.mean_budget)} and "
        f"{number(sum(garage.monthly_hours) / garage.months)} own hours a month."
    )
    bare = unquoted(garage)
    if bare:
        page.heading("Open faults without an option: ask for quotes")
        page.bullets(fault_name(garage.fault[fault]) for fault in bare)
    if garage.assumed:
        page.heading("Assumed for blank cells")
        page.bullets(filled(garage.assumed))
    warnings(page, all_warnings(standing))
    return str(page)


def all_warnings(standing: Standing) -> tuple[str, ...]:
    """What looks doubtful in the tables and in the logbook."""
    flags = standing.ledger.flags
    logged = (f"logbook: entry {flag.entry}: {flag.message}" for flag in flags)
    return (*standing.garage.warnings, *logged)


def unquoted(garage: Garage) -> tuple[str, ...]:
    """Open faults for which no option is known."""
    return tuple(
        fault.id
        for fault in garage.faults
        if fault.status is FaultStatus.OPEN and not garage.options_for[fault.id]
    )


def _counts(standing: Standing) -> list[str]:
    garage = standing.garage
    open_ = sum(fault.status is FaultStatus.OPEN for fault in garage.faults)
    tables = (
        (len(garage.vehicles), "vehicle", ""),
        (len(garage.faults), "fault", ""),
        (len(garage.options), "option", ""),
        (len(garage.suppliers), "supplier", ""),
        (len(garage.access), "access group", ""),
        (len(garage.tools), "tool", ""),
        (len(garage.causes), "suspected cause", ""),
        (len(garage.milestones), "milestone", ""),
        (len(standing.entries), "logbook entry", "logbook entries"),
    )
    found = [count(*row) for row in tables if row[0]]
    return [f"{one} ({open_} open)" if " fault" in one else one for one in found]
