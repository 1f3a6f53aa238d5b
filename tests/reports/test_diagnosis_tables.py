import json
from dataclasses import replace
from fractions import Fraction
from typing import Any

from partsplan.diagnosis import diagnose, lamps, shared_causes
from partsplan.domain import (
    ONE,
    Cause,
    FaultStatus,
    Fitted,
    Garage,
    Inspection,
    Route,
    System,
)
from partsplan.reports import diagnosis_json, diagnosis_tables
from tests.support import building
from tests.support.suspects import cause, priced, suspecting


def told(garage: Garage, *faults: str, width: int = 80) -> str:
    """The text with its lines joined."""
    return " ".join(drawn(garage, *faults, width=width).split())


def drawn(garage: Garage, *faults: str, width: int = 80, colour: bool = False) -> str:
    return diagnosis_tables(
        garage,
        [diagnose(garage, fault) for fault in faults or ("f1",)],
        shared_causes(garage),
        lamps(garage),
        width=width,
        colour=colour,
    )


def data(garage: Garage, *faults: str) -> dict[str, Any]:
    found: dict[str, Any] = json.loads(
        diagnosis_json(
            garage,
            [diagnose(garage, fault) for fault in faults or ("f1",)],
            shared_causes(garage),
            lamps(garage),
        )
    )
    return found


def charging(**changes: Any) -> Garage:
    """A belt that is looked at for nothing, a loom, and a dear alternator."""
    causes = [
        cause("alternator worn", ".5", 2000, check_hours=Fraction(1)),
        cause("belt slips", ".3"),
        cause("loom chafed", ".2", 4000),
    ]
    return priced([20000, 1500, 3000], causes, **changes)


def test_checks_are_numbered_with_their_cost_and_hours() -> None:
    lines = drawn(charging()).splitlines()
    steps = [line for line in lines if line[:2] in ("1.", "2.", "3.")]
    assert steps[0].startswith("1. belt slips (free): 30 % likely.")
    assert steps[1].startswith("2. alternator worn (20.00, 1 h): 50 % likely, 71 % ")
    assert steps[2].startswith("3. loom chafed (no check needed): 20 % likely, and ")


def test_the_sums_add_up() -> None:
    text = drawn(charging())
    found = data(charging())["faults"][0]
    # free, then 20.00 in 7 of 10 cases; cures 100.00, 4.50 and 6.00
    assert found["expected_checks"] == 1400
    assert found["expected_cost"] == 1400 + 10000 + 450 + 600
    # 15.00, then 30.00 in 7 of 10 cases, then 200.00 in 5 of 10
    assert found["expected_on_suspicion"] == 1500 + 2100 + 10000
    assert found["saving"] == 13600 - 12450
    sums = {line[:-8].strip(): line[-8:].strip() for line in text.splitlines()}
    assert sums["Check in this order, then cure what is found"] == "124.50"
    assert sums["of it the checks"] == "14.00"
    assert sums["Buy on suspicion, before any check"] == "136.00"
    assert sums["Saved by checking"] == "11.50"


def test_how_sure_one_must_be_is_told() -> None:
    text = told(charging())
    assert "Cure: cure-0 (new), 200.00. Buy unchecked only if at least 90 %" in text
    assert "Cure: cure-1 (new), 15.00. The check is free: never buy unchecked." in text


def test_a_threshold_next_to_certainty_is_no_round_hundred() -> None:
    garage = priced([100000], [cause("unit", ".5", 10)])
    assert "Buy unchecked only if all but sure." in told(garage)


def test_who_is_sure_enough_is_told_to_buy() -> None:
    garage = priced(
        [10000, 10000], [cause("unit", ".8", 2500), cause("wire", ".2", 10000)]
    )
    text = told(garage)
    assert "75 % is sure enough: buy it without the check." in text
    assert "The same, but bought at once where said 120.00" in text


def test_a_check_dearer_than_its_cure_is_not_made() -> None:
    garage = priced([500], [cause("plugs", ".5", 900)])
    text = told(garage)
    assert "The check costs no less than the cure: buy it without." in text
    assert "Here the checks cost more than the wrong parts they spare." in text
    assert "Saved by buying on suspicion 6.50" in text


def test_a_cause_without_a_cure_says_so() -> None:
    garage = suspecting(cause("unit", ".6", 100, cure="o1"), cause("wire", ".4", 100))
    text = told(garage)
    assert "No cure to buy is named." in text
    assert "Where no cure is named it counts as 0." in text
    assert 'On suspicion: buy o1, then see to "wire".' in text


def test_without_any_cure_nothing_is_said_of_buying() -> None:
    text = told(suspecting(cause("wire", ".5", 100), cause("earth", ".5", 100)))
    assert "On suspicion" not in text
    assert "Saved" not in text


