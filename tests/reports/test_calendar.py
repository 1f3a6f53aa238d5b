"""Calendars that other programs read."""

import json
from collections.abc import Sequence
from dataclasses import replace
from datetime import UTC, date, datetime

import icalendar
import pytest
from hypothesis import given
from hypothesis import strategies as st

from partsplan.domain import Entry, Garage, Milestone, Month, Occasion, Plan
from partsplan.ledger import fold
from partsplan.reports import calendar_ics, calendar_json, occasions
from tests.reports.made import GARAGE, PLAN
from tests.support.icalendar_rules import Component, events, violations
from tests.support.small_logbook import log

NOW = datetime(2026, 12, 1, 10, 30, 15, 999, tzinfo=UTC)
TODAY = date(2026, 12, 1)
QUOTED = replace(
    GARAGE,
    options=tuple(
        replace(one, valid_until=Month(2027, 2)) if one.id == "ecu-exchange" else one
        for one in GARAGE.options
    ),
)


def days(
    garage: Garage = QUOTED,
    plan: Plan = PLAN,
    entries: Sequence[Entry] = (),
    today: date = TODAY,
) -> tuple[Occasion, ...]:
    return occasions(garage, plan, fold(garage, {}, entries), today)


def made(garage: Garage = QUOTED, plan: Plan = PLAN, now: datetime = NOW) -> bytes:
    return calendar_ics(garage, plan, days(garage, plan), now=now)


def by_uid(calendar: bytes) -> dict[str, Component]:
    return {event.text("UID"): event for event in events(calendar)}


def titled(calendar: bytes, title: str) -> Component:
    (event,) = [one for one in events(calendar) if title in one.text("SUMMARY")]
    return event


def shifted(plan: Plan, option: str, months: int) -> Plan:
    """The same plan with one job later."""
    jobs = tuple(
        replace(job, ordered=job.ordered + months, fitted=job.fitted + months)
        if job.option == option
        else job
        for job in plan.jobs
    )
    return replace(plan, jobs=jobs)


def test_each_kind_of_day_is_an_event_of_one_day() -> None:
    found = events(made())
    assert [
        (one.text("DTSTART"), one.text("DTEND"), one.text("SUMMARY")) for one in found
    ] == [
        ("20270101", "20270102", "Order from Mill Lane Spares: hose-new"),
        ("20270101", "20270102", "Buy a tool: Brake pipe spanner"),
        (
            "20270115",
            "20270116",
            "Fit hose-new: Front brake hose bulges, small hatchback",
        ),
        (
            "20270131",
            "20270201",
            "Deadline: Engine control unit drops out, diesel van",
        ),
        ("20270131", "20270201", "Milestone: Coast trip"),
        ("20270201", "20270202", "Order from Mill Lane Spares: ecu-exchange"),
        ("20270228", "20270301", "The quote of ecu-exchange ends"),
        (
            "20270315",
            "20270316",
            "Fit ecu-exchange: Engine control unit drops out, diesel van",
        ),
        (
            "20270414",
            "20270415",
            "Send the old unit of ecu-exchange back: 80.00 EUR at stake",
        ),
    ]


def test_returns_and_quotes_are_told_a_week_before_the_rest_a_day() -> None:
    notice = {
        event.text("SUMMARY").split()[0]: event.parts[0].text("TRIGGER")
        for event in events(made())
    }
    assert notice.pop("Send") == notice.pop("The") == "-P7D"
    assert set(notice.values()) == {"-P1D"}


def test_what_is_for_a_licensed_person_says_so() -> None:
    told = made()
    for title in ("Order from Mill Lane Spares: hose-new", "Fit hose-new"):
        assert "Work for a licensed person" in titled(told, title).text("DESCRIPTION")
    for title in ("Fit ecu-exchange", "Order from Mill Lane Spares: ecu-exchange"):
        text = titled(told, title).text("DESCRIPTION")
        assert "Work for a licensed person" not in text
    assert "axle stands" in titled(told, "Fit ecu-exchange").text("DESCRIPTION")


def test_an_order_lists_its_parts_with_prices() -> None:
    together = shifted(PLAN, "ecu-exchange", -1)
    text = titled(made(plan=together), "Order").text("DESCRIPTION")
    first, second, licensed = text.split("\n")
    assert first == (
        "2 x hose-new, part BH-1: Front brake hose bulges, small hatchback. 69.00 EUR."
    )
    assert second.endswith("210.00 EUR, deposit 80.00 EUR.")
    assert licensed.startswith("hose-new: Work for a licensed person")


def test_a_deadline_tells_what_is_planned() -> None:
    text = titled(made(), "Deadline").text("DESCRIPTION")
    assert text.endswith("Planned: ecu-exchange, fitted in 2027-03.")
    nothing = replace(PLAN, jobs=())
    text = titled(made(plan=nothing), "Deadline").text("DESCRIPTION")
    assert text.endswith("Nothing is planned for it.")


def test_the_stamp_is_the_clock_that_was_passed_in() -> None:
    assert {one.text("DTSTAMP") for one in events(made())} == {"20261201T103015Z"}
    assert made() == made()


