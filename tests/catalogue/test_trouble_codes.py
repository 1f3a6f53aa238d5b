"""Trouble codes: SAE J2012 / ISO 15031-6."""

import csv
import re
from pathlib import Path

import pytest

from partsplan.catalogue import (
    CodeOwner,
    code_range,
    code_ranges,
    data_folder,
    fault_kinds,
    trouble_codes,
)
from partsplan.domain import System

PUBLISHED = Path(__file__).parents[1] / "data" / "trouble_codes.csv"
"""Each row names its source; the generic ones carry a meaning."""


def published() -> list[dict[str, str]]:
    with PUBLISHED.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file, strict=True))


def test_there_are_many_and_no_code_stands_twice() -> None:
    with (data_folder() / "trouble_codes.csv").open(encoding="utf-8") as file:
        rows = sum(1 for _ in file) - 1
    assert len(trouble_codes()) == rows >= 150


def test_every_code_has_the_form_of_a_generic_code() -> None:
    for code in trouble_codes():
        assert re.fullmatch(r"[PBCU][0-3][0-9A-F]{3}", code)
        assert re.fullmatch(r"P0.*|P2.*|P3[4-9].*|[BCU]0.*", code)


def test_the_published_ones_are_there() -> None:
    meant = [row["text"] for row in published() if row["meaning"]]
    assert len(meant) == 22
    assert set(meant) <= set(trouble_codes())


def test_each_points_to_fault_kinds_the_first_of_its_system() -> None:
    for code in trouble_codes().values():
        kinds = [fault_kinds()[key] for key in code.kinds]
        assert len({*code.kinds}) == len(code.kinds) >= 1, code.code
        assert kinds[0].system is code.system, code.code


def test_meanings_are_there_and_none_stands_twice() -> None:
    meanings = [code.meaning for code in trouble_codes().values()]
    assert all(15 < len(meaning) <= 90 for meaning in meanings)
    assert len(set(meanings)) == len(meanings)


def test_every_code_says_what_it_rests_on() -> None:
    sources = {code.source for code in trouble_codes().values()}
    assert sources == {"compared", "memory"}


def test_cylinders_coils_and_wheels_are_told_apart() -> None:
    """P0301 is cylinder 1; C0031, C0034, C0037, C003A are the four wheels."""
    codes = trouble_codes()
    for cylinder in range(1, 9):
        for family in ("P020", "P030"):
            assert f"cylinder {cylinder}" in codes[f"{family}{cylinder}"].meaning
    wheels = ("left front", "right front", "left rear", "right rear")
    for code, wheel in zip(("C0031", "C0034", "C0037", "C003A"), wheels, strict=True):
        assert wheel in codes[code].meaning


@pytest.mark.parametrize("code", ["C0035", "C0040", "C0045", "C0050"])
def test_codes_that_makers_read_in_two_ways_are_left_out(code: str) -> None:
    assert code not in trouble_codes()


def test_ranges_have_the_published_owners() -> None:
    told = [row for row in published() if row["kind"]]
    assert len(told) >= 33
    for row in told:
        assert code_range(row["text"]).owner.value == row["kind"], row["text"]


@pytest.mark.parametrize(
    ("prefixes", "owner"),
    [  # checks of the ranges of SAE J2012; reserved ones from a manual that quotes it
        ("P0 P2 P34 P35 P36 P37 P38 P39 B0 C0 U0", CodeOwner.GENERIC),
        ("P1 P30 P31 P32 P33 B1 B2 C1 C2 U1 U2", CodeOwner.MAKER),
        ("B3 C3 U3", CodeOwner.RESERVED),
    ],
)
def test_every_range_has_its_owner(prefixes: str, owner: CodeOwner) -> None:
    for prefix in prefixes.split():
        for code in (prefix.ljust(5, "0"), prefix.ljust(5, "F")):
            assert code_range(code).owner is owner, code


def test_every_code_is_in_some_range() -> None:
    letters_and_digits = {letter + digit for letter in "PBCU" for digit in "0123"}
    prefixes = [one.prefix for one in code_ranges()]
    assert letters_and_digits <= set(prefixes)
    assert len(set(prefixes)) == len(prefixes)


def test_codes_with_a_meaning_are_in_generic_ranges() -> None:
    owners = {code_range(code).owner for code in trouble_codes()}
    assert owners == {CodeOwner.GENERIC}


def test_brakes_steering_and_restraint_are_never_missed() -> None:
    assert System.RESTRAINT in code_range("B1234").systems
    assert {System.BRAKES, System.STEERING} <= set(code_range("C1234").systems)
