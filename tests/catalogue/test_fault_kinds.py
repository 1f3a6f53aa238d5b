"""Fault kinds against the roadworthiness classes, and against each other."""

import csv
import re
from fractions import Fraction
from pathlib import Path

import pytest

from partsplan.catalogue import (
    FaultKind,
    data_folder,
    fault_kinds,
    risk_matrix,
    scale,
)
from partsplan.domain import Inspection, Likelihood, RiskLevel, System

KINDS = tuple(fault_kinds().values())
ROADWORTHINESS = Path(__file__).parents[1] / "data" / "roadworthiness_2014_45.csv"
"""Directive 2014/45/EU, Annex I; each row names its source."""

LAMP_ITEMS = {  # the item of Annex I for a lamp that is lit
    "abs": "1.6(b)",
    "airbag": "7.1.6(a)",
    "brake-fluid": "1.1.10(f)",
    "electric-parking-brake": "1.1.6(e)",
    "engine": "8.2.1.2(h)",
    "stability": "7.12",
    "tyre-pressure": "5.2.3(h)",
}
CLASSES = list(Inspection)


def published() -> dict[str, Inspection]:
    with ROADWORTHINESS.open(encoding="utf-8", newline="") as file:
        return {
            row["ref"]: Inspection(row["class"])
            for row in csv.DictReader(file, strict=True)
        }


def risk(kind: FaultKind) -> RiskLevel:
    if kind.severity is None:
        return RiskLevel.ELIMINATED
    return risk_matrix()[kind.severity, kind.likelihood]


def test_there_are_many_and_every_system_has_some() -> None:
    assert len(KINDS) >= 120
    assert {kind.system for kind in KINDS} == set(System)


def test_no_key_stands_twice() -> None:
    with (data_folder() / "fault_kinds.csv").open(encoding="utf-8") as file:
        assert len(KINDS) == sum(1 for _ in file) - 1
    assert len({kind.title for kind in KINDS}) == len(KINDS)


def test_every_class_agrees_with_the_published_class_of_its_item() -> None:
    classes = published()
    items = {kind.key: kind for kind in KINDS if kind.inspection_ref in classes}
    assert len(items) >= 25
    wrong = {
        key: (kind.inspection, classes[kind.inspection_ref])
        for key, kind in items.items()
        if kind.inspection is not classes[kind.inspection_ref]
    }
    assert wrong == {}


@pytest.mark.parametrize(
    ("item", "inspection"),
    [  # British manual for cars, section 6, as published 2022-03-02 (OGL v3)
        ("6.1.1(c)(i)", "major"),
        ("6.1.1(c)(ii)", "dangerous"),
        ("6.1.2(a)", "major"),
        ("6.1.2(b)(i)", "major"),
        ("6.1.3(a)(i)", "major"),
        ("6.1.3(b)(i)", "major"),
        ("6.1.3(b)(ii)", "dangerous"),
        ("6.1.3(c)(ii)", "major"),
        ("6.1.4(a)(i)", "major"),
        ("6.1.6(a)", "major"),
        ("6.1.7(b)(i)", "major"),
        ("6.1.7(c)(i)", "major"),
        ("6.1.7(c)(ii)", "dangerous"),
        ("6.1.7(d)(i)", "major"),
        ("6.1.7(g)(ii)", "major"),
        ("6.1.8(a)(i)", "major"),
        ("6.1.8(a)(ii)", "dangerous"),
        ("6.2.1(a)(i)", "major"),
        ("6.2.3(a)", "major"),
        ("6.2.3(b)(ii)", "dangerous"),
        ("6.2.4(a)(i)", "major"),
        ("6.2.5(b)(i)", "major"),
        ("6.2.5(b)(ii)", "dangerous"),
        # the same, section 7, as quoted in 2022
        ("7.1.2(b)(i)", "major"),
        ("7.1.2(b)(ii)", "dangerous"),
        ("7.1.2(d)", "major"),
        ("7.1.2(e)", "major"),
        ("7.1.4(a)", "major"),
    ],
)
def test_items_of_the_british_manual_have_its_class(item: str, inspection: str) -> None:
    found = {kind.inspection for kind in KINDS if kind.inspection_ref == item}
    assert found == {Inspection(inspection)}


def test_a_lit_lamp_counts_with_its_own_class() -> None:
    classes = published()
    lit = [(kind, lamp) for kind in KINDS for lamp in kind.lamps if lamp in LAMP_ITEMS]
    assert {lamp for _, lamp in lit} == set(LAMP_ITEMS)
    for kind, lamp in lit:
        least = classes[LAMP_ITEMS[lamp]]
        assert CLASSES.index(kind.inspection) >= CLASSES.index(least), kind.key