def test_the_same_days_have_the_same_names_in_a_later_export() -> None:
    later = by_uid(made(now=datetime(2027, 1, 20, tzinfo=UTC)))
    assert by_uid(made()).keys() == later.keys()


def test_a_job_that_shifts_moves_its_events() -> None:
    before = by_uid(made())
    after = by_uid(made(plan=shifted(PLAN, "ecu-exchange", -1)))
    moved = {
        before[name].text("SUMMARY").split()[0]
        for name in before.keys() & after.keys()
        if before[name].text("DTSTART") != after[name].text("DTSTART")
    }
    assert moved == {"Order", "Fit", "Send"}
    gone = [before[name].text("SUMMARY") for name in before.keys() - after.keys()]
    assert gone == ["Order from Mill Lane Spares: hose-new"]  # both in one order
    apart = by_uid(made(plan=shifted(PLAN, "hose-new", 2)))
    assert apart.keys() == before.keys()


def test_what_is_fitted_becomes_a_return_of_the_same_name() -> None:
    planned = by_uid(made())
    entries = log(
        "2027-02-03 ordered ecu-exchange deposit=8000",
        "2027-02-20 arrived ecu-exchange",
        "2027-02-21 fitted ecu-exchange",
    )
    today = date(2027, 2, 22)
    found = days(entries=entries, today=today)
    real = by_uid(calendar_ics(QUOTED, PLAN, found, now=NOW))
    (name,) = (one for one in real if "old unit" in real[one].text("SUMMARY"))
    assert planned[name].text("DTSTART") == "20270414"
    assert real[name].text("DTSTART") == "20270323"
    assert real[name].text("DESCRIPTION").startswith("Last day to send it back.\n")


def test_two_garages_share_no_names() -> None:
    other = replace(QUOTED, name="two other cars")
    assert not by_uid(made()).keys() & by_uid(made(other)).keys()


def test_json_has_the_same_days() -> None:
    found = json.loads(calendar_json(QUOTED, PLAN, days()))
    assert {one["uid"] for one in found["days"]} == by_uid(made()).keys()
    assert found["days"][0] == {
        "uid": found["days"][0]["uid"],
        "day": "2027-01-01",
        "code": "order",
        "names": ["hose-new"],
        "title": "Order from Mill Lane Spares: hose-new",
        "text": found["days"][0]["text"],
        "notice_days": 1,
    }


PIECES = st.sampled_from(
    [
        *(",", ";", "\\", "\\n", ":", '"', "\n", "\r\n", "\r", "\t", "\x00", "\x0b"),
        *("\x85", "\u2028", "\ufeff", "\U0001f527", "äöü", "漢字", "e\u0301", " "),
        *("x" * 74, "ä" * 40, "\U0001f527" * 20, "BEGIN:VEVENT", "\r\nEND:VCALENDAR"),
    ]
)
NASTY = st.lists(
    PIECES | st.text(st.characters(codec="utf-8"), max_size=8), max_size=12
).map("".join)


@st.composite
def nasty_garages(draw: st.DrawFn) -> Garage:
    """The same garage, but nobody would call things so."""
    return replace(
        QUOTED,
        name=draw(NASTY),
        vehicles=tuple(replace(one, name=draw(NASTY)) for one in QUOTED.vehicles),
        faults=tuple(replace(one, title=draw(NASTY)) for one in QUOTED.faults),
        suppliers=tuple(replace(one, name=draw(NASTY)) for one in QUOTED.suppliers),
        tools=tuple(replace(one, name=draw(NASTY)) for one in QUOTED.tools),
        options=tuple(replace(one, part_no=draw(NASTY)) for one in QUOTED.options),
        milestones=(
            Milestone(
                id="trip", month=Month(2027, 1), faults=("ecu",), title=draw(NASTY)
            ),
        ),
    )


@given(garage=nasty_garages())
def test_no_text_breaks_a_calendar(garage: Garage) -> None:
    written = made(garage)
    assert violations(written) == []
    assert len(events(written)) == 9
    by_library = icalendar.Calendar.from_ical(written)
    assert not by_library.errors
    assert {
        str(event["uid"]): (str(event["summary"]), str(event["description"]))
        for event in by_library.walk("VEVENT")
    } == {
        name: (event.text("SUMMARY"), event.text("DESCRIPTION"))
        for name, event in by_uid(written).items()
    }


@given(title=st.text(st.characters(exclude_categories=["C", "Z"]), min_size=1))
def test_every_letter_of_a_title_comes_through(title: str) -> None:
    faults = tuple(replace(one, title=title) for one in QUOTED.faults)
    text = titled(made(replace(QUOTED, faults=faults)), "Deadline").text("SUMMARY")
    assert text == f"Deadline: {title}, diesel van"


@pytest.mark.parametrize("breaks", ["\n", "\r\n", "\r", "\x0b", "\x85", "\u2028"])
def test_a_line_break_in_a_title_is_a_space(breaks: str) -> None:
    faults = tuple(replace(one, title=f"a{breaks}b") for one in QUOTED.faults)
    text = titled(made(replace(QUOTED, faults=faults)), "Deadline").text("SUMMARY")
    assert text == "Deadline: a b, diesel van"
