"""Stored, pending and permanent codes are told apart."""

import pytest

from partsplan.signs import find_codes

TWO_LISTS = """\
Stored codes
P0301 misfire
P0420

Pending codes:
P0171 too lean
  a line of words about it
P0420

Permanent:
P0442

Notes:
P0507
"""


def states(text: str) -> dict[str, str]:
    return {one.code: " ".join(one.states) for one in find_codes(text)}


def test_headings_hold_until_the_next_one() -> None:
    assert states(TWO_LISTS) == {
        "P0301": "stored",
        "P0420": "stored pending",
        "P0171": "pending",
        "P0442": "permanent",
        "P0507": "",
    }


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("P0301 stored, P0171 pending", {"P0301": "stored", "P0171": "pending"}),
        ("Stored: P0301 P0302", {"P0301": "stored", "P0302": "stored"}),
        (
            "stored P0301; pending P0171; permanent P0442",
            {"P0301": "stored", "P0171": "pending", "P0442": "permanent"},
        ),
        ("P0301 P0302 pending", {"P0301": "pending", "P0302": "pending"}),
        ("P0301 CONFIRMED", {"P0301": "stored"}),
        ("P0301 not confirmed", {"P0301": "pending"}),
        ("P0301 (unconfirmed)", {"P0301": "pending"}),
        ("P0301 no pending ones", {"P0301": ""}),
        ("Pending:\nP0301", {"P0301": "pending"}),
        ("Pending: P0301\nP0302", {"P0301": "pending", "P0302": "pending"}),
        ("Pending: P0301,\nP0302, P0303", {f"P030{n}": "pending" for n in "123"}),
        ("Pending: P0301\nthen P0302", {"P0301": "pending", "P0302": ""}),
        (
            "Stored\npending: P0301\nP0302 it is",
            {"P0301": "pending", "P0302": "stored"},
        ),
        ("No pending codes.\nP0301", {"P0301": ""}),
        ("Pending codes: none\nP0301", {"P0301": ""}),
        ("stored and pending codes\nP0301", {"P0301": ""}),
        (
            "It has been in the workshop, where they stored it for a week\nP0301",
            {"P0301": ""},
        ),
        ("Pending:\nP0301\nABS unit:\nC0031", {"P0301": "pending", "C0031": ""}),
        ("two bytes, pending: 0143", {"P0143": "pending"}),
        ("permanently P0301", {"P0301": ""}),
    ],
)
def test_words_on_the_line_go_before_headings(
    text: str, expected: dict[str, str]
) -> None:
    assert states(text) == expected
