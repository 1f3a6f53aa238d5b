"""The defence of a plan in sentences."""

import json
from collections.abc import Sequence
from dataclasses import fields, replace
from fractions import Fraction
from typing import Any

import pytest

from partsplan.domain import (
    Access,
    ComesBefore,
    DearerThanAllMoney,
    Dominated,
    FaultStatus,
    FollowsStandIn,
    Instead,
    Loss,
    MakesDrivable,
    MakesSafe,
    MeetsDeadline,
    Month,
    Moved,
    NoOption,
    OneOfPair,
    Reason,
    SharesAccess,
    SharesOrder,
    Threshold,
    Turn,
    WhyChosen,
    WhyNot,
    WorthLessThanCost,
)
from partsplan.explanation import skips, subjects, why
from partsplan.reports.why_json import why_json
from partsplan.reports.why_text import lost, turned, why_text
from tests.reports.made import GARAGE as PLAIN
from tests.reports.made import PLAN
from tests.support.asking_why import CLOSE, small_plan

GARAGE = replace(
    PLAIN,
    access=(
        Access(id="dash", hours=Fraction(2), title="Dashboard off and on"),
        Access(id="sump", hours=Fraction(1)),
    ),
    rates={"USD": Fraction("0.9")},
)
NOTHING = Loss(
    missed_deadlines=0,
    unsafe_vehicle_months=0,
    undrivable_vehicle_months=0,
    net_worth=0,
    point_months=Fraction(0),
    certain=True,
)
STAYS = Instead(enters=(), leaves=(), moved=(), loss=NOTHING)
CHOSEN = WhyChosen(
    option="ecu-exchange", forced_by=(), runner_up=STAYS, by=None, without=None
)
WAITS = WhyNot(subject="paint", instead=replace(STAYS, enters=("roof-film",)))


def said(*answers: tuple[str, WhyChosen | WhyNot]) -> str:
    """The text on one long line."""
    asked = [(subject, (one,)) for subject, one in answers]
    return " ".join(why_text(GARAGE, PLAN, asked, width=200).split())


def chosen(**changes: Any) -> str:
    return said(("ecu", replace(CHOSEN, **changes)))


def waits(**changes: Any) -> str:
    return said(("paint", replace(WAITS, **changes)))


def test_the_plan_how_sure_it_is_and_what_was_asked_come_first() -> None:
    text = why_text(GARAGE, PLAN, [("paint", (WAITS,)), ("ecu-exchange", (CHOSEN,))])
    lines = text.splitlines()
    assert lines[0] == "Why, in the plan for two old cars, 2027-01 to 2027-03"
    assert lines[1] == "Proven: no plan is better."
    assert "small hatchback: Lacquer peels off the roof (paint)" in lines
    assert "ecu-exchange (exchange)" in lines


def test_where_nothing_is_asked_nothing_is_left_alone() -> None:
    assert "Nothing is left alone." in said()


def test_a_job_its_price_and_its_months() -> None:
    assert (
        "- ecu-exchange (exchange) for Engine control unit drops out, diesel van: "
        "210.00 EUR from Mill Lane Spares, ordered in 2027-02, fitted in 2027-03."
    ) in chosen()
    assert "ordered in 2027-01. " in said(("hose", replace(CHOSEN, option="hose-new")))


@pytest.mark.parametrize(
    ("reason", "sentence"),
    [
        (
            MeetsDeadline(subject="ecu", month=Month(2027, 1)),
            "Without it the deadline of Engine control unit drops out (ecu) in 2027-01 "
            "is missed.",
        ),
        (
            MeetsDeadline(subject="trip", month=Month(2027, 1)),
            "Without it the milestone Coast trip in 2027-01 is missed.",
        ),
        (
            MakesSafe(vehicle="hatch", months=3),
            "Without it small hatchback must not be driven for 3 more months.",
        ),
        (
            MakesDrivable(vehicle="van", months=1),
            "Without it diesel van cannot be driven for 1 more month.",
        ),
        (OneOfPair(other="hum"), "It is one of a pair with Hum at speed (hum)."),
        (
            FollowsStandIn(stand_in="roof-film"),
            "The stand-in roof-film has to come off again.",
        ),
        (ComesBefore(job="hose-new"), "hose-new waits for it."),
        (
            SharesAccess(access="dash", jobs=("hose-new", "roof-film")),
            "Dashboard off and on: open in that month for hose-new and roof-film as "
            "well.",
        ),
        (
            SharesAccess(access="sump", jobs=("hose-new",)),
            "sump: open in that month for hose-new as well.",
        ),
        (
            SharesOrder(supplier="mill", saved=690),
            "Its order from Mill Lane Spares is sent free of charge because of it, "
            "which saves 6.90 EUR.",
        ),
    ],
)
def test_what_asks_for_a_job(reason: Reason, sentence: str) -> None:
    assert f"- {sentence} " in chosen(forced_by=(reason,))


