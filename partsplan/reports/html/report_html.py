"""The page: what is on it, in which order."""

from collections.abc import Iterator
from typing import Any

from partsplan.domain import Report
from partsplan.pricing import flagged
from partsplan.reports import assumptions, plan_notes
from partsplan.reports.departures import since_kept
from partsplan.reports.figures import day_name, month_name
from partsplan.reports.html.chart_curve import curve_figure
from partsplan.reports.html.chart_jobs import jobs_figure
from partsplan.reports.html.chart_money import money_figure
from partsplan.reports.html.chart_points import points_figure
from partsplan.reports.html.chart_routes import routes_figures
from partsplan.reports.html.duties import (
    deposits_due,
    not_driven_now,
    others_due,
    planned_returns,
)
from partsplan.reports.html.figure import Figure
from partsplan.reports.html.inks import INKS
from partsplan.reports.html.leaf import Leaf, Section
from partsplan.reports.html.months import months, sums, suspected, to_pay
from partsplan.reports.html.prose import prose
from partsplan.reports.html.safe import safe
from partsplan.reports.html.shopping import shopping
from partsplan.reports.locales import PLAIN, Locale, written_in
from partsplan.reports.names import LICENSED_NOTE
from partsplan.reports.plan_tables import certainty, outcome

TEMPLATE = "report.html"


def report_html(report: Report, locale: Locale = PLAIN) -> str:
    """One file that needs nothing else: no network, no script, no fonts.

    Sums, months and days are written as the reader of the ``locale`` writes them.
    """
    with written_in(locale):
        return _page(report)


def _page(report: Report) -> str:
    garage, plan = report.garage, report.plan
    return _rendered(
        garage=garage,
        today=report.now.today,
        today_name=day_name(report.now.today),
        first=month_name(garage.start),
        last=month_name(garage.month(garage.months - 1)),
        certainty=" ".join(certainty(garage, plan)),
        outcome=outcome(garage, plan),
        dangers=_dangers(report),
        orders=shopping(garage, plan, 0),
        suspected=suspected(garage, plan, 0),
        to_pay=to_pay(garage, plan, 0),
        sums=sums(garage, plan, 0),
        returns=planned_returns(report),
        deposits_due=deposits_due(report),
        others_due=others_due(report),
        months=months(garage, plan),
        licensed=LICENSED_NOTE if _licensed(report) else "",
        figures=tuple(_figures(report)),
        notes=_notes(report),
    )


def _dangers(report: Report) -> Section | None:
    """What must not be driven; None if everything may be."""
    leaf = Leaf()
    plan_notes.do_not_drive(leaf, report.garage, report.plan, report.shortfalls)
    if now := not_driven_now(report):
        if not leaf.sections:
            leaf.heading("DO NOT DRIVE", alarm=True)
        leaf.bullets(now)
    return leaf.sections[0] if leaf.sections else None


def _licensed(report: Report) -> bool:
    """Whether any job is marked as one for a licensed person."""
    garage = report.garage
    return any(flagged(garage, garage.option[job.option]) for job in report.plan.jobs)


def _figures(report: Report) -> Iterator[Figure]:
    garage, plan = report.garage, report.plan
    yield money_figure(garage, plan)
    if jobs := jobs_figure(garage, plan):
        yield jobs
    yield points_figure(report)
    if report.curve:
        yield curve_figure(garage, report.curve, report.usual)
    yield from routes_figures(report)


def _notes(report: Report) -> list[Section]:
    """What is not done, what moved, and what all of it rests on."""
    garage, plan, leaf = report.garage, report.plan, Leaf()
    plan_notes.left_alone(leaf, garage, report.skips)
    plan_notes.missed_deadlines(leaf, garage, plan, report.shortfalls)
    plan_notes.not_drivable(leaf, garage, plan, report.shortfalls)
    since_kept(leaf, garage, report.faithfulness)
    assumptions.warnings(leaf, garage.warnings)
    assumptions.assumptions(leaf, garage)
    assumptions.cautions(leaf, garage, plan)
    return leaf.sections


def _rendered(**told: Any) -> str:
    """The template with all texts escaped."""
    from jinja2 import Environment, PackageLoader, StrictUndefined
    from markupsafe import Markup

    environment = Environment(
        loader=PackageLoader("partsplan.reports.html"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        finalize=lambda value: safe(value) if type(value) is str else value,
    )
    environment.filters |= {"drawing": Markup, "prose": prose}
    return environment.get_template(TEMPLATE).render(inks=INKS, **told)
