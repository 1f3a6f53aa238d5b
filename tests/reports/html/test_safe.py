"""Texts that could act on their neighbours."""

import pytest

from partsplan.reports.html.prose import prose
from partsplan.reports.html.safe import safe


@pytest.mark.parametrize(
    "text", ["\x00", "\x1b", "\x85", "\u202e", "\u2066", "\uffff", "\ufdd0", "\ud800"]
)
def test_what_acts_on_its_neighbours_goes(text: str) -> None:
    assert safe(f"a{text}b") == "ab"


@pytest.mark.parametrize(
    "text", ["שמש", "\u200fשמש\u200e", "Bremsschläuche", "🚗", "</style>", "a\nb\tc"]
)
def test_letters_of_every_script_and_their_marks_stay(text: str) -> None:
    assert safe(text) == text


def test_prose_is_escaped_before_anything_is_held_together() -> None:
    held = prose('<b>2027-01</b> to 2027-01-31, "80 %" & on')
    assert held == (
        '&lt;b&gt;<span class="whole">2027-01</span>&lt;/b&gt; to '
        '<span class="whole">2027-01-31</span>, &#34;<span class="whole">80 %</span>'
        "&#34; &amp; on"
    )


def test_a_part_number_is_no_month() -> None:
    assert "span" not in prose("BP-4751-234, 12027-01 and 2027-011")
