"""What moved since the plan that was kept, in words and for other programs."""

import pytest

from partsplan.domain import (
    CostsMore,
    Departure,
    DepartureReason,
    Faithfulness,
    Intentions,
    Month,
    NothingLeft,
    NotThatMonth,
    NotWorkedOut,
    Overdue,
    QuoteOver,
    RuledOut,
    Stage,
)
from partsplan.reports.departures import faith_data, since_kept
from partsplan.reports.page import Page
from tests.support.building import fault, garage, option

MARCH, APRIL = Month(2027, 3), Month(2027, 4)
GARAGE = garage(faults=(fault(),), options=(option(),))
MEANT = Intentions(number=2, start=MARCH, orders={"o1": MARCH})
QUOTE = QuoteOver(option="o1", valid_until=MARCH)


def faith(
    reason: DepartureReason, now: Month | None, given_up: int = 0
) -> Faithfulness:
    moved = Departure(option="o1", planned=MARCH, now=now, reason=reason)
    return Faithfulness(
        intentions=MEANT, kept=(), departures=(moved,), given_up=given_up
    )


def told(told_of: Faithfulness | None) -> str:
    page = Page(200, False)
    since_kept(page, GARAGE, told_of)
    return " ".join(str(page).split())


@pytest.mark.parametrize(
    ("reason", "words"),
    [
        (Overdue(), "It was not ordered in time."),
        (NothingLeft(), "There is nothing left for it to cure."),
        (RuledOut(reason=QUOTE), "could be ordered until 2027-03 only"),
        (NotThatMonth(), "No plan can order it then any more."),
        (CostsMore(stage=Stage.WORTH, by=1250), "To keep it would cost 12.50 EUR"),
        (CostsMore(stage=Stage.WORTH, by=0), "A plan as good would keep it"),
        (CostsMore(stage=Stage.DEADLINES, by=1), "mean 1 more missed deadline."),
        (CostsMore(stage=Stage.SAFETY, by=2), "mean 2 more months with a vehicle"),
        (NotWorkedOut(), "not worked out in the time"),
    ],
)
def test_each_reason_has_a_sentence_and_a_code(
    reason: DepartureReason, words: str
) -> None:
    assert words in told(faith(reason, APRIL))
    data = faith_data(GARAGE, faith(reason, APRIL))["moved"][0]
    assert data["reason"]["code"] == reason.code
    assert (data["option"], data["planned"], data["now"]) == (
        "o1",
        "2027-03",
        "2027-04",
    )


def test_what_is_left_out_has_no_month() -> None:
    left_out = faith(Overdue(), None)
    assert "meant for 2027-03, now left out" in told(left_out)
    assert faith_data(GARAGE, left_out)["moved"][0]["now"] is None


def test_what_staying_gives_up_is_told() -> None:
    assert "gives up 3.00 EUR of net worth" in told(faith(Overdue(), APRIL, 300))
    assert "gives up" not in told(faith(Overdue(), APRIL))


def test_without_a_kept_plan_there_is_nothing_to_tell() -> None:
    assert told(None) == ""
