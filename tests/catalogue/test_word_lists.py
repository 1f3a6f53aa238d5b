"""Every word that a table may hold is explained, and no other."""

import json
from enum import Enum
from pathlib import Path

import pytest

from partsplan.catalogue import fault_kinds, scale, scales
from partsplan.domain import (
    Coding,
    FaultStatus,
    Inspection,
    Likelihood,
    Route,
    Severity,
    Stage,
    System,
    Tax,
    Use,
)
from partsplan.errors import InvalidRequest

MIL_STD_882E = Path(__file__).parents[1] / "data" / "risk_matrix_mil_std_882e.json"

LISTS: dict[str, type[Enum]] = {
    "severity": Severity,
    "likelihood": Likelihood,
    "inspection": Inspection,
    "system": System,
    "use": Use,
    "route": Route,
    "coding": Coding,
    "status": FaultStatus,
    "tax": Tax,
    "priority": Stage,
}


@pytest.mark.parametrize("name", list(LISTS))
def test_a_scale_explains_each_word_of_its_list_in_order(name: str) -> None:
    assert [word.value for word in scale(name)] == [
        str(one.value) for one in LISTS[name]
    ]


def test_drivability_has_five_grades() -> None:
    assert [word.value for word in scale("drivability")] == list("01234")


def test_every_lamp_is_lit_by_some_fault() -> None:
    lit = {lamp for kind in fault_kinds().values() for lamp in kind.lamps}
    assert {word.value for word in scale("lamp")} == lit


def test_there_is_no_other_scale() -> None:
    assert set(scales()) == {*LISTS, "drivability", "lamp"}


def test_names_of_severity_and_likelihood_are_those_of_the_standard() -> None:
    standard = json.loads(MIL_STD_882E.read_text("utf-8"))
    assert [word.name for word in scale("severity")] == [
        row["name"].lower() for row in standard["severity"]
    ]
    assert [word.name for word in scale("likelihood")] == [
        row["name"].lower() for row in standard["probability"]
    ]


def test_meanings_fit_in_a_line() -> None:
    for words in scales().values():
        assert all(10 < len(word.meaning) <= 90 for word in words)
        assert len({word.meaning for word in words}) == len(words)


def test_an_unknown_scale_is_told_with_the_known_ones() -> None:
    with pytest.raises(InvalidRequest, match=r'severity, .*got "colour"'):
        scale("colour")
