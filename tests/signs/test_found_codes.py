"""Codes in a text: found where they are, and nowhere else."""

import csv
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from partsplan.domain import FoundCode
from partsplan.signs import find_codes, well_formed

PUBLISHED = Path(__file__).parents[1] / "data" / "trouble_codes.csv"


def codes(text: str, *, as_bytes: bool = False) -> list[str]:
    return [one.code for one in find_codes(text, as_bytes=as_bytes)]


def published(valid: str) -> list[str]:
    with PUBLISHED.open(encoding="utf-8", newline="") as file:
        return [row["text"] for row in csv.DictReader(file) if row["valid"] == valid]


@pytest.mark.parametrize("code", published("yes"))
def test_published_codes_are_found_in_capitals_and_small(code: str) -> None:
    assert codes(f"read {code}, twice: {code.lower()}.") == [code]


@pytest.mark.parametrize("text", published("no"))
def test_wrong_forms_are_not_found(text: str) -> None:
    """The only one that a text may hold is a code in small letters."""
    expected = ["P0171"] if text == "p0171 " else []
    assert codes(f"read {text} today") == expected


@pytest.mark.parametrize(
    "text",
    [
        "P0301",
        "p0301",
        "P0301-00",
        "P0301:1C",
        "P0301.",
        "(P0301)",
        "#P0301",
        '"P0301"',
        '{"code":"P0301"}',
        "<td>P0301</td>",
        "code:P0301",
        "P0301=misfire",
        "1) P0301: whatever it means",
        "P0301\u201100",
        "*P0301*",
        "\ufeffP0301",
    ],
)
def test_a_code_is_found_in_any_dress(text: str) -> None:
    assert codes(text.removeprefix("\ufeff")) == ["P0301"]


@pytest.mark.parametrize(
    "text",
    [
        "XP0301",
        "P03012",
        "P0301A",
        "BP-P0301",
        "P0301-7",
        "P0301-123",
        "P0301-77-X",
        "06A/P0301",
        "P0301_b",
        "P0301.pdf",
        "me@P0301.example",
        "P-0301",
        "PP0301",
        "PO301",
        "\u0420\u04300301",
        "P\u0660301",
    ],
)
def test_nothing_is_found_inside_words_and_part_numbers(text: str) -> None:
    assert codes(text) == []


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("P0301/P0302", ["P0301", "P0302"]),
        ("P0300-P0304", ["P0300", "P0304"]),
        ("P0301,P0302;U0100|B1234", ["P0301", "P0302", "U0100", "B1234"]),
        ("C0031\tC0034\r\nC0037\u2028C003A", ["C0031", "C0034", "C0037", "C003A"]),
    ],
)
def test_several_codes_may_stand_close(text: str, expected: list[str]) -> None:
    assert codes(text) == expected


def test_repeated_codes_are_one_with_all_that_is_said() -> None:
    found = find_codes("P0301-1C\nP0301\np0301:00 P0301-1C\n")
    assert found == (FoundCode(code="P0301", failure_types=("1C", "00"), times=4),)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("two bytes: 0143 9234", ["P0143", "B1234"]),
        ("2-byte codes = C073", ["U0073"]),
        ("codes in hex: 0x4031, 0x8039", ["C0031", "B0039"]),
        ("code bytes: 01 43 C0 73", ["P0143", "U0073"]),
        ("DTC bytes: 01 43 00 00", ["P0143"]),
        ("two bytes:\n0143\n9000\n\n0127", ["P0143", "B1000"]),
        ("hex codes:\n0143\nEngine:\n9000", ["P0143"]),
        ("two bytes: 01 43 C0", []),  # which of them belong together?
        ("two bytes: 014 01433 0143-2", []),
        ("two bytes: 0143 P0143", ["P0143"]),
        ("0143 9234 01 43", []),
        ("it read 4096 bytes", []),
        ("8 hex bolts: 0143", []),
    ],
)
def test_two_bytes_count_only_where_the_text_says_so(
    text: str, expected: list[str]
) -> None:
    assert codes(text) == expected


def test_two_bytes_count_everywhere_when_asked_for() -> None:
    assert codes("0143 or P0301\n92 34", as_bytes=True) == ["P0143", "P0301", "B1234"]


CODES = st.from_regex(r"[PBCU][0-3][0-9A-F]{3}", fullmatch=True)
NOISE = st.text(max_size=30)


@given(st.text())
def test_any_text_is_read_and_only_codes_come_out(text: str) -> None:
    for as_bytes in (False, True):
        for one in find_codes(text, as_bytes=as_bytes):
            assert well_formed(one.code)
            assert one.times >= 1


@given(st.text("PBCUpbcu0123456789ABCDEFabcdef-:/. \n"))
def test_texts_full_of_near_codes_are_read_too(text: str) -> None:
    for one in find_codes(text):
        assert one.code in text.upper()


@given(CODES, NOISE, NOISE, st.booleans())
def test_a_code_planted_in_noise_is_found_once(
    code: str, before: str, after: str, small: bool
) -> None:
    planted = code.lower() if small else code
    known = {*codes(before), *codes(after)}
    found = codes(f"{before}\n{planted}\n{after}")
    assert found.count(code) == 1
    assert known <= set(found)


@given(
    st.lists(CODES, unique=True, max_size=20), st.sampled_from([" ", ",", "\n", ";"])
)
def test_every_code_of_a_list_is_found_in_its_order(
    listed: list[str], between: str
) -> None:
    assert codes(between.join(listed)) == listed


@given(CODES, st.from_regex(r"[A-Za-z0-9_]{1,5}", fullmatch=True))
def test_no_code_is_found_in_a_longer_word(code: str, more: str) -> None:
    assert codes(f"{more}{code}") == []
    assert codes(f"{code}{more}") == []


@given(st.integers(1, 0xFFFF))
def test_bytes_and_letters_say_the_same(value: int) -> None:
    (code,) = codes(f"two bytes: {value:04x}")
    assert codes(code) == [code]
