"""What a confirmation says that the stories of the command line do not."""

from datetime import date

import pytest

from partsplan.domain import Entered
from partsplan.reports import entered_text
from partsplan.usecases.now import on_day
from partsplan.usecases.where_it_stands import after
from tests.support.small_logbook import GARAGE, log

TODAY = date(2027, 2, 10)
BATCH = [f"2027-01-0{day} paid - amount=100 batch=import-1" for day in range(1, 6)]


def told(*lines: str, quoted: tuple[str, ...] = ()) -> str:
    """The confirmation of the last line, its lines joined."""
    entries = log(*lines)
    entered = Entered(
        entry=entries[-1],
        quoted=quoted,
        lifted=(),
        before=after(GARAGE, entries[:-1]).ledger,
        now=on_day(after(GARAGE, entries), TODAY),
    )
    return " ".join(entered_text(entered, width=80).split())


def test_many_entries_are_counted() -> None:
    undone = told(*BATCH, "2027-01-09 undone import-1")
    assert "- 5.00 EUR less spent. - 5 entries say nothing any more." in undone
    again = told(*BATCH, "2027-01-09 undone import-1", "2027-01-10 undone 6")
    assert "- Entry 6 (undone import-1, 2027-01-09) says nothing any more." in again
    assert "- 5 entries hold again." in again


def test_a_few_are_named() -> None:
    assert (
        "- Entries 1 (paid, 2027-01-01) and 2 (paid, 2027-01-02) say nothing any more."
    ) in told(*BATCH[:2], "2027-01-09 undone import-1")


@pytest.mark.parametrize(
    ("lines", "said"),
    [
        (["2027-01-05 paid puller amount=3900"], "- puller is yours now."),
        (["2027-01-05 paid puller amount=3900"] * 2, "Amount 39.00 EUR."),
        (
            ["2027-01-05 ordered alternator", "2027-01-06 refused alternator"],
            "- 80.00 EUR of the deposit are lost.",
        ),
        (
            [
                "2027-01-05 ordered alternator",
                "2027-01-06 credited alternator amount=3000",
            ],
            "- 50.00 EUR of the deposit are still out.",
        ),
        (
            [
                "2027-01-05 ordered bulb",
                "2027-01-05 arrived bulb",
                "2027-01-06 dud bulb",
            ],
            "- It has no warranty.",
        ),
        (
            [
                "2027-01-05 ordered alternator",
                "2027-01-05 arrived alternator",
                "2029-02-06 dud alternator",
            ],
            "- Its warranty ended on 2029-01-05.",
        ),
        (
            ["2027-01-05 odometer van reading=120345"],
            "odometer van, 120,345.",
        ),
        (["2027-01-05 money-in - amount=2500"], "money in. - Amount 25.00 EUR."),
    ],
)
def test_what_follows(lines: list[str], said: str) -> None:
    assert said in told(*lines)


def test_a_tool_that_is_paid_again_is_not_news() -> None:
    assert "yours" not in told(*["2027-01-05 paid puller amount=3900"] * 2)


def test_a_replacement_that_is_charged_nevertheless() -> None:
    lines = [
        "2027-01-05 ordered alternator",
        "2027-01-06 arrived alternator",
        "2027-01-07 dud alternator",
        "2027-01-08 ordered alternator amount=1000",
    ]
    assert "has come under warranty, charged nevertheless." in told(*lines)
