from dataclasses import replace
from fractions import Fraction

from partsplan.domain import Access, Garage, Route, System
from partsplan.reports.page import Page
from partsplan.reports.schedule import cash_and_hours, month_by_month
from tests.reports.made import GARAGE, PLAN


def steps(garage: Garage = GARAGE) -> list[str]:
    page = Page(width=200)
    month_by_month(page, garage, PLAN)
    return str(page).splitlines()[4:]


def with_first_option(**changes: object) -> Garage:
    option = replace(GARAGE.options[0], **changes)  # type: ignore[arg-type]
    return replace(GARAGE, options=(option, *GARAGE.options[1:]))


def test_orders_and_fittings_stand_in_the_order_of_the_months() -> None:
    rows = [line.split()[:3] for line in steps()]
    assert rows[:-1] == [
        ["2027-01", "order,", "fit"],
        ["2027-02", "order", "ecu-exchange"],
        ["2027-03", "fit", "ecu-exchange"],
    ]
    assert "ecu-exchange  Engine control unit drops out, diesel van" in steps()[2]


def test_shared_access_is_a_step_of_its_own() -> None:
    group = Access(id="wheel", hours=Fraction(1, 2), title="Front wheel off")
    garage = replace(
        with_first_option(access=("wheel",)),
        access=(group, Access(id="dash", hours=Fraction(3))),
    )
    assert steps(garage)[1].split() == [
        "open",
        "up",
        "wheel",
        *["Front", "wheel", "off", "0.5"],
    ]
    assert len(steps(garage)) == 5  # with the note on licensed work


def test_work_for_a_licensed_person_is_marked() -> None:
    rows = steps()  # a brake hose
    assert "hose-new*" in rows[0]
    assert rows[-1] == "* Work for a licensed person, or to be checked by one."
    hose = replace(GARAGE.faults[0], system=System.COOLING)
    rows = steps(replace(GARAGE, faults=(hose, *GARAGE.faults[1:])))
    assert not any("licensed" in line or "*" in line for line in rows)


def test_with_one_vehicle_its_name_is_not_repeated() -> None:
    one = tuple(replace(fault, vehicle="van") for fault in GARAGE.faults)
    alone = replace(GARAGE, vehicles=GARAGE.vehicles[1:], faults=one)
    assert "diesel van" in steps()[1]
    assert "diesel van" not in steps(alone)[1]


def test_a_job_that_cures_in_part_says_how_far() -> None:
    cure = replace(GARAGE.options[0].fixes[0], relief=Fraction(7, 10))
    assert (
        "bulges (relieved by 70 %), small" in steps(with_first_option(fixes=(cure,)))[0]
    )
    used = with_first_option(route=Route.USED)
    assert "hose-new*" in steps(used)[0]


def before(garage: Garage) -> list[str]:
    page = Page(width=200)
    cash_and_hours(page, garage, PLAN)
    return [line.split()[1] for line in str(page).splitlines()[4:7]]


def test_the_ledger_starts_each_month_from_what_was_left() -> None:
    rich = replace(GARAGE, opening_cash=-7500)
    assert before(rich) == ["-75.00", "196.10", "199.20"]
    assert before(replace(rich, carry_over=False)) == ["-75.00", "0.00", "0.00"]
