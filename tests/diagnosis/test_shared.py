from fractions import Fraction
from typing import Any

from partsplan.diagnosis import shared_causes
from partsplan.domain import Cause, FaultStatus, Garage
from tests.support import building


def suspect(fault: str, text: str, cure: str | None = None) -> Cause:
    return Cause(fault=fault, cause=text, chance=Fraction(1, 2), cure=cure)


def lit(*causes: Cause, **changes: Any) -> Garage:
    """Two lamps on one car; ``unit`` cures both faults, ``sensor`` the first."""
    facts: dict[str, Any] = {
        "faults": (
            building.fault("abs", lamps=("ABS",), codes=("C0040",)),
            building.fault("slip", lamps=("skid",), codes=("C0040", "C0051")),
        ),
        "options": (
            building.option("unit", "abs", "slip"),
            building.option("sensor", "abs"),
        ),
        "causes": causes,
    }
    return building.garage(**facts | changes)


def test_two_lamps_and_one_control_unit() -> None:
    (found,) = shared_causes(
        lit(
            suspect("abs", "Control unit", "unit"),
            suspect("abs", "Sensor", "sensor"),
            suspect("slip", "Control unit", "unit"),
        )
    )
    assert found.faults == ("abs", "slip")
    assert (found.causes, found.cure) == (("Control unit",), "unit")
    assert found.lamps == ("ABS", "skid")
    assert found.codes == ("C0040", "C0051")


def test_a_cure_of_one_that_cures_the_other_too() -> None:
    (found,) = shared_causes(lit(suspect("abs", "Control unit", "unit")))
    assert found.faults == ("abs", "slip")


def test_a_kit_for_two_worn_parts_is_no_shared_cause() -> None:
    worn = (building.fault("abs"), building.fault("slip", lamps=("skid",)))
    assert shared_causes(lit(suspect("abs", "Worn", "unit"), faults=worn)) == ()


def test_a_cure_that_only_relieves_the_other_is_not_shared() -> None:
    options = (building.option("unit", "abs", "slip:0.5"),)
    garage = lit(suspect("abs", "Control unit", "unit"), options=options)
    assert shared_causes(garage) == ()


def test_the_same_words_point_at_one_cause() -> None:
    (found,) = shared_causes(
        lit(suspect("abs", "Weak  battery"), suspect("slip", "weak battery"))
    )
    assert (found.faults, found.causes) == (("abs", "slip"), ("Weak  battery",))
    assert found.cure is None


def test_the_same_words_on_another_car_do_not() -> None:
    garage = lit(
        suspect("abs", "Weak battery"),
        suspect("slip", "Weak battery"),
        vehicles=(building.vehicle(), building.vehicle("v2")),
        faults=(building.fault("abs"), building.fault("slip", vehicle="v2")),
        options=(),
    )
    assert shared_causes(garage) == ()


def test_a_fixed_fault_points_at_nothing_and_a_watched_one_does() -> None:
    causes = (suspect("abs", "Weak battery"), suspect("slip", "Weak battery"))
    for status, many in ((FaultStatus.FIXED, 0), (FaultStatus.WATCH, 1)):
        faults = (building.fault("abs"), building.fault("slip", status=status))
        garage = lit(*causes, faults=faults)
        assert len(shared_causes(garage)) == many


def test_a_cause_of_chance_0_is_not_shared() -> None:
    gone = Cause(fault="slip", cause="Weak battery", chance=Fraction(0))
    assert shared_causes(lit(suspect("abs", "Weak battery"), gone)) == ()


def test_different_cures_are_told_by_their_wording() -> None:
    options = (building.option("left", "abs"), building.option("right", "slip"))
    (found,) = shared_causes(
        lit(
            suspect("abs", "Loom", "left"),
            suspect("slip", "Loom", "right"),
            options=options,
        )
    )
    assert found.cure is None