def test_the_chance_of_something_else_is_told() -> None:
    text = told(priced([500], [cause("plugs", ".5", 100)]))
    assert "With a chance of 50 % it is something else." in text
    assert "something else" not in told(charging())


def test_causes_of_chance_0_and_faults_without_causes_are_told() -> None:
    assert "Never checked, as their chance is 0: gremlin." in told(
        suspecting(cause("gremlin", "0"))
    )
    assert "No suspected cause is written down for it" in told(suspecting())
    assert "No suspected cause is written down yet" in diagnosis_tables(
        suspecting(), (), (), ()
    )


def test_one_cure_for_two_causes_is_told() -> None:
    garage = suspecting(
        cause("brushes", ".5", 100, cure="o1"), cause("winding", ".5", 100, cure="o1")
    )
    assert '"brushes" and "winding" have the same cure, o1' in told(garage)


def test_another_order_if_several_causes_are_at_work() -> None:
    # case B of tests/data/troubleshooting.json: ruling out prefers 4, 2, 3, 1
    garage = suspecting(
        cause("1", ".45", 6000),
        cause("2", ".25", 2000),
        cause("3", ".2", 3000),
        cause("4", ".1", 500),
    )
    assert 'Then check "4", then "2", then "1", then "3": ' in told(garage)
    assert "Then check all in the same order" in told(
        suspecting(cause("a", ".5", 100), cause("b", ".5", 200))
    )


def test_a_barred_cure_tells_why_and_licensed_work_is_marked() -> None:
    garage = suspecting(
        cause("hose", "1", cure="o1"),
        faults=(building.fault(system=System.BRAKES),),
        options=(building.option(route=Route.USED),),
    )
    assert "Not to be had as it stands: o1 (used) is barred" in told(garage)
    garage = suspecting(
        cause("hose", "1", cure="o1"),
        faults=(building.fault(system=System.BRAKES),),
        options=(building.option(route=Route.USED),),
        allow_risky_routes=True,
    )
    assert "Cure: o1 (used)*" in told(garage)
    assert "* Work for a licensed person" in told(garage)


def test_one_cause_for_several_faults_and_what_keeps_lamps_lit() -> None:
    unit = Cause(fault="abs", cause="Control unit", chance=Fraction(1), cure="unit")
    garage = building.garage(
        faults=(
            building.fault("abs", lamps=("ABS",), codes=("C0040",)),
            building.fault("slip", lamps=("ABS",), status=FaultStatus.WATCH),
        ),
        options=(building.option("unit", "abs", "slip"),),
        causes=(unit,),
    )
    text = told(garage, "abs")
    assert (
        "fault abs (abs) and fault slip (slip) may have one cause: "
        '"Control unit", cured by unit. Seen as lamp ABS and code C0040. '
        "One check of it serves both; buy nothing for one of them before." in text
    )
    assert "ABS: stays lit until abs and slip (watched) are all cured." in text
    found = data(garage, "abs")
    assert found["shared_causes"][0]["faults"] == ["abs", "slip"]
    assert found["lamps"] == [
        {"vehicle": "v1", "lamp": "ABS", "lit_by": ["abs", "slip"]}
    ]


def test_an_unsafe_vehicle_is_not_driven_to_check_it() -> None:
    faults = (
        building.fault(),
        building.fault("pipes", inspection=Inspection.DANGEROUS),
    )
    text = drawn(charging(faults=faults))
    assert "DO NOT DRIVE, not even to check" in text
    assert "(pipes)" in text
    assert "DO NOT DRIVE" not in drawn(charging())
    for_now = Fitted(option="o9", relief=ONE, until=building.START.plus(1))
    taped = replace(faults[1], fitted=(for_now,))
    assert "DO NOT DRIVE" not in drawn(charging(faults=(faults[0], taped)))


def test_cautions_close_the_page_and_lines_keep_to_the_width() -> None:
    text = drawn(charging())
    assert "\nCautions\n" in text
    assert max(map(len, text.splitlines())) <= 80
    assert "\x1b" not in text
    assert "\x1b[1m" in drawn(charging(), colour=True)


def test_json_has_each_step() -> None:
    first, second, last = data(charging())["faults"][0]["steps"]
    assert first["cause"] == "belt slips"
    assert (second["check_cost"], second["check_hours"]) == (2000, 1.0)
    assert second["chance_at_its_turn"] == 5 / 7
    assert (second["cure"], second["cure_cost"]) == ("cure-0", 20000)
    assert second["sure_enough"] == 0.9
    assert (second["checked"], last["checked"]) == (True, False)
