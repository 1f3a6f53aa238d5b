"""The page for a reader of another country."""

import re
from dataclasses import replace
from xml.etree import ElementTree

from partsplan.reports import LOCALES, report_html
from partsplan.reports.html.chart_money import money_figure
from partsplan.reports.locales import written_in
from tests.reports.html.made_reports import made_report
from tests.reports.made import GARAGE, PLAN
from tests.support.html_page import read_page


def test_a_reader_sees_sums_months_and_days_as_at_home() -> None:
    page = read_page(report_html(made_report(), LOCALES["de"]))
    headings = [node.text for node in page.all("h2", "h3")]
    assert "To buy this month, 1/2027 [EUR]" in headings
    assert {"1/2027", "2/2027", "3/2027"} <= {*headings}
    assert "1.234,50 EUR" in page.text
    assert "300,00 EUR come in, 103,90 go out: 196,10 EUR at the end" in page.text
    assert "103.90" not in page.text
    assert not re.findall(r"\b2027-[0-9]{2}\b", page.text)


def test_axes_are_written_alike() -> None:
    rich = replace(
        PLAN, ledger=tuple(replace(line, out=100 * line.out) for line in PLAN.ledger)
    )
    for code, thousands in (("de", "10.000"), ("en-GB", "10,000")):
        with written_in(LOCALES[code]):
            root = ElementTree.fromstring(money_figure(GARAGE, rich).svg)
        assert thousands in [one.text for one in root.iter()]


def test_the_plain_page_is_not_changed_by_another_before_it() -> None:
    plain = report_html(made_report())
    report_html(made_report(), LOCALES["de"])
    assert report_html(made_report()) == plain
