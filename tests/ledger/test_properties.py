"""Whatever is written down, in whatever order, the money adds up to the cent."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date, timedelta
from fractions import Fraction
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from partsplan.domain import (
    OF_PARTS,
    DepositState,
    DueKind,
    Entry,
    EntryKind,
    Happening,
    Ledger,
    Month,
    PartState,
)
from partsplan.ledger import contradictions, fold
from tests.support import reference_ledger
from tests.support.small_logbook import (
    GARAGE,
    QUOTES,
    folded,
    numbered,
    without_flags,
)

K = EntryKind
START = date(2027, 1, 1)
TODAY = date(2027, 12, 31)
SUMS = st.integers(0, 30_000)
MAYBE_SUMS = st.none() | SUMS
DAYS = st.integers(0, 200).map(lambda days: START + timedelta(days))
BATCHES = st.sampled_from(["", "", "", "spring", "autumn"])
OPTIONS = st.sampled_from(["alternator", "radiator", "bulb"])


@st.composite
def happenings(draw: st.DrawFn, undone: bool = True) -> Happening:
    """Anything that has the form of its kind, whether or not it fits."""
    others = (K.PAID, K.MONEY_IN, K.CHECKED, K.ODOMETER, K.NOTE)
    kind = draw(st.sampled_from([*OF_PARTS, *OF_PARTS, *others, *[K.UNDONE] * undone]))
    what = Happening(kind=kind, day=draw(DAYS), batch=draw(BATCHES), anyway=True)
    if kind in OF_PARTS:
        what = replace(what, subject=draw(OPTIONS))
    if kind is K.ORDERED:
        return replace(what, amount=draw(SUMS), deposit=draw(SUMS))
    if kind in (K.ARRIVED, K.FITTED, K.SENT_BACK, K.REFUSED):
        return replace(what, amount=draw(MAYBE_SUMS))
    if kind is K.CREDITED:
        return replace(what, amount=draw(SUMS))
    if kind is K.PAID:
        subjects = st.sampled_from(["", "puller", "van", "radiator", "radiator"])
        return replace(what, subject=draw(subjects), amount=draw(SUMS))
    if kind is K.MONEY_IN:
        return replace(what, amount=draw(SUMS))
    if kind is K.CHECKED:
        hours = draw(st.none() | st.fractions(0, 5, max_denominator=4))
        cause = draw(st.sampled_from(["worn brushes", "rust"]))
        found = draw(st.booleans())
        given_ = replace(what, subject="charging", cause=cause, found=found)
        return replace(given_, hours=hours, amount=draw(MAYBE_SUMS))
    if kind is K.ODOMETER:
        return replace(what, subject="van", reading=draw(st.integers(0, 1000)))
    if kind is K.UNDONE:
        names = st.integers(1, 25).map(str) | st.sampled_from(["spring", "autumn"])
        return replace(what, subject=draw(names))
    return replace(what, text="seen")


LOGS = st.lists(happenings(), max_size=25).map(numbered)
PLAIN_LOGS = st.lists(happenings(undone=False), min_size=1, max_size=25).map(numbered)


def ledger_of(entries: Sequence[Entry]) -> Ledger:
    return fold(GARAGE, QUOTES, entries)


def and_then(entries: tuple[Entry, ...], *subjects: str) -> tuple[Entry, ...]:
    """The entries, with ones that undo these."""
    what = [Happening(kind=K.UNDONE, day=TODAY, subject=one) for one in subjects]
    return numbered([*(entry.what for entry in entries), *what])


@given(LOGS)
def test_money_adds_up(entries: tuple[Entry, ...]) -> None:
    ledger = ledger_of(entries)
    assert ledger.money == reference_ledger.money(GARAGE, QUOTES, entries)


@given(LOGS)
def test_what_is_promised_is_paid_or_still_due(entries: tuple[Entry, ...]) -> None:
    ledger = ledger_of(entries)
    for option in QUOTES:
        due = sum(
            one.amount
            for one in ledger.dues
            if one.option == option and one.kind is DueKind.INSTALMENT
        )
        assert due == reference_ledger.instalments_left(GARAGE, entries, option)


@given(LOGS)
def test_dues_and_states_say_the_same(entries: tuple[Entry, ...]) -> None:
    ledger = ledger_of(entries)
    assert list(ledger.dues) == sorted(ledger.dues, key=lambda due: due.month)
    for name, part in ledger.parts.items():
        of = [due for due in ledger.dues if due.option == name]
        fitting = sum(one.amount for one in of if one.kind is DueKind.FITTING)
        freight = sum(one.amount for one in of if one.kind is DueKind.RETURN)
        waits = part.state in (PartState.ON_THE_WAY, PartState.IN_HAND)
        expected = QUOTES[name].fitting if waits and part.order_known else 0
        assert fitting == expected
        assert freight == (part.deposit.return_cost if part.deposit else 0)
        assert (part.state is PartState.DUD) == (part.failed is not None)
        assert part.state is not PartState.IN_HAND or part.arrived is not None
        assert part.state is not PartState.FITTED or part.fitted is not None
        if part.deposit is not None and part.deposit.state is DepositState.CREDITED:
            assert part.deposit.out == 0


@given(PLAIN_LOGS, st.data())
def test_an_undone_entry_says_nothing(
    entries: tuple[Entry, ...], data: st.DataObject
) -> None:
    victim = data.draw(st.sampled_from(entries))
    undone = and_then(entries, str(victim.number))
    without = [entry for entry in entries if entry is not victim]
    assert ledger_of(undone) == ledger_of(without)
    restored = and_then(entries, str(victim.number), str(len(entries) + 1))
    assert ledger_of(restored) == ledger_of(entries)


@given(PLAIN_LOGS)
def test_an_undone_batch_says_nothing(entries: tuple[Entry, ...]) -> None:
    without = [entry for entry in entries if entry.what.batch != "spring"]
    ledger = ledger_of(and_then(entries, "spring"))
    assert without_flags(ledger) == without_flags(ledger_of(without))


@given(LOGS, DAYS)
def test_what_comes_later_does_not_change_earlier_months(
    entries: tuple[Entry, ...], until: date
) -> None:
    begun = [
        one for one in entries if one.what.day <= until or one.what.kind is K.UNDONE
    ]
    whole, first = ledger_of(entries).money, ledger_of(begun).money
    over = [month for month in whole if month < Month.of(until)]
    assert [whole[month] for month in over] == [first[month] for month in over]


@given(PLAIN_LOGS, st.randoms(use_true_random=False))
def test_independent_entries_of_a_day_may_come_in_any_order(
    entries: tuple[Entry, ...], random: Random
) -> None:
    by_subject: dict[str, list[Happening]] = {}
    for entry in entries:
        by_subject.setdefault(entry.what.subject, []).append(entry.what)
    mixed: list[Happening] = []
    while left := [name for name, told in by_subject.items() if told]:
        mixed.append(by_subject[random.choice(left)].pop(0))
    assert ledger_of(numbered(mixed)).money == ledger_of(entries).money
    assert ledger_of(numbered(mixed)).dues == ledger_of(entries).dues


@given(PLAIN_LOGS, happenings(undone=False))
def test_a_new_entry_is_flagged_with_what_was_objected(
    entries: tuple[Entry, ...], what: Happening
) -> None:
    last = max(entry.what.day for entry in entries)
    what = replace(what, day=max(what.day, last))
    before = ledger_of(entries)
    objections = contradictions(GARAGE, before, what, TODAY, entries)
    after = ledger_of(numbered([*(entry.what for entry in entries), what]))
    new = [flag.message for flag in after.flags if flag.entry == len(entries) + 1]
    assert all(one.liftable for one in objections)
    # only the ledger's flags have no suggestions
    assert [one.message.partition("; did")[0] for one in objections] == new
    assert after.flags[: len(before.flags)] == before.flags


@pytest.mark.parametrize("option", ["alternator", "radiator", "bulb"])
@given(duds=st.integers(0, 3), refused=st.booleans(), wait=st.integers(0, 40))
def test_a_part_that_went_its_whole_way_leaves_nothing_owed(
    option: str, duds: int, refused: bool, wait: int
) -> None:
    """Every step at the quote's figures; duds are replaced under warranty."""
    quote = QUOTES[option]
    free = GARAGE.option[option].warranty_months > 0
    steps = [f"ordered {option}", f"arrived {option}"]
    for _ in range(duds):
        steps += [f"dud {option}", f"ordered {option} deposit=0", f"arrived {option}"]
    steps.append(f"fitted {option}")
    if quote.deposit:
        steps += [
            f"sent-back {option}",
            f"{'refused' if refused else 'credited'} {option}",
        ]
    paid_parts = 1 if free else 1 + duds
    later = quote.landed - round(
        quote.landed * GARAGE.option[option].instalments[0].share
    )
    if later:
        steps.append(f"paid {option} amount={later * paid_parts}")
    lines = [
        f"{START + timedelta(place * wait)} {step}" for place, step in enumerate(steps)
    ]
    ledger = folded(*lines)
    spent = sum(one.spent for one in ledger.money.values())
    received = sum(one.received for one in ledger.money.values())
    once = quote.deposit + quote.fitting + quote.core_return
    assert spent == quote.landed * paid_parts + once
    assert received == (0 if refused else quote.deposit)
    assert (ledger.dues, ledger.flags) == ((), ())
    hours = sum((one.hours for one in ledger.money.values()), Fraction(0))
    assert hours == GARAGE.option[option].hours
