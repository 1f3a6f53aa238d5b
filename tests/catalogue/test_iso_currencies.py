"""Currencies: ISO 4217, as carried by iso4217 1.16 (public domain)."""

import csv
from collections import Counter
from pathlib import Path

from partsplan.catalogue import currencies, data_folder

PUBLISHED = Path(__file__).parents[1] / "data" / "currencies_iso_4217.csv"


def rows(path: Path) -> list[dict[str, str]]:
    with path.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file, strict=True))


def test_digits_are_those_of_iso_4217() -> None:
    assert dict(currencies()) == {
        row["code"]: int(row["minor_units"])
        for row in rows(PUBLISHED)
        if row["minor_units"]
    }


def test_codes_without_minor_units_are_left_out() -> None:
    assert not {"XAU", "XXX", "XTS"} & set(currencies())
    # 178 codes in all, 13 of them without minor units
    assert Counter(currencies().values()) == {2: 139, 0: 17, 3: 7, 4: 2}


def test_numbers_and_names_are_those_of_iso_4217() -> None:
    columns = ("code", "number", "minor_units", "name")
    shipped = rows(data_folder() / "currencies.csv")
    assert [[row[one] for one in columns] for row in shipped] == [
        [row[one] for one in columns] for row in rows(PUBLISHED)
    ]
