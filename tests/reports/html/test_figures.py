"""Charts: their figures against the plan, and that they describe themselves."""

import re
from dataclasses import replace
from fractions import Fraction
from xml.etree import ElementTree

import pytest

from partsplan.domain import Bought, BudgetCurve, BudgetPoint, Month, Needs
from partsplan.reports.html.chart_curve import curve_figure
from partsplan.reports.html.chart_jobs import MOST, jobs_figure
from partsplan.reports.html.chart_money import money_figure
from partsplan.reports.html.chart_points import points_figure
from partsplan.reports.html.chart_routes import routes_figures
from partsplan.reports.html.drawing import SVG
from partsplan.reports.html.figure import Figure
from partsplan.reports.html.inks import DEEP, MIDDLE
from partsplan.reports.html.leaf import Table
from tests.reports.html.made_reports import made_report
from tests.reports.made import GARAGE, PLAN
from tests.support.building import fault, garage, option
from tests.support.made_plans import as_planned

REPORT = made_report()
POINTS = tuple(
    BudgetPoint(
        budget=budget,
        found=Bought(
            stages=replace(PLAN.stages, net_worth=3 * budget),
            jobs=("hose-new",),
            open_faults=(),
            gap=0.0,
            proven=True,
        ),
    )
    for budget in (20000, 30000, 40000)
)
CURVE = BudgetCurve(
    points=(
        BudgetPoint(budget=5000, found=Needs(month=Month(2027, 1), money=700)),
        *POINTS,
    ),
    stays=(),
    resolution=None,
    finished=True,
    interrupted=False,
)


def column(table: Table, title: str) -> list[str]:
    place = [one.title for one in table.columns].index(title)
    return [row[place] for row in table.rows]


@pytest.fixture(scope="module")
def figures() -> dict[str, Figure]:
    jobs = jobs_figure(GARAGE, PLAN)
    assert jobs is not None
    found = (
        money_figure(GARAGE, PLAN),
        jobs,
        points_figure(REPORT),
        curve_figure(GARAGE, CURVE, 30000),
        *routes_figures(REPORT),
    )
    return {one.name: one for one in found}


def test_there_is_one_for_each_question(figures: dict[str, Figure]) -> None:
    assert list(figures) == ["money", "jobs", "points", "curve", "routes-1", "routes-2"]
    for figure in figures.values():
        assert figure.title
        assert figure.summary
        assert figure.key
        assert figure.table.rows


def test_a_drawing_is_one_picture_that_its_words_describe(
    figures: dict[str, Figure],
) -> None:
    for name, figure in figures.items():
        root = ElementTree.fromstring(figure.svg)
        assert root.attrib["role"] == "img"
        assert root.attrib["aria-labelledby"] == f"{name}-title"
        assert root.attrib["aria-describedby"] == f"{name}-summary"
        assert "width" not in root.attrib
        assert root.attrib["viewBox"]
        tags = {element.tag.removeprefix(f"{{{SVG}}}") for element in root.iter()}
        assert tags <= {"svg", "g", "path", "line", "rect", "text", "tspan"}
        for element in list(root.iter())[1:]:
            names = {"id", "role", "class", "href", "style"}
            assert not names & {*element.attrib}


def test_axes_tell_their_units(figures: dict[str, Figure]) -> None:
    for name, titles in {
        "money": {"EUR", "month"},
        "jobs": {"month"},
        "points": {"points", "month"},
        "curve": {"EUR a month", "net worth [EUR]"},
        "routes-1": {"landed price [EUR]"},
    }.items():
        assert titles <= texts(figures[name])


def texts(figure: Figure) -> set[str]:
    return {one.text or "" for one in ElementTree.fromstring(figure.svg).iter()}


def shapes(figure: Figure, attribute: str, colour: str) -> int:
    root = ElementTree.fromstring(figure.svg)
    return sum(1 for one in root.iter() if one.attrib.get(attribute) == colour)


@pytest.mark.parametrize(
    ("months", "labels"),
    [
        (3, ["01", "2027", "02", "03"]),
        (13, ["01", "2027", "03", "05", "07", "09", "11", "01", "2028"]),
        (36, [one for year in "789" for one in ("01", f"202{year}", "04", "07", "10")]),
    ],
)
def test_a_long_axis_names_fewer_months_but_every_year(
    months: int, labels: list[str]
) -> None:
    lines = [replace(PLAN.ledger[0], month=month) for month in range(months)]
    figure = money_figure(
        replace(GARAGE, months=months), replace(PLAN, ledger=tuple(lines))
    )
    named = re.findall(r">(0[0-9]|1[0-2]|20[0-9]{2})<", figure.svg)
    assert named == labels


def test_years_that_would_touch_are_told_once() -> None:
    lines = [replace(PLAN.ledger[0], month=month) for month in range(3)]
    garage = replace(GARAGE, start=Month(2026, 12), months=3)
    figure = money_figure(garage, replace(PLAN, ledger=tuple(lines)))
    named = re.findall(r">(0[0-9]|1[0-2]|20[0-9]{2})<", figure.svg)
    assert named == ["12", "01", "2027", "02"]