def test_every_reason_for_a_job_has_a_sentence_here() -> None:
    (mark,) = test_what_asks_for_a_job.pytestmark  # type: ignore[attr-defined]
    assert {type(reason) for reason, _ in mark.args[1]} == {
        MeetsDeadline,
        MakesSafe,
        MakesDrivable,
        OneOfPair,
        FollowsStandIn,
        ComesBefore,
        SharesAccess,
        SharesOrder,
    }


def test_the_runner_up_and_what_it_loses() -> None:
    loss = replace(NOTHING, net_worth=1234, missed_deadlines=1)
    other = replace(STAYS, enters=("ecu-new",), loss=loss)
    assert (
        "- Next best is ecu-new (new): 1 more deadline missed and 12.34 EUR of net "
        "worth lost."
    ) in chosen(runner_up=other, by="ecu-new")
    beside = replace(other, enters=("ecu-new", "roof-film"))
    assert ("12.34 EUR of net worth lost (with roof-film beside it).") in chosen(
        runner_up=beside, by="ecu-new"
    )


def test_no_runner_up_and_no_plan_without_it() -> None:
    assert "No other option would take its place." in chosen()
    assert "No plan does without it." in chosen(runner_up=None)


def test_what_it_costs_to_leave_a_fault_alone() -> None:
    loss = replace(NOTHING, unsafe_vehicle_months=2, point_months=Fraction(61, 4))
    assert (
        "- To leave it alone (Engine control unit drops out): 2 more months unsafe and "
        "15.2 more point-months borne."
    ) in chosen(without=replace(STAYS, loss=loss))


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({}, "it costs nothing"),
        ({"missed_deadlines": 2}, "2 more deadlines missed"),
        ({"missed_deadlines": -1}, "1 fewer deadline missed"),
        ({"unsafe_vehicle_months": 1}, "1 more month unsafe"),
        ({"undrivable_vehicle_months": -3}, "3 fewer months not drivable"),
        ({"net_worth": 5}, "0.05 EUR of net worth lost"),
        ({"net_worth": -5}, "0.05 EUR of net worth gained"),
        ({"point_months": Fraction(-7)}, "7 fewer point-months borne"),
        ({"point_months": Fraction(1, 30)}, "it costs nothing"),
        (
            {"unsafe_vehicle_months": 1, "net_worth": 100, "point_months": Fraction(3)},
            "1 more month unsafe, 1.00 EUR of net worth lost and 3 more point-months "
            "borne",
        ),
        (
            {"certain": False, "net_worth": 100},
            "the difference is smaller than what the plans leave unproven",
        ),
    ],
)
def test_a_loss_in_words(changes: dict[str, Any], words: str) -> None:
    assert lost(GARAGE, replace(NOTHING, **changes)) == words


def test_what_is_watched_or_fixed_is_said_to_be() -> None:
    for status, word in ((FaultStatus.WATCH, "watched"), (FaultStatus.FIXED, "fixed")):
        faults = tuple(
            replace(one, status=status) if one.id == "seep" else one
            for one in GARAGE.faults
        )
        asked = [("seep", (WhyNot(subject="seep"),))]
        text = why_text(replace(GARAGE, faults=faults), PLAN, asked)
        assert f"- It is {word}, so nothing is planned for it." in text


def test_what_rules_its_options_out_comes_first() -> None:
    text = said(
        (
            "hum",
            WhyNot(subject="hum", ruled_out=(NoOption(),)),
        )
    )
    assert "- Nobody has quoted for it yet: ask for a quote. " in text
    assert text.endswith("- No plan can hold it as things stand.")
    text = waits(
        ruled_out=(
            WorthLessThanCost(option="roof-film", worth=100, cost=9000),
            DearerThanAllMoney(option="ecu-new", needed=60000, money=30000),
            Dominated(option="ecu-new", by="ecu-exchange"),
        )
    )
    for words in (
        "- roof-film (refinish) costs 90.00 EUR and gains only 1.00 EUR",
        "- ecu-new (new) takes 600.00 EUR; no month in reach ever holds more than 300",
        "- ecu-new (new) is beaten by ecu-exchange (exchange)",
        "- Forced in, roof-film (refinish) at 90.00 EUR",
    ):
        assert words in text


