from dataclasses import replace
from fractions import Fraction

from partsplan.domain import ONE, Choices, Cure, Fitted, Garage, Month, Plan
from partsplan.reports.page import Page
from partsplan.reports.plan_notes import do_not_drive
from partsplan.reports.standing import Trouble, undrivable, unsafe
from tests.reports.made import GARAGE, PLAN


def trouble(garage: Garage = GARAGE, plan: Plan = PLAN) -> Trouble | None:
    found = unsafe(garage, plan).get("hatch")
    return found[0] if found else None


def ordering(**orders: int) -> Plan:
    choices = Choices(
        orders={option.replace("_", "-"): month for option, month in orders.items()},
        tools={},
    )
    return replace(PLAN, choices=choices)


def with_option(**changes: object) -> Garage:
    option = replace(GARAGE.options[0], **changes)  # type: ignore[arg-type]
    return replace(GARAGE, options=(option, *GARAGE.options[1:]))


def test_a_danger_cured_at_once_lasts_until_the_job_is_done() -> None:
    assert trouble() == Trouble(GARAGE.fault["hose"], (), 0)


def test_a_danger_cured_later_lasts_the_months_before() -> None:
    assert trouble(plan=ordering(hose_new=2)) == Trouble(
        GARAGE.fault["hose"], (0, 1), 2
    )


def test_a_danger_without_a_job_lasts_all_along() -> None:
    assert trouble(plan=ordering()) == Trouble(GARAGE.fault["hose"], (0, 1, 2), None)


def test_too_little_relief_is_no_cure() -> None:
    garage = with_option(fixes=(Cure(fault="hose", relief=Fraction(79, 100)),))
    assert trouble(garage) == Trouble(GARAGE.fault["hose"], (0, 1, 2), None)


def test_the_danger_is_back_when_the_part_wears_out() -> None:
    assert trouble(with_option(life_months=1)) == Trouble(
        GARAGE.fault["hose"], (1, 2), 0
    )


def test_a_vehicle_that_is_not_driven_puts_nobody_at_risk() -> None:
    vehicles = (replace(GARAGE.vehicles[0], driven_from=None), GARAGE.vehicles[1])
    assert trouble(replace(GARAGE, vehicles=vehicles)) is None


def test_a_danger_cured_before_the_first_drive_is_none() -> None:
    vehicles = (
        replace(GARAGE.vehicles[0], driven_from=Month(2027, 3)),
        GARAGE.vehicles[1],
    )
    parked = replace(GARAGE, vehicles=vehicles)
    assert trouble(parked) is None
    assert trouble(parked, ordering(hose_new=2)) == Trouble(GARAGE.fault["hose"], (), 2)


def test_what_stops_a_vehicle_is_told_apart_from_what_endangers() -> None:
    assert "van" not in unsafe(GARAGE, PLAN)
    assert undrivable(GARAGE, PLAN) == {
        "van": (Trouble(GARAGE.fault["ecu"], (0, 1), 2),)
    }


def taped(months: int) -> Garage:
    """The hose is cured for so many months by what was fitted before."""
    until = GARAGE.start.plus(months)
    tape = Fitted(option="hose-tape", relief=ONE, until=until)
    hose = replace(GARAGE.fault["hose"], fitted=(tape,))
    return replace(GARAGE, faults=(hose, *GARAGE.faults[1:]))


def test_what_was_fitted_before_leaves_no_danger_while_it_lasts() -> None:
    assert trouble(taped(3), ordering()) is None
    assert trouble(taped(1), ordering(hose_new=1)) is None
    assert trouble(taped(1)) is None  # replaced before it runs out


def test_when_it_runs_out_the_danger_is_back() -> None:
    back = trouble(taped(1), ordering(hose_new=2))
    assert back is not None
    assert back.months == (1,)
    made = taped(1)
    page = Page(100, False)
    do_not_drive(page, made, ordering(hose_new=2), ())
    told = "2027-02, since what was fitted before lasts no longer, cured in 2027-03."
    assert told in " ".join(str(page).split())
