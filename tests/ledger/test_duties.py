"""What is to be done by which day, told from some days before until it is done."""

from collections.abc import Set
from dataclasses import replace
from datetime import date

import pytest

from partsplan.domain import (
    AskForCredit,
    AskForPart,
    ClaimWarranty,
    CureFault,
    DoNotDrive,
    Duty,
    FaultStatus,
    FitPart,
    Garage,
    Month,
    PayInstalment,
    QuoteEnds,
    ReturnMissed,
    SendBack,
)
from partsplan.ledger import duties
from tests.support.small_logbook import GARAGE, folded

CALM = replace(
    GARAGE,
    faults=tuple(replace(one, fix_by=None) for one in GARAGE.faults),
    options=tuple(replace(one, valid_until=None) for one in GARAGE.options),
    milestones=(),
)
"""Nothing in it has a day by which it is to be done."""
ORDERED = ["2027-01-05 ordered alternator"]
FITTED = [*ORDERED, "2027-01-25 arrived alternator", "2027-02-01 fitted alternator"]
SENT = [*FITTED, "2027-02-10 sent-back alternator"]


def on(
    day: str,
    *lines: str,
    made: Garage = CALM,
    do_not_drive: Set[str] = frozenset(),
) -> tuple[Duty, ...]:
    ledger = folded(*lines, made=made)
    return duties(made, ledger, date.fromisoformat(day), do_not_drive)


def test_nothing_is_to_be_done() -> None:
    assert on("2027-01-31") == ()


@pytest.mark.parametrize(
    ("day", "lines", "duty"),
    [
        ("2027-01-25", ORDERED, None),
        (
            "2027-01-26",
            ORDERED,
            AskForPart(option="alternator", day=date(2027, 1, 25)),
        ),
        (
            "2027-01-25",
            FITTED[:2],
            FitPart(option="alternator", day=date(2027, 1, 25)),
        ),
        (
            "2027-02-01",
            FITTED,
            SendBack(option="alternator", day=date(2027, 3, 18), deposit=8000),
        ),
        (
            "2027-03-18",
            FITTED,
            SendBack(option="alternator", day=date(2027, 3, 18), deposit=8000),
        ),
        (
            "2027-03-19",
            FITTED,
            ReturnMissed(option="alternator", day=date(2027, 3, 18), deposit=8000),
        ),
        ("2027-03-12", SENT, None),
        (
            "2027-03-13",
            [*SENT, "2027-02-20 credited alternator amount=3000"],
            AskForCredit(
                option="alternator",
                day=date(2027, 3, 12),
                deposit=5000,
                sent=date(2027, 2, 10),
            ),
        ),
        ("2027-03-13", [*SENT, "2027-02-20 credited alternator"], None),
        ("2027-03-13", [*SENT, "2027-02-20 refused alternator"], None),
        (
            "2027-02-01",
            [*FITTED[:2], "2027-01-27 dud alternator"],
            ClaimWarranty(option="alternator", day=date(2029, 1, 25)),
        ),
        ("2027-02-01", [*FITTED[:2], "2029-01-26 dud alternator"], None),
        (
            "2027-01-28",
            [*FITTED[:2], "2027-01-27 dud alternator", "2027-01-28 ordered alternator"],
            None,
        ),
        (
            "2027-01-31",
            ["2027-01-01 ordered radiator", "2027-01-02 fitted radiator"],
            None,
        ),
        (
            "2027-02-01",
            ["2027-01-01 ordered radiator", "2027-01-02 fitted radiator"],
            PayInstalment(option="radiator", day=date(2027, 2, 28), amount=2500),
        ),
        (
            "2027-03-31",
            [
                "2027-01-01 ordered radiator",
                "2027-01-02 fitted radiator",
                "2027-03-01 paid radiator amount=2000",
            ],
            PayInstalment(option="radiator", day=date(2027, 2, 28), amount=500),
        ),
    ],
)
def test_parts_and_old_units_ask_for_one_thing_at_a_time(
    day: str, lines: list[str], duty: Duty | None
) -> None:
    assert on(day, *lines) == ((duty,) if duty else ())


@pytest.mark.parametrize(
    ("day", "lines", "told"),
    [
        ("2027-02-28", [], False),
        ("2027-03-01", [], True),
        ("2027-05-01", [], True),
        ("2027-03-01", ORDERED, True),
        ("2027-03-01", SENT, False),
        ("2027-03-01", [*SENT, "2027-02-20 dud alternator"], True),
    ],
)
def test_a_deadline_is_told_thirty_days_before_until_the_fault_is_cured(
    day: str, lines: list[str], told: bool
) -> None:
    made = replace(GARAGE, milestones=())
    cure = CureFault(fault="charging", milestone=None, day=date(2027, 3, 31))
    assert (cure in on(day, *lines, made=made)) == told


