"""Text of any characters comes back from a workbook as it was."""

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from partsplan.sheets.escapes import escaped, unescaped

AWKWARD = st.text(st.sampled_from("_x0041FfEe5D\r\n\t\ufffe\uffff\x00\x1f"))


@pytest.mark.parametrize(
    ("text", "cell"),
    [
        ("a\tb\nc", "a\tb\nc"),
        ("a\rb", "a_x000D_b"),
        ("\ufffe", "_xFFFE_"),
        ("_x0041_", "_x005F_x0041_"),
        ("_x004_", "_x004_"),
        ("_x00412", "_x00412"),
        ("__x0041_", "__x005F_x0041_"),
    ],
)
def test_what_xml_cannot_hold_is_escaped(text: str, cell: str) -> None:
    assert escaped(text) == cell
    assert unescaped(cell) == text


@given(st.text() | AWKWARD)
@example("_x005F\ufffe")
@example("_x005F_x000D_")
def test_every_text_comes_back(text: str) -> None:
    assert unescaped(escaped(text)) == text


def test_escapes_of_other_programs_are_left_where_they_may_be_text() -> None:
    assert unescaped("_x0041_ and _x000d_") == "_x0041_ and \r"