def test_money_is_that_of_the_ledger(figures: dict[str, Figure]) -> None:
    money = figures["money"]
    assert column(money.table, "Month") == ["2027-01", "2027-02", "2027-03"]
    assert column(money.table, "Out") == ["103.90", "296.90", "40.00"]
    assert column(money.table, "Balance") == ["196.10", "199.20", "459.20"]
    assert shapes(money, "fill", MIDDLE.light) == 3
    assert "2027-02: 296.90 EUR of a budget of 300.00" in money.summary


def test_a_bar_is_as_high_as_its_sum() -> None:
    """Heights of the bars are in the ratio of what goes out."""
    root = ElementTree.fromstring(money_figure(GARAGE, PLAN).svg)
    heights = [
        abs(float(one.attrib["d"].split("v")[1].split("h")[0]))
        for one in root.iter()
        if one.attrib.get("fill") == MIDDLE.light
    ]
    outs = [line.out for line in PLAN.ledger]
    for height, out in zip(heights, outs, strict=True):
        assert height / heights[0] == pytest.approx(out / outs[0], rel=0.01)


def test_jobs_tell_when_and_how_long(figures: dict[str, Figure]) -> None:
    table = figures["jobs"].table
    assert column(table, "Job") == ["hose-new", "ecu-exchange"]
    assert column(table, "Ordered") == ["2027-01", "2027-02"]
    assert column(table, "Fitted") == ["2027-01", "2027-03"]
    assert column(table, "Lasts until") == ["the vehicle goes"] * 2
    worn = (replace(GARAGE.options[0], life_months=2), *GARAGE.options[1:])
    figure = jobs_figure(replace(GARAGE, options=worn), PLAN)
    assert figure is not None
    assert column(figure.table, "Lasts until")[0] == "2027-02"


def test_more_jobs_than_fit_are_in_the_table() -> None:
    many = replace(PLAN, jobs=PLAN.jobs[:1] * (MOST + 5))
    figure = jobs_figure(GARAGE, many)
    assert figure is not None
    assert f"The first {MOST} are drawn." in figure.summary
    assert len(figure.table.rows) == MOST + 5
    assert shapes(figure, "fill", MIDDLE.light) == MOST


def test_points_are_those_of_the_scores(figures: dict[str, Figure]) -> None:
    """The hose scores 48, the control unit 27, the paint 6.

    Safety 100 x 0.8 x 0.6 of the hose; 30 x 0.5 x 0.6 and, at weekends, driving
    100 x 0.6 x 0.3 of the unit; enjoyment 60 x 0.1 of the paint.
    """
    table = figures["points"].table
    unit = 30 * Fraction(1, 2) * Fraction(6, 10) + 60 * Fraction(3, 10)
    nothing = 48 + unit + 6
    assert [float(one) for one in column(table, "Nothing done")] == [float(nothing)] * 3
    assert [float(one) for one in column(table, "With the plan")] == [
        float(nothing - 48),
        float(nothing - 48),
        float(6),
    ]


def test_the_curve_leaves_out_sums_without_a_plan(figures: dict[str, Figure]) -> None:
    curve = figures["curve"]
    assert column(curve.table, "EUR a month") == [
        "50.00",
        "200.00",
        "300.00",
        "400.00",
    ]
    assert column(curve.table, "Remark")[0].startswith("no plan: 7.00 EUR more")
    assert column(curve.table, "Remark")[1:] == ["", "now", ""]
    assert shapes(curve, "fill", DEEP.light) == 3


def test_the_chosen_route_is_marked(figures: dict[str, Figure]) -> None:
    van = figures["routes-2"]
    assert column(van.table, "Option") == ["ecu-exchange (exchange)", "ecu-new (new)"]
    assert column(van.table, "Landed") == ["210.00", "600.00"]
    assert column(van.table, "Remark") == ["chosen", ""]
    assert "210.00, chosen: ecu-exchange (exchange)" in texts(van)
    assert shapes(van, "fill", DEEP.light) == 1
    assert [mark for mark, _ in van.key] == ["full", "hollow"]


def test_a_barred_route_says_why() -> None:
    wont = tuple(
        replace(one, not_before=Month(2030, 1)) if one.id == "ecu-new" else one
        for one in GARAGE.options
    )
    *_, van = routes_figures(made_report(replace(GARAGE, options=wont)))
    assert "ecu-new (new) can be fitted" in column(van.table, "Remark")[1]
    assert "600.00, barred: ecu-new (new)" in texts(van)


def test_many_options_are_shared_out_among_charts() -> None:
    """Five options for each of six faults: two faults a chart, none left out."""
    faults = [fault(f"f{place}") for place in range(6)]
    options = [
        option(f"o{place}-{other}", f"f{place}")
        for place in range(6)
        for other in range(5)
    ]
    made = garage(faults=tuple(faults), options=tuple(options))
    chosen = as_planned(made, {f"o{place}-0": 0 for place in range(6)}, worth=0)
    report = made_report(made, chosen, skips=(), shortfalls=())
    figures = list(routes_figures(report))
    assert [one.name for one in figures] == ["routes-1", "routes-2", "routes-3"]
    assert figures[1].title == "Ways to mend: small hatchback, 2 of 3 [EUR]"
    told = [row[0] for one in figures for row in one.table.rows]
    assert sorted(told) == sorted(f"{one.id} (new)" for one in options)
    assert [shapes(one, "fill", DEEP.light) for one in figures] == [2, 2, 2]
