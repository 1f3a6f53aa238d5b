"""Signs that say more together."""

from dataclasses import replace

import pytest

from partsplan.catalogue import SignGroup, sign_groups
from partsplan.domain import Confidence
from partsplan.signs import SignTables
from tests.signs.reading import TABLES, only, proposed, read
from tests.support.building import fault


def group(**changes: object) -> SignTables:
    """The tables with this group only."""
    usual = {
        "key": "made-up",
        "all_of": (),
        "some_of": (),
        "least": 0,
        "kind": None,
        "says": "Look here first.",
    }
    return replace(TABLES, groups=(SignGroup(**{**usual, **changes}),))  # type: ignore[arg-type]


def keys(text: str, tables: SignTables = TABLES) -> list[str]:
    return [one.key for one in read(text, tables=tables).together]


@pytest.mark.parametrize(
    ("text", "there"),
    [
        ("P0171 P0301", True),
        ("P0171 P0308", True),
        ("P0171 P0300", False),
        ("P0171 P0309", False),
        ("P0301 P0302", False),
    ],
)
def test_all_of_one_list_and_enough_of_the_other(text: str, there: bool) -> None:
    tables = group(all_of=("P0171",), some_of=("P0301-P0308",), least=1)
    assert (keys(text, tables) == ["made-up"]) is there


def test_a_range_counts_each_of_its_codes_once() -> None:
    tables = group(some_of=("P0301-P0308",), least=2)
    assert keys("P0301 P0301", tables) == []
    assert keys("P0301 P0303", tables) == ["made-up"]


def test_a_silent_unit_counts_as_its_code() -> None:
    tables = group(all_of=("U0121",))
    assert keys("ABS unit: no reply", tables) == ["made-up"]
    assert keys("no reply from a unit", tables) == []


def test_signs_of_a_group_without_a_kind_stay_faults_of_their_own() -> None:
    tables = group(all_of=("P0335", "P0420"))
    assert len(proposed("P0335 P0420", tables=tables)) == 2


def test_signs_of_a_group_with_a_kind_become_one_fault() -> None:
    tables = group(all_of=("P0335", "P0420"), kind="sensor-supply-faulty")
    one, other = proposed("P0335 P0420 P0340", tables=tables)
    assert one.fault.codes == ("P0335", "P0420")
    assert one.fault.kind == "sensor-supply-faulty"
    assert "crankshaft-sensor-failing" in one.kinds
    assert one.confidence is Confidence.MEDIUM
    assert other.fault.codes == ("P0340",)


def test_the_abs_unit_is_suspected_when_both_lamps_are_lit_and_it_is_silent() -> None:
    """Suspect the control unit, check wiring and supply first."""
    for text in (
        "ABS lamp and brake lamp on, no reply from the ABS unit",
        "ABS and brake lamps lit, no reply from the unit",
        "lamps: brake, ABS\nU0121",
    ):
        one = only(text)
        assert one.fault.kind == "abs-control-unit-failed"
        assert set(one.fault.lamps) == {"abs", "brake-fluid"}
        assert one.confidence is Confidence.MEDIUM
        (said,) = read(text).together
        assert said.key == "abs-unit-silent"
        assert "supply" in said.says
        assert "brake fluid" in said.says


def test_a_lit_brake_lamp_is_never_explained_away() -> None:
    """Kinds with which nobody should drive stay among what it may be."""
    one = only("ABS lamp and brake lamp on, no reply from the ABS unit")
    assert "brake-pipe-leaking" in one.kinds


def test_low_voltage_is_blamed_before_many_silent_units() -> None:
    said = keys("P0562 U0100 U0121 U0140")
    assert said == ["low-voltage-many-silent"]
    assert keys("U0100 U0121 U0140") == ["many-silent"]
    assert keys("P0562 U0100") == []


@pytest.mark.parametrize(
    ("text", "key"),
    [
        ("P0301 P0302", "misfires-together"),
        ("P0641 P0122", "one-supply-named"),
        ("P0107 P0122 P0532", "one-supply-low"),
        ("P0171 P0174", "both-banks-lean"),
        ("P0133 P0153", "both-sensors-slow"),
        ("P0420 P0301", "converter-after-misfire"),
        ("C0031 C0034", "wheel-sensors-together"),
        ("charge lamp, coolant lamp", "belt-gone"),
        ("P0700", "gearbox-says-so"),
    ],
)
def test_the_usual_combinations_are_known(text: str, key: str) -> None:
    assert keys(text) == [key]


def test_several_sensors_of_one_supply_are_one_fault() -> None:
    one = only("P0641 P0107 P0122")
    assert one.fault.kind == "sensor-supply-faulty"
    assert one.fault.codes == ("P0641", "P0107", "P0122")


def test_every_group_can_be_there() -> None:
    for one in sign_groups():
        tables = replace(TABLES, groups=(one,))
        text = []
        for sign in (*one.all_of, *one.some_of):
            if sign == "unit:unnamed":
                continue
            if sign.startswith("lamp:"):
                lamp = TABLES.lamps[sign.removeprefix("lamp:")]
                text.append(f"{lamp.words[0]} lamp")
                continue
            first, _, last = sign.partition("-")
            between = [f"{first[0]}{int(first[1:], 16) + 1:04X}", last] if last else []
            text += [first, *between]
        assert keys("\n".join(text), tables) == [one.key]


def test_what_is_known_already_still_counts_for_a_group() -> None:
    known = fault("old", codes=("P0171",))
    reading = read("P0171 P0301", known)
    assert [one.key for one in reading.together] == ["misfire-and-lean"]
    assert [one.fault.codes for one in reading.proposals] == [("P0301",)]
