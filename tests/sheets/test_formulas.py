"""Text that a spreadsheet would count."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from partsplan.sheets import is_formula, protected, unprotected

texts = st.text(st.sampled_from("'=+-@.,0123456789aA (%/\n"), max_size=8)


@given(texts)
def test_what_was_protected_comes_back(text: str) -> None:
    assert unprotected(protected(text)) == text


@given(texts)
def test_what_was_protected_is_read_as_text(text: str) -> None:
    assert not is_formula(protected(text))


@given(texts)
def test_what_is_written_starts_like_no_formula_unless_it_is_a_number(
    text: str,
) -> None:
    written = protected(text)
    if written[:1] in ("=", "+", "-", "@") and len(written) > 1:
        float(written.replace(",", "."))


@pytest.mark.parametrize(
    "text", ["=1+1", "+49-30-1", "-1+1", "@SUM(1)", "-a", "+1+cmd|x", "-1/3", "- ='x"]
)
def test_these_would_be_counted(text: str) -> None:
    assert protected(text) == f"'{text}"


@pytest.mark.parametrize("text", ["", "-", "-5", "+5", "-12.50", "-12,50", ".5", "a=1"])
def test_these_would_not(text: str) -> None:
    assert protected(text) == text


def test_a_phone_number_is_taken_as_it_is_typed() -> None:
    assert not is_formula("+49 30 1234")
    assert is_formula("=A1")
    assert is_formula("-A1")