def test_what_it_pushes_out_brings_in_and_moves() -> None:
    other = Instead(
        enters=("roof-film", "ecu-new"),
        leaves=("ecu-exchange",),
        moved=(Moved(option="hose-new", before=0, after=2),),
        loss=replace(NOTHING, unsafe_vehicle_months=2, net_worth=12300),
    )
    assert (
        "- Forced in, roof-film (refinish) at 90.00 EUR, pushes out ecu-exchange; "
        "brings in ecu-new; moves hose-new from 2027-01 to 2027-03: 2 more months "
        "unsafe and 123.00 EUR of net worth lost."
    ) in waits(instead=other)


def test_what_pushes_nothing_out() -> None:
    assert (
        "- Forced in, roof-film (refinish) at 90.00 EUR pushes nothing out: it costs "
        "nothing."
    ) in waits()


def at(turn: Turn, now: int, at: int | None, not_at: int, option: str = "") -> str:
    return turned(
        GARAGE,
        Threshold(
            turn=turn,
            option=option or None,
            now=Fraction(now),
            at=None if at is None else Fraction(at),
            not_at=Fraction(not_at),
        ),
    )


@pytest.mark.parametrize(
    ("turn", "now", "found", "not_at", "words"),
    [
        (
            Turn.PRICE,
            9000,
            7000,
            7045,
            "At 70.00 EUR a piece instead of 90.00 EUR, roof-film (refinish) would be "
            "chosen; at 70.45 EUR not yet.",
        ),
        (
            Turn.PRICE,
            9000,
            None,
            0,
            "Not even at 0.00 EUR would roof-film (refinish) be chosen.",
        ),
        (
            Turn.POINTS,
            6,
            63,
            62,
            "With points of 63 instead of 6 it would be chosen, with 62 not yet.",
        ),
        (
            Turn.POINTS,
            6,
            None,
            100,
            "Not even points of 100 would bring it in (now 6).",
        ),
        (
            Turn.ENJOYMENT,
            6,
            9,
            8,
            "With an enjoyment of 9 instead of 6 it would be chosen, with 8 not yet.",
        ),
        (
            Turn.ENJOYMENT,
            6,
            None,
            10,
            "Not even an enjoyment of 10 would bring it in (now 6).",
        ),
        (
            Turn.BUDGET,
            30000,
            33000,
            32700,
            "With 330.00 EUR a month instead of 300.00 EUR it would be chosen, at "
            "327.00 EUR not yet; a larger budget may drop it again.",
        ),
        (
            Turn.BUDGET,
            30000,
            None,
            90000,
            "No budget that was tried brings it in, up to 900.00 EUR a month.",
        ),
    ],
)
def test_what_would_turn_it(
    turn: Turn, now: int, found: int | None, not_at: int, words: str
) -> None:
    option = "roof-film" if turn is Turn.PRICE else ""
    assert at(turn, now, found, not_at, option) == words


def test_a_price_abroad_is_told_in_the_garages_money() -> None:
    foreign = tuple(
        replace(one, currency="USD") if one.id == "roof-film" else one
        for one in GARAGE.options
    )
    threshold = Threshold(
        turn=Turn.PRICE,
        option="roof-film",
        now=Fraction(10000),
        at=Fraction(5000),
        not_at=Fraction(5050),
    )
    told = turned(replace(GARAGE, options=foreign), threshold)
    assert told.startswith("At 45.00 EUR a piece instead of 90.00 EUR, ")
    assert "at 45.45 EUR not yet" in told


def test_what_comes_later_and_that_the_time_ran_out() -> None:
    assert "twice as far ahead fits it in 2027-06." in waits(later=5)
    assert "ran out of time; raise --search." in waits(cut_short=True)
    assert "time" not in waits()


@pytest.mark.parametrize("width", [40, 60, 80, 200])
def test_no_line_is_too_long(width: int) -> None:
    other = Instead(
        enters=("roof-film", "ecu-new"),
        leaves=("ecu-exchange", "hose-new"),
        moved=(Moved(option="hose-new", before=0, after=2),) * 3,
        loss=replace(NOTHING, unsafe_vehicle_months=2, net_worth=12300),
    )
    asked: list[tuple[str, tuple[WhyChosen | WhyNot, ...]]] = [
        ("paint", (replace(WAITS, instead=other, later=4, cut_short=True),)),
        ("ecu", (replace(CHOSEN, runner_up=other, by="ecu-new", without=other),)),
    ]
    text = why_text(GARAGE, PLAN, asked, width=width)
    assert max(map(len, text.splitlines())) <= width


