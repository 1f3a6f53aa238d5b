"""Where things stand on a day, for a person in the garage."""

from collections.abc import Iterator

from partsplan.domain import (
    CheckedCause,
    DoNotDrive,
    Due,
    FitPart,
    Garage,
    MoneyNow,
    Month,
    Now,
    Part,
    PartState,
)
from partsplan.ledger import uncured
from partsplan.reports.duty_words import duty_line
from partsplan.reports.figures import count, day_name, listed, money, month_name, price
from partsplan.reports.names import LICENSED_NOTE, fault_name, option_is_flagged
from partsplan.reports.page import Page
from partsplan.reports.tables import Column, figure


def now_tables(now: Now, *, width: int = 100, colour: bool = False) -> str:
    """One screen: dangers, duties, money, parts and causes."""
    garage = now.standing.garage
    page = Page(width, colour)
    page.title(f"{garage.name} on {day_name(now.today)}")
    if not now.standing.entries:
        page.paragraph('Nothing is written down yet; "partsplan enter" does.')
    _duties(page, now)
    _money(page, now)
    _parts(page, now)
    _causes(page, now)
    if doubtful := {flag.entry for flag in now.standing.ledger.flags}:
        page.gap()
        entries = count(len(doubtful), "entry is", "entries are")
        page.paragraph(f'{entries} doubtful, see "partsplan entries".')
    return str(page)


def _duties(page: Page, now: Now) -> None:
    garage = now.standing.garage
    grave = [duty for duty in now.duties if isinstance(duty, DoNotDrive)]
    others = [duty for duty in now.duties if not isinstance(duty, DoNotDrive)]
    if grave:
        page.heading("DO NOT DRIVE", alarm=True)
        page.bullets(duty_line(garage, duty, now.today) for duty in grave)
    page.heading("To do")
    page.bullets(duty_line(garage, duty, now.today) for duty in others)
    if not others:
        page.paragraph("Nothing that has a day.")
    fits = (duty.option for duty in others if isinstance(duty, FitPart))
    if any(option_is_flagged(garage, option) for option in fits):
        page.paragraph(LICENSED_NOTE)


def _money(page: Page, now: Now) -> None:
    garage = now.standing.garage
    month = Month.of(now.today)
    page.heading(f"Money in {month_name(month)}")
    if now.money is None:
        page.paragraph(
            f"{month_name(month)} lies before {month_name(garage.start)}, this "
            "garage's first month. Its money is taken to be in the opening cash "
            "already."
        )
        return
    page.table(
        "money",
        [Column("What"), figure(garage.currency.code)],
        [(label, money(garage.currency, sum_)) for label, sum_ in _sums(now.money)],
    )
    if now.money.free < 0:
        over = price(garage.currency, -now.money.free)
        page.paragraph(f"That is {over} too much spent or promised.")
    if now.dues:
        page.gap()
        page.paragraph("Promised, by month:")
        page.bullets(_due(garage, due, month) for due in now.dues)


def _sums(found: MoneyNow) -> Iterator[tuple[str, int]]:
    yield "Left over" if found.opening >= 0 else "Owed from before", found.opening
    yield "Budget", found.budget
    yield "Came in", found.received
    yield "Spent", -found.spent
    yield "There now", found.balance
    yield "Promised, not yet paid", -found.promised
    yield "Reserve", -found.reserve
    yield "Free to spend", found.free
    if found.expected_back:
        yield "Expected back, not counted", found.expected_back


def _due(garage: Garage, due: Due, month: Month) -> str:
    late = ", overdue" if due.month < month else ""
    sum_ = price(garage.currency, due.amount)
    return f"{month_name(due.month)}{late}: {sum_}, {due.kind}, {due.option}."


def _parts(page: Page, now: Now) -> None:
    parts = [
        part
        for part in now.standing.ledger.parts.values()
        if part.state in (PartState.ON_THE_WAY, PartState.IN_HAND)
    ]
    if parts:
        page.heading("Parts on the way and in hand")
        page.bullets(_part(now.standing.garage, part) for part in parts)


def _part(garage: Garage, part: Part) -> str:
    since = (
        f"ordered on {day_name(part.ordered)}, expected on {day_name(part.expected)}"
        if part.state is PartState.ON_THE_WAY
        else f"since {day_name(part.expected)}"
    )
    option = garage.option.get(part.option)
    fixes = option.fixes if option else ()
    faults = [fault_name(garage.fault[cure.fault]) for cure in fixes]
    goal = f", for {listed(faults)}" if faults else ""
    return f"{part.option}: {part.state} ({since}){goal}."


def _causes(page: Page, now: Now) -> None:
    garage, ledger = now.standing.garage, now.standing.ledger
    last = {(one.fault, one.cause): one for one in ledger.checked}
    there = uncured(garage, ledger, Month.of(now.today))
    told = [
        f"{fault_name(fault)}: {'; '.join(_shown(one) for one in found)}."
        for fault in there
        if (found := [one for one in last.values() if one.fault == fault.id])
    ]
    if told:
        page.heading("Causes found or ruled out")
        page.bullets(told)


def _shown(one: CheckedCause) -> str:
    return (
        f'{"found" if one.found else "ruled out"} on {day_name(one.day)}: "{one.cause}"'
    )
