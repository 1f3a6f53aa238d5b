"""What is told of signs: suspicions, never diagnoses."""

import json
from itertools import pairwise

import pytest

from partsplan.domain import FaultStatus, Reading
from partsplan.reports import codes_json, codes_tables
from tests.signs.reading import read
from tests.support.building import fault

SCAN = """\
lamps lit: ABS, brake
stored: P0301 P0302 P0420 C1234
pending: P0171
no reply from the ABS unit
"""


def told(reading: Reading, **settings: object) -> str:
    """The page, its lines joined."""
    return " ".join(codes_tables(reading, width=300, **settings).split())  # type: ignore[arg-type]


@pytest.mark.parametrize("width", [60, 80, 120])
def test_it_fits(width: int) -> None:
    text = codes_tables(read(SCAN), width=width)
    assert max(map(len, text.splitlines())) <= width


def test_nothing_is_claimed_to_be_diagnosed() -> None:
    text = told(read(SCAN))
    assert "Found: 5 trouble codes, 2 lamps and 1 unit that does not reply." in text
    assert "Nothing here is diagnosed" in text
    assert "Nothing was written." in text


def test_systems_are_headings_with_brakes_first() -> None:
    lines = codes_tables(read(SCAN)).splitlines()
    headings = [
        line for line, under in pairwise(lines) if under and set(under) == {"="}
    ]
    assert headings[:2] == ["DO NOT DRIVE until this is checked", "Brakes"]
    assert headings[-1] == "Cautions"
    assert {"Engine", "Electrics", "Exhaust", "Other"} <= set(headings)


def test_kinds_with_which_nobody_should_drive_are_told_first() -> None:
    text = told(read("brake lamp"))
    assert "DO NOT DRIVE until this is checked" in text
    assert "it may be: Rigid brake pipe leaking" in text
    assert "DO NOT DRIVE" not in told(read("P0420"))


def test_an_alarm_is_red_where_colour_may_be() -> None:
    assert "\x1b[1;31mDO NOT DRIVE" in codes_tables(read("brake lamp"), colour=True)
    assert "\x1b" not in codes_tables(read("brake lamp"))


@pytest.mark.parametrize(
    ("text", "caution"),
    [
        ("C0031", "After brake work"),
        ("C1234", "After brake work"),
        ("C1234", "self-locking nuts"),
        ("C0051", "licensed person"),
        ("B0001", "Never probe their wires"),
        ("B1234", "Never probe their wires"),
        ("P0087", "Fuel vapour burns"),
    ],
)
def test_dangerous_work_brings_its_caution(text: str, caution: str) -> None:
    assert caution in told(read(text))
    assert caution not in told(read("P0420 P0700"))


def test_what_is_seen_of_a_code_is_told() -> None:
    text = told(read("pending: P0335"))
    assert "Crankshaft sensor failing; the engine stalls high pending" in text
    assert "Seen" not in told(read("P0335"))


def test_no_meaning_is_made_up() -> None:
    text = told(read("P1234"))
    assert "Code P1234: the maker's own; engine and gearbox not known here low" in text
    assert "What to check first" not in text


def test_signs_together_are_told_with_what_was_seen() -> None:
    text = told(read(SCAN))
    assert "check the brake fluid, then its fuse, supply, earth and plug first" in text
    assert "Seen: ABS lamp; brake fluid lamp; the ABS control unit does not" in text
    assert "Seen: P0301; P0302." in text


def test_what_is_known_or_came_back_is_told() -> None:
    reading = read(
        "P0301 P0335 P0302 ABS lamp",
        fault("miss", title="Misfire", codes=("P0301",), kind="ignition-coil-misfire"),
        fault("crank", codes=("P0335",), status=FaultStatus.FIXED),
        fault("ring", title="Ring", lamps=("abs",)),
    )
    text = told(reading)
    assert "P0301 is left out: Misfire (miss)." in text
    assert "ABS lamp is left out: Ring (ring)." in text
    assert "v1-p0302 may be the same as miss, of the same kind." in text
    assert "v1-p0335: a code has come back, though crank is marked as fixed." in text


def test_what_comes_first_is_told_with_its_reason() -> None:
    text = told(read("P0301 P0420", fault("plugs", kind="spark-plugs-worn")))
    assert "v1-p0420 is mended after plugs and v1-p0301: unburnt fuel would" in text
    assert "v1-p0301 is mended with plugs: a worn plug overloads its coil" in text


def test_the_quickest_likely_check_comes_first() -> None:
    text = told(read("P0301"))
    assert "v1-p0301: take the plug out" not in text
    assert "v1-p0301: swap the coil with a neighbour's" in text
    assert "(0.4 h; ignition coil fails under load, 45 %)." in text


def test_what_was_written_is_told() -> None:
    text = told(read("P0335"), appended=True, lost=("codes", "lamps"))
    assert "Added to faults.csv: v1-p0335." in text
    assert "faults.csv has no columns codes and lamps, so that stays out." in text


def test_a_text_without_signs_says_so() -> None:
    assert "No trouble code, lamp or silent unit" in told(read("all is well"))
    everything_known = read("P0301", fault("miss", codes=("P0301",)))
    assert "Nothing new to propose." in told(everything_known)


def test_it_is_json_too() -> None:
    found = json.loads(codes_json(read(SCAN)))
    assert found["schema"] == 1
    assert found["vehicle"] == "v1"
    assert [one["code"] for one in found["codes"]][:2] == ["P0301", "P0302"]
    assert found["codes"][0]["states"] == ["stored"]
    unknown = next(one for one in found["codes"] if one["code"] == "C1234")
    assert (unknown["meaning"], unknown["owner"]) == (None, "maker")
    abs_unit = found["proposed"][0]
    assert abs_unit["kind"] == "abs-control-unit-failed"
    assert abs_unit["silent_units"] == ["abs"]
    assert "brake-pipe-leaking" in abs_unit["do_not_drive_if"]
    assert abs_unit["checks"]
    assert found["appended"] is False
    assert "abs-unit-silent" in [one["key"] for one in found["together"]]
