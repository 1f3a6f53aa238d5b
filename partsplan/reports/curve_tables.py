"""What each monthly sum buys, and from which sums to which each job is in the plan."""

from collections.abc import Iterator

from partsplan.domain import Bought, BudgetCurve, BudgetPoint, Garage, Needs, Stay
from partsplan.reports.figures import count, listed, money, month_name, number, price
from partsplan.reports.page import Page
from partsplan.reports.tables import Column, figure, text
from partsplan.reports.words import option_name


def curve_tables(
    garage: Garage,
    curve: BudgetCurve,
    usual: int | None = None,
    *,
    width: int = 100,
    colour: bool = False,
) -> str:
    """The sums at which the plan changes, or all that were asked for, and the jobs.

    ``usual`` is the garage's own sum. [minor units a month]
    """
    page = Page(width, colour)
    last = month_name(garage.month(garage.months - 1))
    page.title(
        f"What a monthly sum buys: {garage.name}, {month_name(garage.start)} to {last}"
    )
    page.paragraph(" ".join(_found(garage, curve)))
    page.gap()
    page.paragraph(
        "Missed: deadlines. Unsafe, stopped: months with a vehicle that must not, or "
        "cannot, be driven. Open: faults not cured at the end. These come before net "
        "worth, which may fall where a bigger sum first mends one of them."
    )
    page.gap()
    _changes(page, garage, curve, usual)
    _jobs(page, garage, curve)
    return str(page)


def curve_columns(garage: Garage) -> list[Column]:
    """What is told of each sum."""
    return [
        figure(f"{garage.currency.code} a month"),
        figure("Net worth", unit=garage.currency.code),
        figure("Missed"),
        figure("Unsafe"),
        figure("Stopped"),
        figure("Open"),
        figure("Jobs"),
        text("Remark", optional=True),
    ]


def curve_row(garage: Garage, point: BudgetPoint, *, now: bool) -> tuple[str, ...]:
    """One sum; ``now`` marks the garage's own."""
    budget, own = money(garage.currency, point.budget), ["now"] * now
    found = point.found
    if isinstance(found, Needs):
        lacks = price(garage.currency, found.money)
        return (
            budget,
            *[""] * 6,
            "; ".join([*own, f"no plan: {lacks} more in {month_name(found.month)}"]),
        )
    stages = found.stages
    return (
        budget,
        money(garage.currency, stages.net_worth),
        number(stages.missed_deadlines),
        number(stages.unsafe_vehicle_months),
        number(stages.undrivable_vehicle_months),
        number(len(found.open_faults)),
        number(len(_jobs_of(point))),
        *(own or [""]),
    )


def _found(garage: Garage, curve: BudgetCurve) -> Iterator[str]:
    currency = garage.currency
    first, last = curve.points[0].budget, curve.points[-1].budget
    yield (
        f"Found by planning for {count(len(curve.points), 'sum')} from "
        f"{money(currency, first)} to {price(currency, last)} a month; a point borne "
        "for one month stays worth what it is."
    )
    if curve.interrupted:
        yield "The search was stopped: this is what was known by then."
    if curve.resolution is None:
        yield "What happens between two of them is not known."
    else:
        yield (
            "Each row is a sum at which other jobs are done than just below; between "
            "two rows only months and net worth move, as far as was tried."
        )
        closely = f"Changes are placed to {price(currency, curve.resolution)}"
        if curve.finished:
            yield f"{closely}."
        elif not curve.interrupted:
            yield f"{closely}, but for some that were not closed in on: plans ran out."
    if doubtful := [
        money(currency, point.budget)
        for point in curve.points
        if isinstance(point.found, Bought) and not point.found.proven
    ]:
        yield f"Not proven best in the time: {listed(doubtful)}."


def _changes(page: Page, garage: Garage, curve: BudgetCurve, usual: int | None) -> None:
    shown = set(curve.changes) if curve.resolution else set(curve.points)
    rows: list[tuple[str, ...]] = []
    steps: list[str] = []
    before: frozenset[str] = frozenset()
    for point in curve.points:
        if point in shown or point.budget == usual:
            rows.append(curve_row(garage, point, now=point.budget == usual))
            steps += _step(garage, point, before)
        before = _jobs_of(point)
    page.table("sums", curve_columns(garage), rows)
    if steps:
        page.heading(f"What changes [{garage.currency.code} a month]")
        page.bullets(steps)


def _step(garage: Garage, point: BudgetPoint, before: frozenset[str]) -> Iterator[str]:
    """The jobs that come in and drop out at a sum, if any do."""
    jobs = _jobs_of(point)
    parts = [
        f"{what} {listed(_in_order(garage, some))}"
        for what, some in (("in:", jobs - before), ("out:", before - jobs))
        if some
    ]
    if parts:
        yield f"{money(garage.currency, point.budget)} {'; '.join(parts)}."


def _jobs(page: Page, garage: Garage, curve: BudgetCurve) -> None:
    if not curve.stays:
        return
    page.heading(f"When each job is in the plan [{garage.currency.code} a month]")
    spans: dict[str, list[Stay]] = {}
    for stay in curve.stays:
        spans.setdefault(stay.option, []).append(stay)
    if any(stay.above is not None for stay in curve.stays):
        page.paragraph(
            "A bigger budget can drop a job again, where the money then goes to a "
            "better one."
        )
        page.gap()
    page.table(
        "jobs",
        [text("Job"), text("For", share=2), text("Sums", share=2)],
        [
            (
                option_name(garage, option),
                _target(garage, option),
                "; ".join(_span(garage, stay) for stay in stays),
            )
            for option, stays in spans.items()
        ],
    )


def _span(garage: Garage, stay: Stay) -> str:
    first, last = (
        money(garage.currency, stay.first),
        money(garage.currency, stay.last),
    )
    if stay.below is None:
        return "all" if stay.above is None else f"up to {last}"
    if stay.above is None:
        return f"from {first} on"
    return first if stay.first == stay.last else f"{first} to {last}"


def _target(garage: Garage, option: str) -> str:
    return "; ".join(
        garage.fault[cure.fault].title for cure in garage.option[option].fixes
    )


def _jobs_of(point: BudgetPoint) -> frozenset[str]:
    found = point.found
    return frozenset() if isinstance(found, Needs) else frozenset(found.jobs)


def _in_order(garage: Garage, options: frozenset[str]) -> list[str]:
    return [one.id for one in garage.options if one.id in options]