def test_a_milestone_is_told_for_each_fault_that_is_left() -> None:
    milestone = replace(GARAGE.milestones[0], faults=("pulls", "cooling", "lamp"))
    faults = tuple(
        replace(one, status=FaultStatus.FIXED) if one.id == "lamp" else one
        for one in CALM.faults
    )
    made = replace(CALM, faults=faults, milestones=(milestone,))
    lines = ["2027-01-05 ordered tracking", "2027-01-06 fitted tracking"]
    assert on("2027-03-31", *lines, made=made) == (
        CureFault(fault="cooling", milestone="inspection", day=date(2027, 4, 30)),
    )
    assert on("2027-03-30", *lines, made=made) == ()


@pytest.mark.parametrize(
    ("day", "lines", "told"),
    [
        ("2027-02-13", [], False),
        ("2027-02-14", [], True),
        ("2027-02-28", [], True),
        ("2027-03-01", [], False),
        ("2027-02-14", ["2027-02-01 ordered bulb"], False),
        ("2027-02-14", ["2027-02-01 dud bulb"], False),
        ("2027-02-14", ["2027-02-01 dud other"], True),
        ("2027-02-14", ["2027-02-01 ordered other"], False),
    ],
)
def test_a_quote_is_told_fourteen_days_before_it_ends(
    day: str, lines: list[str], told: bool
) -> None:
    bulb = GARAGE.option["bulb"]
    other = replace(bulb, id="other", valid_until=None, lead_days=90)
    made = replace(CALM, options=(bulb, other))
    duty = QuoteEnds(option="bulb", day=date(2027, 2, 28), faults=("lamp",))
    assert (duty in on(day, *lines, made=made)) == told


@pytest.mark.parametrize(
    ("status", "told"),
    [(FaultStatus.OPEN, True), (FaultStatus.WATCH, False), (FaultStatus.FIXED, False)],
)
def test_a_quote_matters_for_open_faults_only(status: FaultStatus, told: bool) -> None:
    faults = tuple(replace(one, status=status) for one in GARAGE.faults)
    made = replace(GARAGE, faults=faults, milestones=())
    found = on("2027-02-20", made=made)
    assert any(isinstance(one, QuoteEnds) for one in found) == told


@pytest.mark.parametrize(
    ("day", "lines", "faults"),
    [
        ("2027-01-31", [], ("charging", "pulls")),
        ("2027-01-31", ["2027-01-05 fitted tracking"], ("charging",)),
        (
            "2027-01-31",
            ["2027-01-05 fitted tracking", "2027-01-06 fitted alternator"],
            (),
        ),
    ],
)
def test_a_vehicle_is_not_driven_until_every_such_fault_is_cured(
    day: str, lines: list[str], faults: tuple[str, ...]
) -> None:
    found = on(day, *lines, do_not_drive={"charging", "pulls", "lamp"})
    today = date.fromisoformat(day)
    expected = (DoNotDrive(vehicle="van", day=today, faults=faults),) if faults else ()
    assert found == expected


def test_a_stand_in_cures_until_its_life_is_over_and_less_than_a_cure_never() -> None:
    stand_in = replace(GARAGE.option["reseal"], fixes=GARAGE.option["radiator"].fixes)
    lines = ["2027-01-31 ordered reseal", "2027-01-31 fitted reseal"]
    bad = {"cooling"}
    whole = replace(CALM, options=(stand_in,))
    assert on("2027-02-28", *lines, made=whole, do_not_drive=bad) == ()
    assert len(on("2027-03-01", *lines, made=whole, do_not_drive=bad)) == 1
    assert len(on("2027-02-01", *lines, do_not_drive=bad)) == 1


def test_a_vehicle_that_is_gone_asks_for_nothing() -> None:
    van = replace(GARAGE.vehicle["van"], keep_months=2)
    made = replace(GARAGE, vehicles=(van, GARAGE.vehicle["coupe"]))
    bad = {"charging"}
    assert on("2027-03-01", made=made, do_not_drive=bad) == ()
    assert len(on("2027-02-28", made=made, do_not_drive=bad)) == 2


def test_duties_come_by_day() -> None:
    lines = [*FITTED, "2027-02-02 ordered radiator", "2027-02-03 ordered bulb"]
    found = on("2027-03-20", *lines, made=GARAGE)
    assert [(one.day, one.code) for one in found] == [
        (date(2027, 2, 3), "ask_for_part"),
        (date(2027, 2, 7), "ask_for_part"),
        (date(2027, 3, 18), "return_missed"),
        (date(2027, 3, 31), "pay_instalment"),
    ]


def test_a_month_before_the_garage_has_duties_too() -> None:
    bulb = replace(GARAGE.option["bulb"], valid_until=Month(2026, 12))
    found = on("2026-12-20", made=replace(CALM, options=(bulb,)))
    assert found == (
        QuoteEnds(option="bulb", day=date(2026, 12, 31), faults=("lamp",)),
    )
