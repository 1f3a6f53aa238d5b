"""Trouble codes: SAE J2012 / ISO 15031-6."""

import csv
import re
from pathlib import Path

from partsplan.catalogue import fault_kinds, trouble_codes

CODES = Path(__file__).parents[1] / "data" / "trouble_codes.csv"
"""Each row names its source; the generic ones carry a meaning."""


def test_every_code_has_the_form_of_a_generic_code() -> None:
    for code in trouble_codes():
        assert re.fullmatch(r"[PBCU][0-3][0-9A-F]{3}", code)
        assert re.fullmatch(r"P0.*|P2.*|P3[4-9].*|[BCU]0.*", code)


def test_they_are_the_published_numbers() -> None:
    with CODES.open(encoding="utf-8", newline="") as file:
        listed = [row["text"] for row in csv.DictReader(file) if row["meaning"]]
    assert len(listed) == 22
    assert list(trouble_codes()) == listed


def test_each_points_to_a_fault_kind_of_its_system_or_to_none() -> None:
    pointing = [code for code in trouble_codes().values() if code.kind is not None]
    assert len(pointing) >= 20
    for code in pointing:
        assert fault_kinds()[str(code.kind)].system is code.system


def test_meanings_are_there() -> None:
    assert all(len(code.meaning) > 15 for code in trouble_codes().values())
    assert trouble_codes()["P0301"].kind == "ignition-coil-misfire"
    assert trouble_codes()["P0113"].kind is None
