"""What is left to the quote is written into an entry, and counts the same."""

from dataclasses import replace
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from partsplan.domain import Cause, Entry, EntryKind, Happening, Quote
from partsplan.ledger import as_quoted, fold
from tests.ledger.test_properties import DAYS, LOGS, OPTIONS
from tests.support.small_logbook import GARAGE, QUOTES, happening, log, numbered

ORDERED = "2027-01-05 ordered alternator"
FITTED = [ORDERED, "2027-01-25 arrived alternator", "2027-02-01 fitted alternator"]
DUD = [*FITTED[:2], "2027-01-27 dud alternator"]
MONEY_KINDS = (
    EntryKind.ORDERED,
    EntryKind.FITTED,
    EntryKind.SENT_BACK,
    EntryKind.CREDITED,
    EntryKind.REFUSED,
)


def filled(line: str, *before: str) -> Happening:
    return as_quoted(GARAGE, QUOTES, log(*before), happening(line))


@pytest.mark.parametrize(
    ("before", "line", "figures"),
    [
        ([], ORDERED, "amount=24000 deposit=8000"),
        ([], f"{ORDERED} amount=100", "deposit=8000"),
        (DUD, "2027-01-28 ordered alternator", "amount=0 deposit=0"),
        (DUD, "2027-01-26 ordered alternator", "amount=24000 deposit=8000"),
        (FITTED[:2], FITTED[2], "amount=2800 hours=3"),
        (FITTED[:2], f"{FITTED[2]} amount=0 hours=5/2", ""),
        (FITTED, "2027-02-10 sent-back alternator", "amount=900"),
        (FITTED, "2027-02-10 credited alternator", "amount=8000"),
        (
            [*FITTED, "2027-02-10 credited alternator amount=3000"],
            "2027-02-20 credited alternator",
            "amount=5000",
        ),
        ([], "2027-02-20 credited alternator", "amount=0"),
        (FITTED, "2027-02-10 refused alternator", "amount=0"),
        (
            [],
            "2027-01-02 checked charging cause=worn_brushes found=yes",
            "amount=1500 hours=1/2",
        ),
        (
            [],
            "2027-01-02 checked charging cause=rust found=yes",
            "amount=0 hours=0",
        ),
        ([], "2027-01-02 arrived alternator", ""),
        ([], "2027-01-02 dud alternator", ""),
        ([], "2027-01-02 note - text=hm", ""),
    ],
)
def test_blank_figures_are_those_of_the_quote(
    before: list[str], line: str, figures: str
) -> None:
    assert filled(line, *before) == happening(f"{line} {figures}")


@given(LOGS, st.sampled_from(MONEY_KINDS), OPTIONS, DAYS)
def test_an_entry_counts_the_same_with_its_figures_written_down(
    entries: tuple[Entry, ...], kind: EntryKind, option: str, day: date
) -> None:
    if kind is not EntryKind.ORDERED:  # the others are about what is known last
        day = max([day, *(entry.what.day for entry in entries)])
    blank = Happening(kind=kind, day=day, subject=option)
    written = as_quoted(GARAGE, QUOTES, entries, blank)
    assert written.amount is not None
    whats = [entry.what for entry in entries]
    left, right = (
        fold(GARAGE, QUOTES, numbered([*whats, what])) for what in (blank, written)
    )
    assert replace(left, flags=()) == replace(right, flags=())


def test_later_changes_of_quotes_and_causes_change_nothing() -> None:
    lines = [*FITTED, "2027-02-10 sent-back alternator"]
    lines += ["2027-02-11 checked charging cause=worn_brushes found=no"]
    whats: list[Happening] = []
    for line in lines:
        done = numbered(whats)
        whats.append(as_quoted(GARAGE, QUOTES, done, happening(line)))
    dearer = {
        "alternator": Quote(landed=99_000, deposit=99, fitting=9900, core_return=990)
    }
    causes = (
        Cause(fault="charging", cause="worn brushes", chance=GARAGE.causes[0].chance),
    )
    changed = replace(GARAGE, causes=causes)
    before = fold(GARAGE, QUOTES, numbered(whats))
    after = fold(changed, dearer, numbered(whats))
    assert after.money == before.money
    assert after.parts["alternator"].price == before.parts["alternator"].price
