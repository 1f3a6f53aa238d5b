"""What a garage has already is left out, and said."""

from partsplan.domain import FaultStatus
from tests.signs.reading import only, read
from tests.support.building import fault


def test_a_code_of_an_open_fault_is_left_out() -> None:
    reading = read("P0301 P0335", fault("miss", codes=("P0301",)))
    assert [one.fault.codes for one in reading.proposals] == [("P0335",)]
    assert reading.known == (("P0301", "miss"),)


def test_a_watched_fault_counts_too() -> None:
    watched = fault("miss", codes=("p0301",), status=FaultStatus.WATCH)
    assert read("P0301", watched).known == (("P0301", "miss"),)


def test_a_code_in_a_title_counts_too() -> None:
    assert read("P0301", fault("miss", title="P0301 in the rain")).proposals == ()


def test_a_code_of_a_fixed_fault_has_come_back() -> None:
    fixed = fault("miss", codes=("P0301",), status=FaultStatus.FIXED)
    reading = read("P0301", fixed)
    assert reading.known == ()
    assert reading.proposals[0].came_back == ("miss",)


def test_another_vehicle_does_not_count() -> None:
    assert only("P0301", fault("miss", codes=("P0301",), vehicle="v2")).akin == ()


def test_a_lamp_that_a_fault_lights_is_left_out_however_it_is_called() -> None:
    for written in ("abs", "ABS"):
        reading = read("ABS lamp", fault("ring", lamps=(written,)))
        assert reading.proposals == ()
        assert reading.known == (("lamp:abs", "ring"),)
    reading = read("brake lamp", fault("pipes", lamps=("brake",)))
    assert reading.known == (("lamp:brake-fluid", "pipes"),)


def test_a_silent_unit_is_known_by_its_code() -> None:
    reading = read("no reply from the ABS unit", fault("unit", codes=("U0121",)))
    assert reading.proposals == ()
    assert reading.known == (("U0121", "unit"),)


def test_the_same_kind_under_another_code_is_told() -> None:
    one = only("P0302", fault("miss", codes=("P0301",), kind="ignition-coil-misfire"))
    assert one.akin == ("miss",)
