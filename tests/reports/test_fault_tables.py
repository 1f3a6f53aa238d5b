import json
from dataclasses import replace

from partsplan.catalogue import trouble_codes
from partsplan.domain import FaultStatus, InspectionClass
from partsplan.reports import fault_tables, faults_json
from partsplan.reports.fault_tables import reasons
from partsplan.scoring import ranking
from tests.reports.made import GARAGE

RANKING = ranking(GARAGE)


def row(fault: str) -> list[str]:
    text = fault_tables(GARAGE, RANKING, width=120)
    return next(
        line for line in text.splitlines() if line.startswith(f"{fault}: ")
    ).split()


def test_the_danger_comes_first_with_its_three_figures_and_points() -> None:
    text = fault_tables(GARAGE, RANKING, width=120)
    order = [text.index(f"\n{fault}: ") for fault in ("hose", "ecu", "paint")]
    assert order == sorted(order)
    # severity 1 x probable: 100 x 0.8; points 0.6 x 80
    assert row("hose")[-4:] == ["80", "0", "0", "48"]
    # 30 x 0.5; grade 4 at weekends; 20 of 300 a month; 0.6 x 15 + 0.3 x 60
    assert row("ecu")[-5:] == ["15", "60", "7", "27", "20.00"]


def test_do_not_drive_is_an_alarm() -> None:
    assert "\x1b[1;31mDO NOT DRIVE" in fault_tables(GARAGE, RANKING, colour=True)
    harmless = replace(GARAGE, faults=GARAGE.faults[2:])
    assert "DO NOT DRIVE" not in fault_tables(harmless, ranking(harmless))


def test_reasons_are_told_only_when_asked_for() -> None:
    sentence = "An inspection would call it a dangerous deficiency."
    asked = " ".join(fault_tables(GARAGE, RANKING, why=True).split())
    assert sentence in asked
    assert "It leaves the vehicle not drivable (grade 4)" in asked
    assert sentence not in " ".join(fault_tables(GARAGE, RANKING).split())


def test_a_danger_without_a_severity_still_has_a_reason() -> None:
    bare = replace(GARAGE.faults[0], severity=None)
    garage = replace(GARAGE, faults=(bare, *GARAGE.faults[1:]))
    first = ranking(garage)[0]
    assert first.do_not_drive
    assert reasons(first) == (InspectionClass(inspection=bare.inspection),)


def test_a_reason_is_told_once() -> None:
    text = fault_tables(GARAGE, RANKING, why=True)
    assert " ".join(text.split()).count("An inspection would call it") == 1


def test_a_watched_fault_is_marked() -> None:
    text = fault_tables(GARAGE, RANKING, width=120)
    assert "seep: Oil seeps (watched), diesel van" in text


def test_a_garage_without_faults_says_so() -> None:
    fixed = tuple(replace(one, status=FaultStatus.FIXED) for one in GARAGE.faults)
    garage = replace(GARAGE, faults=fixed)
    assert "No fault is open or watched." in fault_tables(garage, ranking(garage))


def test_json_has_figures_and_reasons() -> None:
    found = json.loads(faults_json(GARAGE, RANKING))
    assert list(found)[:4] == ["schema", "garage", "currency", "start"]
    first = found["faults"][0]
    assert (first["fault"], first["safety"], first["do_not_drive"]) == (
        "hose",
        80.0,
        True,
    )
    assert first["reasons"][0] == {
        "code": "risk_cell",
        "severity": 1,
        "likelihood": "B",
        "level": "high",
    }


def test_lines_fit() -> None:
    for width in (80, 120):
        text = fault_tables(GARAGE, RANKING, why=True, width=width)
        assert max(map(len, text.splitlines())) <= width


def test_generic_trouble_codes_are_told_and_no_meaning_is_made_up() -> None:
    """P0301: SAE J2012 / ISO 15031-6; P1234 is a maker's own."""
    coded = replace(GARAGE.faults[0], codes=("P0301", "P1234"))
    garage = replace(GARAGE, faults=(coded, *GARAGE.faults[1:]))
    text = fault_tables(garage, ranking(garage), why=True)
    assert f"Code P0301: {trouble_codes()['P0301'].meaning}." in " ".join(text.split())
    assert "P1234" not in text
