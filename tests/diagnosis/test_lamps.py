from dataclasses import replace

from partsplan.diagnosis import lamps
from partsplan.domain import ONE, FaultStatus, Fitted, Garage, Lamp
from tests.support import building


def lit() -> Garage:
    return building.garage(
        vehicles=(building.vehicle(), building.vehicle("v2")),
        faults=(
            building.fault("f1", lamps=("engine", "ABS")),
            building.fault("f2", lamps=("engine",)),
            building.fault("f3", lamps=("engine",), status=FaultStatus.FIXED),
            building.fault("f4", lamps=("ABS",), status=FaultStatus.WATCH),
            building.fault("f5", vehicle="v2", lamps=("engine",)),
        ),
    )


def test_every_fault_that_is_not_fixed_keeps_its_lamp_lit() -> None:
    assert lamps(lit()) == (
        Lamp(vehicle="v1", name="engine", lit_by=("f1", "f2")),
        Lamp(vehicle="v1", name="ABS", lit_by=("f1", "f4")),
        Lamp(vehicle="v2", name="engine", lit_by=("f5",)),
    )


def test_a_lamp_is_out_only_when_all_its_faults_are_cured() -> None:
    first, both = (
        {(one.vehicle, one.name): one.lit_by for one in lamps(lit(), cured)}
        for cured in ({"f1"}, {"f1", "f2"})
    )
    assert first["v1", "engine"] == ("f2",)
    assert both["v1", "engine"] == ()
    assert both["v2", "engine"] == ("f5",)


def test_what_is_cured_for_a_while_keeps_no_lamp_lit_meanwhile() -> None:
    made = lit()
    for_now = Fitted(option="o9", relief=ONE, until=made.start.plus(1))
    over = replace(for_now, until=made.start)
    for fitted, by in ((for_now, ("f2",)), (over, ("f1", "f2"))):
        first = replace(made.faults[0], fitted=(fitted,))
        later = replace(made, faults=(first, *made.faults[1:]))
        found = {(one.vehicle, one.name): one.lit_by for one in lamps(later)}
        assert found["v1", "engine"] == by
