"""The page as a document: its order, its landmarks, and that it needs nothing else."""

import re
from dataclasses import replace
from itertools import pairwise

import pytest

from partsplan.reports import report_html
from tests.reports.html.made_reports import made_report
from tests.reports.made import GARAGE, PLAN
from tests.support.html_page import Node, read_page


@pytest.fixture(scope="module")
def text() -> str:
    return report_html(made_report())


@pytest.fixture(scope="module")
def page(text: str) -> Node:
    return read_page(text)


def headings(page: Node) -> list[str]:
    return [node.text for node in page.all("h1", "h2")]


def test_what_must_not_be_driven_and_what_to_buy_come_first(page: Node) -> None:
    assert headings(page) == [
        "Plan for two old cars",
        "DO NOT DRIVE",
        "To buy this month, 2027-01 [EUR]",
        "To pay this month [EUR]",
        "Deposits and return days [EUR]",
        "Other days to keep",
        "The months [EUR]",
        "Charts",
        "Left alone, and why",
        "Missed deadlines",
        "Not drivable",
        "Warnings",
        "What this assumes",
        "Cautions",
    ]


def test_headings_step_down_one_level_at_a_time(page: Node) -> None:
    levels = [int(node.tag[1]) for node in page.all("h1", "h2", "h3", "h4")]
    assert levels[0] == 1
    assert levels.count(1) == 1
    assert all(after - before <= 1 for before, after in pairwise(levels))


def test_it_says_its_language_and_its_landmarks(page: Node) -> None:
    (html,) = page.all("html")
    assert html.attributes["lang"] == "en"
    (title,) = page.all("title")
    assert title.text == "Plan for two old cars, 2027-01 to 2027-03"
    assert [node.tag for node in page.all("header", "main", "nav", "footer")] == [
        "header",
        "main",
        "nav",
        "footer",
    ]


def test_it_needs_no_network_and_no_script(text: str, page: Node) -> None:
    assert list(page.all("script", "link", "img", "iframe", "object", "base")) == []
    for node in page.all():
        for name, value in node.attributes.items():
            assert not name.startswith("on")
            assert name not in ("src", "srcset", "action", "style")
            if name == "href":
                assert (value or "").startswith("#")
    assert "@import" not in text
    assert "url(" not in text
    assert set(re.findall(r"[a-z]+://[^\"' <]*", text)) == {
        "http://www.w3.org/2000/svg"
    }


def test_whatever_is_pointed_at_is_there_once(page: Node) -> None:
    names = [node.attributes["id"] for node in page.with_attribute("id")]
    assert len(names) == len(set(names))
    pointers = ("for", "aria-labelledby", "aria-describedby")
    aims = [
        node.attributes[name] for name in pointers for node in page.with_attribute(name)
    ]
    aims += [(node.attributes["href"] or "")[1:] for node in page.all("a")]
    assert len(aims) > 20
    assert set(aims) <= set(names)


def test_every_section_is_named_by_its_heading(page: Node) -> None:
    for section in page.all("section"):
        heading = next(section.all("h2", "h3"))
        assert section.attributes["aria-labelledby"] == heading.attributes["id"]


def test_table_headers_say_what_they_head(page: Node) -> None:
    tables = list(page.all("table"))
    assert tables
    for table in tables:
        (head,), (body,) = table.all("thead"), table.all("tbody")
        assert {th.attributes["scope"] for th in head.all("th")} == {"col"}
        rows = list(body.all("tr"))
        assert all(next(row.all("th")).attributes["scope"] == "row" for row in rows)
        widths = {len([*row.all("th", "td")]) for row in (*head.all("tr"), *rows)}
        assert len(widths) == 1


def test_the_same_report_is_the_same_page(text: str) -> None:
    assert report_html(made_report()) == text


def test_a_month_in_which_nothing_happens() -> None:
    idle = replace(
        PLAN,
        jobs=(),
        tools=(),
        orders=(),
        choices=replace(PLAN.choices, orders={}, tools={}),
        ledger=tuple(replace(line, out=0) for line in PLAN.ledger),
    )
    page = read_page(report_html(made_report(plan=idle)))
    told = page.text
    assert "Nothing to buy this month." in told
    assert "Nothing to pay this month." in told
    assert "Deposits and return days" not in told
    assert not list(page.all("input"))
    assert "Jobs by month" not in told


def test_a_garage_without_dangers_begins_with_the_list() -> None:
    calm = replace(
        GARAGE,
        faults=tuple(
            replace(one, severity=None, inspection=one.inspection.NONE)
            for one in GARAGE.faults
        ),
    )
    assert headings(read_page(report_html(made_report(calm))))[1].startswith("To buy")
