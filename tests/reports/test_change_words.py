"""Each change and each differing input in words."""

from fractions import Fraction

import pytest

from partsplan.domain import (
    AvoidOption,
    Change,
    ChangeBudget,
    ChangeHours,
    ChangeMonths,
    ChangePrice,
    ChangeReserve,
    Fitted,
    Flow,
    GiveUpVehicle,
    Input,
    LeaveFault,
    Month,
    ParkVehicle,
    Purchase,
    RefuseRoute,
    Route,
    TakeFault,
    UseOption,
)
from partsplan.reports.change_words import change_words, input_words
from tests.reports.made import GARAGE


@pytest.mark.parametrize(
    ("change", "words"),
    [
        (ChangeBudget(amount=20000), "200.00 EUR a month instead of 300.00"),
        (
            ChangeBudget(amount=20000, month=Month(2027, 2)),
            "200.00 EUR in 2027-02 instead of 300.00",
        ),
        (ChangeHours(hours=Fraction(5, 2)), "2.5 own hours a month instead of 8"),
        (
            ChangePrice(option="ecu-exchange", price=100),
            "ecu-exchange (exchange) at 1.00 EUR a piece instead of 210.00",
        ),
        (ChangeReserve(reserve=700), "a reserve of 7.00 EUR instead of 0.00"),
        (ChangeMonths(months=1), "a plan of 1 month instead of 3"),
        (ParkVehicle(vehicle="van"), "diesel van is parked for good"),
        (
            ParkVehicle(vehicle="van", until=Month(2027, 2)),
            "diesel van is parked until 2027-02",
        ),
        (
            GiveUpVehicle(vehicle="van", month=Month(2027, 2)),
            "diesel van is given up in 2027-02",
        ),
        (TakeFault(fault="hum"), "Hum at speed (hum) is taken on"),
        (LeaveFault(fault="hum"), "Hum at speed (hum) is left alone"),
        (UseOption(option="ecu-new"), "ecu-new (new) is used"),
        (AvoidOption(option="ecu-new"), "ecu-new (new) is not used"),
        (RefuseRoute(route=Route.USED), 'nothing comes by the route "used"'),
        (
            RefuseRoute(route=Route.USED, vehicle="van"),
            'nothing for diesel van comes by the route "used"',
        ),
    ],
)
def test_each_change_has_words(change: Change, words: str) -> None:
    assert change_words(GARAGE, change) == words


@pytest.mark.parametrize(
    ("one", "words"),
    [
        (
            Input(table="garage", column="budget", before=(100, 200), after=(300,)),
            "budget: 1.00, 2.00 in the first, 3.00 in the second",
        ),
        (
            Input(table="options", row="ecu-new", column="price", before=5, after=70),
            "price of the option ecu-new: 0.05 in the first, 0.70 in the second",
        ),
        (
            Input(
                table="faults",
                row="ecu",
                column="fix_by",
                before=Month(2027, 1),
                after=None,
            ),
            "fix by of the fault ecu: 2027-01 in the first, none in the second",
        ),
        (
            Input(
                table="faults",
                row="ecu",
                column="fitted",
                before=(),
                after=(
                    Fitted(
                        option="ecu-new",
                        relief=Fraction(4, 5),
                        until=Month(2027, 3),
                    ),
                ),
            ),
            "what was fitted before of the fault ecu: none in the first, "
            "ecu-new (80 %) until 2027-02 in the second",
        ),
        (
            Input(
                table="options",
                row="ecu-new",
                column="bought",
                before=None,
                after=Purchase(month=Month(2026, 12), supplier="mill"),
            ),
            "what is bought of the option ecu-new: none in the first, in 2026-12 from "
            "mill in the second",
        ),
        (
            Input(
                table="garage",
                column="promised",
                before=(Flow(month=0, out=120, back=30), Flow(month=2, out=5)),
                after=(),
            ),
            "promised for what was bought before: 1.20 to pay and 0.30 back in month "
            "1, 0.05 to pay in month 3 in the first, none in the second",
        ),
        (
            Input(table="garage", column="grown", before=0, after=2),
            "months for which points have grown: 0 in the first, 2 in the second",
        ),
        (
            Input(table="garage", column="carry_over", before=True, after=False),
            "carry over: yes in the first, no in the second",
        ),
        (
            Input(table="vehicles", row="van", column="driven_from", before=None),
            "driven from of the vehicle van: no in the first, no in the second",
        ),
        (
            Input(table="faults", row="hum", before=None, after=GARAGE.fault["hum"]),
            "only the second has the fault hum",
        ),
        (
            Input(
                table="garage", column="rates", before={}, after={"GBP": Fraction(1)}
            ),
            "rates: none in the first, GBP 1 in the second",
        ),
    ],
)
def test_each_input_has_words(one: Input, words: str) -> None:
    assert input_words(GARAGE, one) == words
