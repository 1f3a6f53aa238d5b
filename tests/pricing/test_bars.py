"""Why an option can be ordered in no month, reason by reason."""

from fractions import Fraction
from typing import Any

import pytest

from partsplan.domain import (
    AfterWatched,
    AlreadyBought,
    Coding,
    FaultStatus,
    Month,
    NoCodingTool,
    Option,
    OutsideWindow,
    QuoteOver,
    Reason,
    Route,
    TooCold,
    VehicleGone,
)
from partsplan.pricing import bars, offers
from tests.support.building import bought, fault, garage, option, vehicle
from tests.support.published import published

PLACES = {
    one["place"]: tuple(map(Fraction, one["mean"]))
    for one in published("monthly_temperatures.json")["series"]
}
NOTTINGHAM = PLACES["Nottingham Castle, England"]
FILM = Fraction(16)
"""Adhesive film wants about 16 C at least: common practice, no source."""


def window(
    earliest: int, not_before: Month | None = None, not_after: Month | None = None
) -> OutsideWindow:
    return OutsideWindow(
        option="o1",
        earliest=Month(2027, earliest),
        not_before=not_before,
        not_after=not_after,
    )


@pytest.mark.parametrize(
    ("part", "changes", "reason"),
    [
        ({}, {}, None),
        ({"coding": Coding.SELF}, {}, NoCodingTool(option="o1")),
        ({"coding": Coding.SELF}, {"coding_tool": True}, None),
        (
            {"valid_until": Month(2026, 12)},
            {},
            QuoteOver(option="o1", valid_until=Month(2026, 12)),
        ),
        ({"valid_until": Month(2027, 1)}, {}, None),
        ({"lead_days": 75}, {}, window(4)),
        ({"lead_days": 74}, {}, None),
        (
            {"not_before": Month(2027, 4)},
            {},
            window(1, not_before=Month(2027, 4)),
        ),
        (
            {"not_after": Month(2027, 1), "lead_days": 30},
            {},
            window(2, not_after=Month(2027, 1)),
        ),
        (
            {"not_after": Month(2026, 12)},
            {},
            window(1, not_after=Month(2026, 12)),
        ),
        (
            {"lead_days": 60},
            {"vehicles": (vehicle(keep_months=2),)},
            VehicleGone(option="o1"),
        ),
        ({"lead_days": 60}, {"vehicles": (vehicle(keep_months=3),)}, None),
        ({}, {"vehicles": (vehicle(keep_months=0),)}, VehicleGone(option="o1")),
        (
            {"min_temp": FILM},
            {"mean_temperature": NOTTINGHAM},
            TooCold(option="o1", needed=FILM, warmest=Fraction("5.7")),
        ),
        ({"min_temp": Fraction("5.7")}, {"mean_temperature": NOTTINGHAM}, None),
        ({"min_temp": FILM}, {}, None),  # heated
    ],
)
def test_reason(
    part: dict[str, Any], changes: dict[str, Any], reason: Reason | None
) -> None:
    made = garage(**{"options": (option(**part),)} | changes)
    assert bars(made, made.options[0]) == ((reason,) if reason else ())
    assert bool(offers(made)) == (reason is None)


def test_nothing_comes_after_a_fault_that_is_only_watched() -> None:
    watched = fault("f2", status=FaultStatus.WATCH)
    made = garage(faults=(fault(after=("f2",)), watched))
    reason = AfterWatched(option="o1", fault="f2")
    assert bars(made, made.options[0]) == (reason,)
    assert offers(made) == ()


@pytest.mark.parametrize(
    ("waiting", "barred"),
    [
        (bought("b", "f1"), {"alone": "b"}),
        (bought("b", "f1:0.8", "f2"), {"alone": "b", "both": "b"}),
        (bought("b", "f1:0.79"), {}),
        (bought("b", "f1", route=Route.STAND_IN, followup_within=2), {}),
        (bought("b", "f1", not_before=Month(2027, 9)), {"alone": "b"}),
    ],
)
def test_no_lasting_part_comes_beside_one_that_waits_for_all_it_would_cure(
    waiting: Option, barred: dict[str, str]
) -> None:
    made = garage(
        faults=(fault(), fault("f2")),
        options=(
            option("alone", "f1"),
            option("both", "f1", "f2"),
            option("stopgap", "f1", route=Route.STAND_IN, followup_within=2),
            waiting,
        ),
    )
    told = {
        reason.option: reason.bought
        for one in made.options
        for reason in bars(made, one)
        if isinstance(reason, AlreadyBought)
    }
    assert told == barred
    assert barred.keys().isdisjoint(one.option.id for one in offers(made))


def test_two_parts_that_wait_for_the_same_fault_do_not_bar_each_other() -> None:
    made = garage(options=(bought("one", "f1"), bought("other", "f1")))
    assert {offer.option.id for offer in offers(made)} == {"one", "other"}


def test_a_part_that_waits_can_be_fitted_from_the_month_on_in_which_it_is_there() -> (
    None
):
    made = garage(options=(bought(not_before=Month(2027, 2)),))
    assert [(one.ordered, one.fitted) for one in offers(made)] == [(1, 1), (2, 2)]


@pytest.mark.parametrize(
    ("place", "months"),
    [
        ("Nottingham Castle, England", [7]),
        ("Sand Point, Alaska, USA", []),
        ("Seattle, USA", [6, 7, 8, 9]),
    ],
)
def test_film_is_laid_in_months_that_are_warm_enough(
    place: str, months: list[int]
) -> None:
    made = garage(
        months=12,
        mean_temperature=PLACES[place],
        options=(option(min_temp=FILM),),
    )
    assert [made.month(one.fitted).month for one in offers(made)] == months


def test_the_warmest_month_is_one_that_nothing_else_rules_out() -> None:
    # July would be warm enough, but is too late
    part = option(min_temp=FILM, not_after=Month(2027, 2))
    made = garage(months=8, mean_temperature=NOTTINGHAM, options=(part,))
    reason = TooCold(option="o1", needed=FILM, warmest=Fraction("4.3"))
    assert bars(made, part) == (reason,)
