"""The form of trouble codes: SAE J2012 / ISO 15031-6."""

import csv
from pathlib import Path

import pytest

from partsplan.signs import from_two_bytes, well_formed

PUBLISHED = Path(__file__).parents[1] / "data" / "trouble_codes.csv"
"""Each row names its source."""


def rows(valid: str) -> list[dict[str, str]]:
    with PUBLISHED.open(encoding="utf-8", newline="") as file:
        return [row for row in csv.DictReader(file) if row["valid"] == valid]


@pytest.mark.parametrize("row", rows("yes"), ids=lambda row: row["text"])
def test_published_codes_are_well_formed_and_decoded(row: dict[str, str]) -> None:
    assert well_formed(row["text"])
    assert from_two_bytes(row["two_bytes_hex"]) == row["text"]


@pytest.mark.parametrize("row", rows("no"), ids=lambda row: row["text"])
def test_published_wrong_forms_are_refused(row: dict[str, str]) -> None:
    assert not well_formed(row["text"])


def test_all_rows_are_there() -> None:
    assert (len(rows("yes")), len(rows("no"))) == (33, 8)


def test_each_two_bytes_are_one_code_of_their_own() -> None:
    codes = {from_two_bytes(f"{value:04X}") for value in range(1, 0x10000)}
    assert len(codes) == 0xFFFF
    assert all(code is not None and well_formed(code) for code in codes)


def test_two_empty_bytes_fill_up_and_are_no_code() -> None:
    assert from_two_bytes("0000") is None
