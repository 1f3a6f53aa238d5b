"""A plan as sheets of cells: sums as numbers, months as text."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from decimal import Decimal
from fractions import Fraction

from partsplan.domain import (
    Coding,
    Currency,
    Faithfulness,
    FaultStatus,
    Garage,
    Job,
    Plan,
    Shortfall,
    Skip,
)
from partsplan.pricing import flagged, price
from partsplan.reports.assumptions import assumptions, cautions, warnings
from partsplan.reports.buying import credited_in, payments
from partsplan.reports.csv_tables import safe_csv
from partsplan.reports.departures import since_kept
from partsplan.reports.names import job_target, supplier_name
from partsplan.reports.page import Page
from partsplan.reports.plan_notes import do_not_drive, missed_deadlines, not_drivable
from partsplan.reports.plan_tables import certainty, outcome
from partsplan.reports.schedule import SUMS, month_money, steps
from partsplan.reports.suspicions import check_first
from partsplan.reports.words import sentence
from partsplan.sheets.writing import (
    TEXT,
    Filled,
    OutColumn,
    OutSheet,
    Value,
    workbook_bytes,
)


def plan_workbook(
    garage: Garage,
    plan: Plan,
    skips: Sequence[Skip],
    shortfalls: Sequence[Shortfall],
    faith: Faithfulness | None = None,
) -> bytes:
    """The whole plan: what there is to know, and a sheet for each of its tables.

    Raises
    ------
    InvalidRequest
        If a text is too long for a cell.
    """
    return workbook_bytes(_sheets(garage, plan, skips, shortfalls, faith))


def plan_csv(
    garage: Garage,
    plan: Plan,
    skips: Sequence[Skip],
    shortfalls: Sequence[Shortfall],
    faith: Faithfulness | None = None,
) -> Mapping[str, str]:
    """The same sheets as CSV, by their names."""
    return {
        sheet.title.replace(" ", "-"): safe_csv(
            [
                [column.title for column in sheet.columns],
                *([_text(cell) for cell in row] for row in sheet.rows),
            ]
        )
        for sheet in _sheets(garage, plan, skips, shortfalls, faith)
    }


def _sheets(
    garage: Garage,
    plan: Plan,
    skips: Sequence[Skip],
    shortfalls: Sequence[Shortfall],
    faith: Faithfulness | None,
) -> tuple[OutSheet, ...]:
    return (
        _notes(garage, plan, shortfalls, faith),
        _to_buy(garage, plan),
        _to_pay(garage, plan),
        _months(garage, plan),
        _ledger(garage, plan),
        _old_units(garage, plan),
        _tools(garage, plan),
        _skipped(garage, skips),
    )


def _text(value: Value) -> str:
    """A cell as plain text; sums with their decimals, and without groups."""
    assert not isinstance(value, Filled)
    return f"{value:f}" if isinstance(value, Decimal) else value or ""


@dataclass(slots=True)
class _Lines(Page):
    """Collects a text as rows of a heading and a line; other sheets have the tables."""

    rows: list[tuple[str, str]] = field(default_factory=list)
    about: str = ""

    def title(self, text: str) -> None:
        self.rows.append((text, ""))

    def heading(self, text: str, *, alarm: bool = False) -> None:
        self.about = text

    def paragraph(self, text: str) -> None:
        self.rows.append((self.about, text))

    def bullets(self, items: Iterable[str]) -> None:
        self.rows += [(self.about, item) for item in items]

    numbered = bullets


def _notes(
    garage: Garage,
    plan: Plan,
    shortfalls: Sequence[Shortfall],
    faith: Faithfulness | None,
) -> OutSheet:
    page = _Lines()
    page.title(f"{garage.name}, {garage.start} to {garage.month(garage.months - 1)}")
    page.heading("Plan")
    page.bullets(certainty(garage, plan))
    page.paragraph(outcome(garage, plan))
    do_not_drive(page, garage, plan, shortfalls)
    since_kept(page, garage, faith)
    check_first(page, garage, plan)
    missed_deadlines(page, garage, plan, shortfalls)
    not_drivable(page, garage, plan, shortfalls)
    warnings(page, garage.warnings)
    assumptions(page, garage)
    cautions(page, garage, plan)
    return OutSheet(title="plan", columns=_texts("About", "What"), rows=page.rows)


def _to_buy(garage: Garage, plan: Plan) -> OutSheet:
    columns = (
        *_texts("Job", "Part number"),
        OutColumn(title="Pieces"),
        *_texts("For", "From", "Route"),
        *_sums(garage.currency, "Price", "Deposit", "Coding"),
        *_texts("Coding by", "Licensed work"),
    )
    ordered = [job for job in plan.jobs if job.ordered == 0 and not job.bought]
    rows = [_bought(garage, job) for job in ordered]
    return OutSheet(title="to buy", columns=columns, rows=rows)


def _bought(garage: Garage, job: Job) -> list[Value]:
    option, own = garage.option[job.option], garage.currency
    return [
        job.option,
        option.part_no,
        _number(option.quantity),
        job_target(garage, job),
        supplier_name(garage, job.supplier),
        job.route.value,
        _sum(own, job.landed),
        _sum(own, job.deposit) if job.deposit else None,
        _sum(own, option.coding_cost) if option.coding is Coding.PAID else None,
        "" if option.coding is Coding.NONE else option.coding.value,
        _yes(flagged(garage, option)),
    ]


def _to_pay(garage: Garage, plan: Plan) -> OutSheet:
    own = garage.currency
    due = [(what, amount) for what, amount in payments(garage, plan, 0) if amount]
    rows = [(what, _sum(own, amount)) for what, amount in due]
    rows.append(("Total", _sum(own, plan.ledger[0].out)))
    columns = (*_texts("To pay this month"), *_sums(own, "Sum"))
    return OutSheet(title="to pay", columns=columns, rows=rows)


def _months(garage: Garage, plan: Plan) -> OutSheet:
    own = garage.currency
    columns = (
        *_texts("Month", "Do", "Job", "For", "From"),
        *_sums(own, "Price"),
        OutColumn(title="Hours"),
        *_texts("Licensed work"),
    )
    rows = [
        [
            str(garage.month(step.month)),
            step.do,
            step.job,
            step.target,
            step.supplier,
            None if step.price is None else _sum(own, step.price),
            _number(step.hours) if step.hours else None,
            _yes(step.licensed),
        ]
        for step in steps(garage, plan)
    ]
    return OutSheet(title="months", columns=columns, rows=rows)


def _ledger(garage: Garage, plan: Plan) -> OutSheet:
    columns = (
        *_texts("Month"),
        *_sums(garage.currency, *SUMS),
        OutColumn(title="Hours used"),
        OutColumn(title="Hours there are"),
    )
    rows: list[list[Value]] = [
        [
            str(garage.month(line.month)),
            *(_sum(garage.currency, one) for one in month_money(garage, plan, line)),
            _number(line.hours),
            _number(garage.monthly_hours[line.month]),
        ]
        for line in plan.ledger
    ]
    return OutSheet(title="ledger", columns=columns, rows=rows)


def _old_units(garage: Garage, plan: Plan) -> OutSheet:
    own = garage.currency
    rows: list[list[Value]] = []
    for job in plan.jobs:
        if job.deposit:
            option = garage.option[job.option]
            trusted = option.core_chance >= garage.core_trust
            back = str(garage.month(credited_in(garage, job)))
            rows.append(
                [
                    job.option,
                    supplier_name(garage, job.supplier),
                    str(garage.month(job.fitted)),
                    Decimal(option.core_days),
                    _sum(own, job.deposit),
                    _sum(own, price(garage, option).core_return),
                    back if trusted else "not counted on",
                ]
            )
    columns = (
        *_texts("Job", "To", "Fitted"),
        OutColumn(title="Send within [days]"),
        *_sums(own, "At stake", "To return"),
        *_texts("Counted on in"),
    )
    return OutSheet(title="old units", columns=columns, rows=rows)


def _tools(garage: Garage, plan: Plan) -> OutSheet:
    rows: list[list[Value]] = [
        [
            garage.tool[buy.tool].name,
            str(garage.month(buy.month)),
            _sum(garage.currency, buy.price),
        ]
        for buy in plan.tools
    ]
    columns = (*_texts("Tool", "Month"), *_sums(garage.currency, "Price"))
    return OutSheet(title="tools", columns=columns, rows=rows)


def _skipped(garage: Garage, skips: Sequence[Skip]) -> OutSheet:
    rows = [*_left(garage, skips)]
    columns = _texts("Fault", "Title", "Vehicle", "Why")
    return OutSheet(title="skipped", columns=columns, rows=rows)


def _left(garage: Garage, skips: Sequence[Skip]) -> Iterator[tuple[str, ...]]:
    reasons = {
        skip.fault: " ".join(sentence(garage, one) for one in (skip.reason, *skip.also))
        for skip in skips
    }
    reasons |= {
        fault.id: "Only watched, as you asked."
        for fault in garage.faults
        if fault.status is FaultStatus.WATCH
    }
    for name, why in reasons.items():
        fault = garage.fault[name]
        yield name, fault.title, garage.vehicle[fault.vehicle].name, why


def _texts(*titles: str) -> tuple[OutColumn, ...]:
    return tuple(OutColumn(title=title, number_format=TEXT) for title in titles)


def _sums(currency: Currency, *titles: str) -> tuple[OutColumn, ...]:
    decimals = f".{'0' * currency.digits}" if currency.digits else ""
    shape = f"#,##0{decimals}"
    return tuple(
        OutColumn(title=f"{title} [{currency.code}]", number_format=shape)
        for title in titles
    )


def _yes(told: bool) -> str:
    return "yes" if told else ""


def _sum(currency: Currency, amount: int) -> Decimal:
    """Exact. [minor units]"""
    return Decimal(currency.format(amount))


def _number(value: Fraction) -> Decimal:
    """Hours and pieces, with two decimals at most."""
    return Decimal(round(value * 100)) / 100