def test_key_item_and_lamps_are_well_formed() -> None:
    item = re.compile(r"\d\.\d+(\.\d+)*(\([a-z]\))?(\((i|ii|iii)\))?")
    lamps = {word.value for word in scale("lamp")}
    for kind in KINDS:
        assert re.fullmatch(r"[a-z]+(-[a-z]+)*", kind.key)
        assert not kind.inspection_ref or item.fullmatch(kind.inspection_ref), kind.key
        assert 3 < len(kind.title) <= 50, kind.key
        assert set(kind.lamps) <= lamps, kind.key


@pytest.mark.parametrize(
    ("figure", "most"),
    [
        ("drivability", 4),
        ("enjoyment", 10),
        ("loss_per_month", 40),
        ("damage_chance", Fraction(1, 2)),
        ("damage_cost", 2500),
        ("growth", Fraction(1, 10)),
    ],
)
def test_figures_are_in_range(figure: str, most: Fraction | int) -> None:
    values = [getattr(kind, figure) for kind in KINDS]
    assert min(values) == 0
    assert 0 < max(values) <= most


def test_figures_hold_together() -> None:
    for kind in KINDS:
        assert (kind.damage_chance == 0) == (kind.damage_cost == 0), kind.key
        harmless = kind.likelihood is Likelihood.ELIMINATED
        assert (kind.severity is None) == harmless, kind.key
        has_points = kind.severity or kind.drivability or kind.enjoyment
        assert has_points or kind.growth == 0, kind.key


def test_each_gives_some_reason_to_be_mended() -> None:
    for kind in KINDS:
        assert (
            kind.severity
            or kind.drivability
            or kind.loss_per_month
            or kind.damage_chance
            or kind.enjoyment
            or kind.inspection is not Inspection.NONE
        ), kind.key


def test_what_must_not_be_driven_fails_an_inspection() -> None:
    high = [kind for kind in KINDS if risk(kind) is RiskLevel.HIGH]
    assert len(high) >= 20
    for kind in high:
        assert kind.inspection in {Inspection.MAJOR, Inspection.DANGEROUS}, kind.key


def test_what_is_dangerous_is_a_high_or_serious_risk() -> None:
    dangerous = [kind for kind in KINDS if kind.inspection is Inspection.DANGEROUS]
    assert len(dangerous) >= 20
    for kind in dangerous:
        assert risk(kind) in {RiskLevel.HIGH, RiskLevel.SERIOUS}, kind.key


def test_a_vehicle_that_does_not_run_hardly_damages_itself() -> None:
    standing = [kind for kind in KINDS if kind.drivability == 4]
    assert len(standing) >= 4
    for kind in standing:
        assert kind.damage_chance <= Fraction(5, 100), kind.key


@pytest.mark.parametrize(
    ("milder", "worse"),
    [  # two steps of one fault; common practice, no source
        ("brake-pads-at-wear-mark", "brake-pads-worn-out"),
        ("brake-hose-chafed", "brake-hose-perished"),
        ("brake-hose-perished", "brake-hose-about-to-fail"),
        ("brake-pipe-corroded", "brake-pipe-about-to-burst"),
        ("brake-fluid-low", "brake-fluid-very-low"),
        ("brake-fluid-very-low", "brake-fluid-gone"),
        ("brake-servo-weak", "brake-servo-dead"),
        ("track-rod-end-worn", "track-rod-end-about-to-part"),
        ("tyre-tread-low", "tyre-tread-below-limit"),
        ("wheel-nut-missing", "wheel-nuts-missing"),
        ("fuel-leak-weeping", "fuel-leak-dripping"),
        ("engine-mount-perished", "engine-mount-broken"),
        ("wheel-bearing-play", "wheel-bearing-about-to-break-up"),
        ("ball-joint-worn", "ball-joint-about-to-part"),
        ("sill-corroded", "structure-corroded-at-mounting"),
        ("exhaust-hanger-broken", "exhaust-about-to-drop"),
    ],
)
def test_the_worse_step_of_a_fault_is_worse_in_class_and_risk(
    milder: str, worse: str
) -> None:
    mild, bad = fault_kinds()[milder], fault_kinds()[worse]
    levels = list(RiskLevel)  # worst first
    assert CLASSES.index(mild.inspection) < CLASSES.index(bad.inspection)
    assert levels.index(risk(mild)) > levels.index(risk(bad))


def test_wishes_do_no_harm() -> None:
    wishes = ("headlining-sagging", "paint-faded", "trim-worn", "seat-foam-collapsed")
    for kind in map(fault_kinds().__getitem__, wishes):
        assert kind.severity is None
        assert kind.inspection is Inspection.NONE
        assert kind.enjoyment > 0
