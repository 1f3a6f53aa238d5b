"""How sure a plan's money and promises are, as text and as JSON."""

from collections.abc import Iterator

from partsplan.domain import (
    KEPT,
    QUANTILES,
    Garage,
    MonthRisk,
    Plan,
    Promise,
    PromiseRisk,
    Risk,
)
from partsplan.reports.figures import many, money, month_name, percent, price
from partsplan.reports.names import fault_name
from partsplan.reports.page import Page
from partsplan.reports.plain_data import dumped, head, plain
from partsplan.reports.plan_tables import certainty
from partsplan.reports.risk_model import model
from partsplan.reports.risk_sources import sources
from partsplan.reports.tables import Column, figure, text

SHOWN = (0, len(QUANTILES) // 2, -1)
"""Places of the quantiles that have room in a table."""


def risk_tables(
    garage: Garage, plan: Plan, risk: Risk, *, width: int = 100, colour: bool = False
) -> str:
    """What a careful owner wants to know, as text. ``width`` is in characters."""
    page = Page(width, colour)
    last = month_name(garage.month(garage.months - 1))
    page.title(
        f"Risk of the plan for {garage.name}, {month_name(garage.start)} to {last}"
    )
    page.paragraph(" ".join(certainty(garage, plan)))
    page.paragraph(" ".join(_summary(garage, risk)))
    _months(page, garage, risk)
    _promises(page, garage, risk)
    sources(page, garage, plan, risk)
    page.heading("What this assumes and leaves out")
    page.bullets(model(garage, plan, risk))
    return str(page)


def risk_json(garage: Garage, plan: Plan, risk: Risk) -> str:
    """The same for other programs: money in minor units, chances 0-1."""
    return dumped(
        {
            **head(garage),
            "status": plan.status.value,
            "settings": plain(risk.settings),
            "holds": risk.holds,
            "solvent": risk.solvent,
            "in_hours": risk.in_hours,
            "extra_reserve": risk.extra_reserve,
            "extra_reserve_keeps": float(KEPT),
            "planned_cost": risk.planned_cost,
            "mean_cost": risk.mean_cost,
            "deviation": risk.deviation,
            "quantiles": [one / 100 for one in QUANTILES],
            "months": [
                {**plain(one), "month": str(garage.month(one.month))}
                for one in risk.months
            ],
            "promises": [
                {**plain(one), "month": str(garage.month(one.month))}
                for one in risk.promises
            ],
            "shares": plain(risk.shares),
        }
    )


def chance(share: float) -> str:
    """A chance in whole per cent; only what never failed is 100 %."""
    if 0 < share < 0.01:
        return "<1 %"
    if 0.99 < share < 1:
        return ">99 %"
    return f"{round(100 * share)} %"


def _summary(garage: Garage, risk: Risk) -> Iterator[str]:
    yield (
        f"Carried out in {many(risk.settings.futures)} futures "
        f"(seed {risk.settings.seed})."
    )
    if garage.reserve:
        yield (
            f"The chance that every month ends with the reserve of "
            f"{price(garage.currency, garage.reserve)} or more is "
            f"{chance(risk.holds)}, that none ends below zero {chance(risk.solvent)}, "
            f"that own hours suffice {chance(risk.in_hours)}."
        )
    else:
        yield (
            f"The chance that no month ends below zero is {chance(risk.solvent)}, "
            f"that own hours suffice {chance(risk.in_hours)}."
        )
    yield _extra(garage, risk)
    yield (
        f"In all it costs {price(garage.currency, risk.mean_cost)} on average, "
        f"planned are {money(garage.currency, risk.planned_cost)}."
    )


def _extra(garage: Garage, risk: Risk) -> str:
    kept = f"{percent(KEPT)} of the futures"
    if not risk.extra_reserve:
        return f"At least {kept} never go below zero, with no more put aside."
    extra = price(garage.currency, risk.extra_reserve)
    when = f"by {month_name(garage.start)}" if garage.carry_over else "in every month"
    return f"With {extra} more put aside {when}, {kept} never go below zero."


def _months(page: Page, garage: Garage, risk: Risk) -> None:
    page.heading(f"Balance at each month's end [{garage.currency.code}]")
    columns = [
        Column("Month"),
        figure("Planned", unit=garage.currency.code),
        figure(f"{QUANTILES[0]} %", unit=garage.currency.code),
        figure("Middle", unit=garage.currency.code),
        figure(f"{QUANTILES[-1]} %", unit=garage.currency.code),
        figure("Reserve", optional=True),
        figure("Not <0"),
        figure("Hours"),
    ]
    page.table("balances", columns, [_month(garage, one) for one in risk.months])
    reserve = "Reserve: chance that it holds. " if garage.reserve else ""
    page.paragraph(
        f"{QUANTILES[0]} %: one future in {100 // QUANTILES[0]} has that or less. "
        f"{reserve}Not <0: chance of no debt. Hours: chance that they suffice."
    )


def _month(garage: Garage, one: MonthRisk) -> tuple[str, ...]:
    return (
        month_name(garage.month(one.month)),
        money(garage.currency, one.planned),
        *(money(garage.currency, one.quantiles[place]) for place in SHOWN),
        chance(one.holds) if garage.reserve else "",
        chance(one.solvent),
        chance(1 - one.hours_over),
    )


def _promises(page: Page, garage: Garage, risk: Risk) -> None:
    """Chances of deadlines, milestones and do-not-drive cures; nothing if none."""
    if not risk.promises:
        return
    page.heading("Deadlines, milestones and what must not be driven")
    rows = [
        (
            _subject(garage, one),
            month_name(garage.month(one.month)),
            chance(one.chance) if one.planned else f"{chance(one.chance)}, not planned",
        )
        for one in risk.promises
    ]
    page.table("promises", [text("What"), Column("By"), figure("Holds")], rows)
    if any(one.promise is Promise.CURE and one.chance < 1 for one in risk.promises):
        page.paragraph(
            "Until a cure is fitted and checked the vehicle is not driven, whatever "
            "month the plan names."
        )


def _subject(garage: Garage, one: PromiseRisk) -> str:
    if one.promise is Promise.MILESTONE:
        found = next(part for part in garage.milestones if part.id == one.subject)
        return f"Milestone: {found.title or found.id}"
    opening = (
        "Deadline" if one.promise is Promise.DEADLINE else "Not driven until cured"
    )
    return f"{opening}: {fault_name(garage.fault[one.subject])}"
