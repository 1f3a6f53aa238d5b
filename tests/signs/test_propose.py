"""Signs become proposed faults: by kind, with no more confidence than they bear."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from partsplan.catalogue import fault_kinds, trouble_codes
from partsplan.domain import CodeState, Confidence, FaultStatus, System
from partsplan.signs import find_signs, propose, well_formed
from tests.signs.reading import TABLES, only, proposed, read
from tests.support.building import fault, garage, vehicle

HIGH, MEDIUM, LOW = Confidence
CODES = st.from_regex(r"[PBCU][0-3][0-9A-F]{3}", fullmatch=True)


def test_a_code_that_stands_for_one_kind_is_sure_enough_to_be_called_high() -> None:
    one = only("P0335")
    assert one.confidence is HIGH
    assert one.kinds == ("crankshaft-sensor-failing",)
    assert one.fault.kind == "crankshaft-sensor-failing"
    assert one.fault.system is System.ELECTRICS
    assert one.fault.codes == ("P0335",)
    assert one.fault.title == (
        "The circuit of the crankshaft position sensor is faulty (P0335)"
    )


def test_a_code_that_stands_for_several_kinds_is_medium() -> None:
    one = only("P0420")
    assert one.confidence is MEDIUM
    assert one.fault.kind == "catalyst-worn-out"
    assert one.kinds == trouble_codes()["P0420"].kinds
    assert len(one.kinds) > 1


@pytest.mark.parametrize("code", sorted(trouble_codes()))
def test_every_code_with_a_meaning_is_proposed_with_its_kinds(code: str) -> None:
    one = only(code)
    kinds = trouble_codes()[code].kinds
    assert one.kinds == kinds
    assert one.confidence is (HIGH if len(kinds) == 1 else MEDIUM)
    assert one.fault.system is fault_kinds()[kinds[0]].system
    assert code in one.fault.title


@pytest.mark.parametrize(
    ("code", "said", "system"),
    [
        ("P1234", "the maker's own; engine and gearbox", System.OTHER),
        ("P3000", "the maker's own; engine and gearbox", System.OTHER),
        ("B1234", "the maker's own; body, airbags and belts", System.OTHER),
        ("C2A00", "the maker's own; brakes, steering and suspension", System.OTHER),
        ("C3000", "of a reserved range", System.OTHER),
        ("P0143", "generic, its meaning not known here", System.OTHER),
        ("P0999", "generic, its meaning not known here; gearbox", System.DRIVELINE),
        ("U1000", "the maker's own; messages", System.ELECTRICS),
    ],
)
def test_no_meaning_is_made_up_for_other_codes(
    code: str, said: str, system: System
) -> None:
    one = only(code)
    assert one.confidence is LOW
    assert (one.kinds, one.fault.kind) == ((), "")
    assert one.fault.title.startswith(f"Code {code}: ")
    assert said in one.fault.title
    assert one.fault.system is system


def test_codes_of_one_kind_are_one_fault() -> None:
    one = only("P0301 P0302 P0301-1C\npending: P0303")
    assert one.fault.codes == ("P0301", "P0302", "P0303")
    assert one.fault.title == "Misfires in cylinder 1 (P0301, P0302, P0303)"
    assert [code.times for code in one.codes] == [2, 1, 1]
    assert one.codes[2].states == (CodeState.PENDING,)


def test_a_code_that_names_the_part_makes_the_others_surer() -> None:
    assert only("P0301").confidence is MEDIUM
    assert only("P0301 P0351").confidence is HIGH


def test_codes_without_a_meaning_stay_alone() -> None:
    assert len(proposed("P1234 P1235 U1000")) == 3


def test_a_lamp_belongs_to_the_code_whose_fault_lights_it() -> None:
    one = only("engine lamp\nP0301")
    assert one.fault.lamps == ("engine",)
    two = proposed("airbag lamp\nP0301")
    assert [one.fault.lamps for one in two] == [("airbag",), ()]


def test_a_lamp_alone_is_never_sure() -> None:
    for lamp in TABLES.lamps.values():
        one = only(f"{lamp.words[0]} lamp")
        assert one.fault.lamps == (lamp.lamp,)
        assert one.confidence is (MEDIUM if lamp.kinds else LOW)
        assert one.fault.system is lamp.system
        assert one.fault.title.endswith("lamp lit")


def test_a_silent_unit_is_proposed_like_its_code() -> None:
    one = only("no reply from the airbag unit")
    assert one.units == ("airbag",)
    assert one.kinds == trouble_codes()["U0151"].kinds
    assert one.fault.codes == ()  # nobody has read it
    assert one.fault.title == "The airbag control unit does not answer"
    assert one.confidence is MEDIUM


def test_a_silent_unit_and_its_code_are_one_fault() -> None:
    one = only("U0151\nairbag unit: no reply")
    assert one.fault.codes == ("U0151",)
    assert one.units == ("airbag",)


def test_a_silent_unit_without_a_name_is_low() -> None:
    one = only("no reply from a unit")
    assert one.confidence is LOW
    assert one.fault.title == "A control unit does not answer"
    assert one.fault.system is System.ELECTRICS


def test_brakes_come_first_and_systems_stand_together() -> None:
    systems = [one.fault.system for one in proposed("P0301 P0420 B0001 C0031 P0335")]
    assert systems == [
        System.BRAKES,
        System.RESTRAINT,
        System.ELECTRICS,
        System.ELECTRICS,
        System.EXHAUST,
    ]


@pytest.mark.parametrize(
    ("code", "systems"),
    [
        ("B1234", {System.RESTRAINT}),
        ("C1234", {System.BRAKES, System.STEERING}),
        ("C0031", {System.BRAKES}),
        ("C0051", {System.STEERING}),
        ("B0001", {System.RESTRAINT}),
    ],
)
def test_cautions_are_those_of_all_it_may_be(code: str, systems: set[System]) -> None:
    assert systems <= set(only(code).cautious)


def test_ids_are_short_and_never_clash() -> None:
    known = fault("v1-p0301"), fault("V1-P0301-2"), fault("v1-abs-lamp")
    one, two = proposed("P0301, ABS lamp", *known)
    assert {one.fault.id, two.fault.id} == {"v1-p0301-3", "v1-abs-lamp-2"}


def test_ids_of_long_vehicles_fit() -> None:
    long = "v" * 64
    place = garage(vehicles=(vehicle(long),), faults=(), options=())
    reading = propose(place, long, find_signs("P0301 P0335", TABLES), TABLES)
    ids = [one.fault.id for one in reading.proposals]
    assert len(set(ids)) == 2
    assert all(len(name) <= 64 for name in ids)


def test_what_comes_first_is_linked() -> None:
    plugs = fault("plugs", kind="spark-plugs-worn")
    by_code = {one.fault.codes[0]: one.fault for one in proposed("P0301 P0420", plugs)}
    assert set(by_code["P0420"].after) == {"plugs", by_code["P0301"].id}
    assert by_code["P0301"].pair_with == ("plugs",)
    assert by_code["P0420"].pair_with == ()


def test_sensors_of_one_age_are_paired_with_what_is_there() -> None:
    aged = fault("bank-1", kind="oxygen-sensors-aged")
    one = only("P0153", aged)
    assert one.fault.pair_with == ("bank-1",)
    assert one.akin == ("bank-1",)


def test_only_open_faults_of_the_same_vehicle_are_linked() -> None:
    fixed = fault("a", kind="spark-plugs-worn", status=FaultStatus.FIXED)
    watched = fault("b", kind="spark-plugs-worn", status=FaultStatus.WATCH)
    elsewhere = fault("c", kind="spark-plugs-worn", vehicle="v2")
    one = only("P0420", fixed, watched, elsewhere)
    assert one.fault.after == ()
    assert one.fault.pair_with == ()


def test_the_order_of_a_text_changes_no_kind() -> None:
    there = {one.fault.kind for one in proposed("P0301 P0420 U0121 P0171")}
    back = {one.fault.kind for one in proposed("P0171 U0121 P0420 P0301")}
    assert there == back


@given(st.text())
def test_any_text_comes_to_something(text: str) -> None:
    for one in read(text).proposals:
        assert one.fault.title.isprintable()


@given(st.lists(CODES, max_size=30))
def test_every_code_is_in_one_proposal(codes: list[str]) -> None:
    reading = read(" ".join(codes))
    held = [code for one in reading.proposals for code in one.fault.codes]
    assert sorted(held) == sorted(set(codes))
    ids = [one.fault.id for one in reading.proposals]
    assert len(set(ids)) == len(ids)
    assert all(well_formed(code) for code in held)
    for one in reading.proposals:
        assert (one.confidence is LOW) == (not one.kinds)
