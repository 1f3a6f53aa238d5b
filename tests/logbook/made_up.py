"""Entries of every kind, made up by hypothesis."""

from datetime import UTC, date, datetime
from fractions import Fraction

from hypothesis import strategies as st

from partsplan.domain import Entry, EntryKind, Happening, Month
from partsplan.logbook import Export, KeptPlan

TEXT = st.text(st.characters(codec="utf-8"), max_size=40)
AMOUNT = st.none() | st.integers(0, 10**14 - 1)
MOMENT = st.datetimes(datetime(1970, 1, 1), timezones=st.just(UTC))

HAPPENING = st.builds(
    Happening,
    kind=st.sampled_from(EntryKind),
    day=st.dates(date(1, 1, 1)),
    subject=TEXT,
    amount=AMOUNT,
    deposit=AMOUNT,
    hours=st.none() | st.fractions(0, 1000).map(Fraction),
    cause=TEXT,
    found=st.none() | st.booleans(),
    reading=st.none() | st.integers(0, 10**7),
    who=TEXT,
    text=TEXT,
    anyway=st.booleans(),
    batch=TEXT,
)


def numbered(happenings: list[tuple[datetime, Happening]]) -> tuple[Entry, ...]:
    return tuple(
        Entry(number=number, written=written, what=what)
        for number, (written, what) in enumerate(happenings, 1)
    )


def kept(texts: list[tuple[datetime, str, int]]) -> tuple[KeptPlan, ...]:
    return tuple(
        KeptPlan(
            number=number, written=written, start=Month(2027, 1).plus(later), text=text
        )
        for number, (written, text, later) in enumerate(texts, 1)
    )


EXPORT = st.builds(
    Export,
    currency=st.sampled_from(["EUR", "JPY"]),
    entries=st.lists(st.tuples(MOMENT, HAPPENING), max_size=8).map(numbered),
    plans=st.lists(st.tuples(MOMENT, TEXT, st.integers(0, 99)), max_size=3).map(kept),
)
