"""Confirmations of entries that came from files."""

from partsplan.domain import BroughtIn, Month
from partsplan.reports.figures import count, day_name, month_name, price
from partsplan.reports.page import Page


def brought_in_text(brought: BroughtIn, folder: str, *, width: int = 100) -> str:
    """What was taken over, and how all of it is taken back."""
    garage, whats = brought.garage, [entry.what for entry in brought.entries]
    currency, days = garage.currency, sorted(what.day for what in whats)
    total = sum(what.amount or 0 for what in whats)
    page = Page(width)
    page.paragraph(
        f"{count(len(whats), 'sum')}, {price(currency, total)} from "
        f"{day_name(days[0])} to {day_name(days[-1])}, written down as {brought.batch}."
    )
    earlier = [what for what in whats if Month.of(what.day) < garage.start]
    if earlier:
        past = price(currency, sum(what.amount or 0 for what in earlier))
        page.paragraph(
            f"{past} of it is older than {month_name(garage.start)}, so it is taken to "
            "be in the opening cash already."
        )
    page.paragraph("All of it is taken back by:")
    page.parts.append(f"partsplan enter {folder} undone {brought.batch}")
    return str(page)


def restored_text(file: str, entries: int, plans: int, *, width: int = 100) -> str:
    """What a logbook that was made anew holds."""
    page = Page(width)
    page.paragraph(
        f"{file} holds {count(entries, 'entry', 'entries')} and "
        f"{count(plans, 'plan')} again."
    )
    return str(page)
