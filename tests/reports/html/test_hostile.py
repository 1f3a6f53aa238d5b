"""Whatever somebody writes into a garage stays a text on its page."""

from collections import Counter
from functools import cache

import pytest
from hypothesis import given, settings

from partsplan.domain import Garage, Plan
from partsplan.planning import plan
from partsplan.reports import report_html
from tests.reports.html.hostile import LONG, SCRIPT, TEXTS, TURNED, hostile_report
from tests.reports.html.made_reports import made_report
from tests.support.garages import garages
from tests.support.html_page import Node, read_page


def elements(page: Node) -> Counter[tuple[str, ...]]:
    """What the page is made of: tags with the names of their attributes."""
    return Counter((node.tag, *node.attributes) for node in page.all())


@cache
def harmless() -> Counter[tuple[str, ...]]:
    return elements(read_page(report_html(hostile_report("plain"))))


@pytest.mark.parametrize("text", TEXTS.values(), ids=TEXTS)
def test_a_text_adds_no_element_and_no_attribute(text: str) -> None:
    page = read_page(report_html(hostile_report(text)))
    found = elements(page)
    drawn = ("text", "tspan", "path", "g", "line", "rect", "svg")  # texts are cut
    for kind, how_many in found.items():
        if kind[0] not in drawn and kind != ("span", "class"):
            assert how_many == harmless()[kind], kind
    assert {kind[0] for kind in found} == {kind[0] for kind in harmless()}


def test_a_text_is_shown_as_it_was_written() -> None:
    page = read_page(report_html(hostile_report(SCRIPT)))
    (title,) = page.all("title")
    assert title.text.startswith(f"Plan for garage {SCRIPT}")
    told = [node.text for node in page.all("li", "td", "th", "h3")]
    for what in ("fault", "shop", "tool", "warning", "part"):
        assert any(f"{what} {SCRIPT}" in one for one in told), what
    drawings = [svg for svg in page.all("svg") if "role" in svg.attributes]
    assert any("<script" in svg.text for svg in drawings)


def test_no_text_turns_round_what_stands_beside_it() -> None:
    text = report_html(hostile_report(TURNED))
    assert not {*text} & {*"\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069"}
    assert "שמש" in text


def test_a_long_word_is_cut_in_drawings_only() -> None:
    page = read_page(report_html(hostile_report(LONG)))
    drawings = [svg for svg in page.all("svg") if "role" in svg.attributes]
    assert all(LONG not in svg.text for svg in drawings)
    assert any(LONG in one.text for one in page.all("li"))


@pytest.mark.slow
@settings(max_examples=60, deadline=None)
@given(garages())
def test_any_garage_makes_a_page(made: Garage) -> None:
    found = plan(made)
    if isinstance(found, Plan):
        page = read_page(report_html(made_report(made, found, skips=(), shortfalls=())))
        assert len([*page.all("h1")]) == 1
        assert not [*page.all("script")]