def test_colour_is_in_the_headings_only() -> None:
    plain = why_text(GARAGE, PLAN, [("paint", (WAITS,))])
    inked = why_text(GARAGE, PLAN, [("paint", (WAITS,))], colour=True)
    assert "\x1b" not in plain
    assert inked.count("\x1b[0m") == 2
    assert inked.replace("\x1b[1m", "").replace("\x1b[0m", "") == plain


def answers(seed: int) -> tuple[Any, Any, list[Any]]:
    case = small_plan(seed)
    assert case is not None
    planner, found = case
    asked: Sequence[str] = subjects(planner.garage, found)
    return (
        planner.garage,
        found,
        [
            (one, why(planner, found, one, limits=CLOSE, left=lambda: 5.0))
            for one in asked
        ],
    )


@pytest.mark.parametrize("seed", [0, 4, 6, 11])
def test_every_answer_of_a_small_garage_is_told_and_in_its_json(seed: int) -> None:
    garage, plan, told = answers(seed)
    text = why_text(garage, plan, told, width=80)
    assert max(map(len, text.splitlines())) <= 80
    data = json.loads(why_json(garage, plan, told))
    assert (data["schema"], data["status"]) == (1, "proven")
    assert data["start"] == str(garage.start)
    assert [one["subject"] for one in data["answers"]] == [one for one, _ in told]
    assert {one.fault for one in skips(garage, plan)} <= {one for one, _ in told}
    for (_, defence), shown in zip(told, data["answers"], strict=True):
        for one, why_data in zip(defence, shown["why"], strict=True):
            assert list(why_data) == [field.name for field in fields(one)]


def test_json_has_every_figure() -> None:
    other = Instead(
        enters=("roof-film",),
        leaves=("ecu-exchange",),
        moved=(Moved(option="hose-new", before=0, after=2),),
        loss=replace(NOTHING, net_worth=12300, point_months=Fraction(3, 2)),
    )
    threshold = Threshold(
        turn=Turn.PRICE,
        option="roof-film",
        now=Fraction(9000),
        at=None,
        not_at=Fraction(0),
    )
    waiting = WhyNot(
        subject="paint",
        ruled_out=(Dominated(option="ecu-new", by="ecu-exchange"),),
        instead=other,
        thresholds=(threshold,),
        later=4,
        cut_short=True,
    )
    asked = MeetsDeadline(subject="trip", month=Month(2027, 1))
    done = replace(CHOSEN, forced_by=(asked,))
    data = json.loads(why_json(GARAGE, PLAN, [("x", (waiting, done))]))
    first, second = data["answers"][0]["why"]
    assert first == {
        "subject": "paint",
        "ruled_out": [{"code": "dominated", "option": "ecu-new", "by": "ecu-exchange"}],
        "instead": {
            "enters": ["roof-film"],
            "leaves": ["ecu-exchange"],
            "moved": [{"option": "hose-new", "before": "2027-01", "after": "2027-03"}],
            "loss": {
                "missed_deadlines": 0,
                "unsafe_vehicle_months": 0,
                "undrivable_vehicle_months": 0,
                "net_worth": 12300,
                "point_months": 1.5,
                "certain": True,
                "worth_certain": True,
            },
        },
        "thresholds": [
            {
                "turn": "price",
                "option": "roof-film",
                "now": 9000,
                "at": None,
                "not_at": 0,
            }
        ],
        "later": "2027-05",
        "cut_short": True,
    }
    assert second["forced_by"] == [
        {"code": "meets_deadline", "subject": "trip", "month": "2027-01"}
    ]
    assert second["without"] is None
    assert second["runner_up"]["loss"]["certain"] is True


def test_a_worth_within_the_gaps_is_not_told_beside_counts() -> None:
    loss = Loss(
        missed_deadlines=1,
        unsafe_vehicle_months=0,
        undrivable_vehicle_months=0,
        net_worth=100,
        point_months=Fraction(0),
        certain=True,
        worth_certain=False,
    )
    assert lost(GARAGE, loss) == "1 more deadline missed"
