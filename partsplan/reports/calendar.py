"""A calendar for other programs: iCalendar after RFC 5545, or JSON.

A day has the same UID in every export, whatever its date: programs then move an event
that shifted instead of showing it twice. SEQUENCE stays 0, since nothing is remembered
from export to export; of two events with the same SEQUENCE the later DTSTAMP holds
(RFC 5546, section 2.1.5).
"""

import json
import unicodedata
from collections.abc import Sequence
from datetime import datetime, timedelta
from typing import TYPE_CHECKING
from uuid import UUID, uuid5

from partsplan.domain import Garage, Occasion, Plan
from partsplan.reports.calendar_words import occasion_text, occasion_title
from partsplan.reports.plain_data import dumped, head, plain

if TYPE_CHECKING:
    from icalendar import Alarm, Event

PRODUCT = "-//partsplan//calendar//EN"
NAMESPACE = UUID("5b0c7f0e-6a55-4a0e-9d3f-0f6d4ad1c9a7")
"""Drawn once for all calendars of this program."""


def calendar_ics(
    garage: Garage, plan: Plan, occasions: Sequence[Occasion], *, now: datetime
) -> bytes:
    """An event for each of the days, of which there must be one; ``now`` is in UTC.

    A reminder comes at the beginning of a day.
    """
    from icalendar import Calendar  # takes too long for commands without a calendar

    made = Calendar()
    made.add("prodid", PRODUCT)
    made.add("version", "2.0")
    for occasion in occasions:
        made.add_component(_event(garage, plan, occasion, now))
    written: bytes = made.to_ical()
    return written


def calendar_json(garage: Garage, plan: Plan, occasions: Sequence[Occasion]) -> str:
    """The same days for programs that read no calendars."""
    return dumped(
        {
            **head(garage),
            "days": [
                {
                    "uid": uid(garage, one),
                    "day": one.day.isoformat(),
                    "code": one.code,
                    "names": plain(one.names),
                    "title": occasion_title(garage, one),
                    "text": occasion_text(garage, plan, one),
                    "notice_days": one.notice,
                }
                for one in occasions
            ],
        }
    )


def uid(garage: Garage, occasion: Occasion) -> str:
    """The same for the same thing in every export, of garages of the same name."""
    names = [garage.name, occasion.code, *occasion.names]
    return str(uuid5(NAMESPACE, json.dumps(names)))


def readable(text: str) -> str:
    """A text without characters that iCalendar forbids; any line break is ``\\n``."""
    kept = "\n".join(text.splitlines())
    return "".join(one for one in kept if one in "\n\t" or _shown(one))


def _shown(character: str) -> bool:
    return unicodedata.category(character) not in ("Cc", "Cs")


def _one_line(text: str) -> str:
    return " ".join(readable(text).split())


def _event(garage: Garage, plan: Plan, occasion: Occasion, now: datetime) -> "Event":
    from icalendar import Event

    title = _one_line(occasion_title(garage, occasion))
    event = Event()
    event.add("uid", uid(garage, occasion))
    event.add("dtstamp", now.replace(microsecond=0))
    event.add("sequence", 0)
    event.add("dtstart", occasion.day)
    event.add("dtend", occasion.day + timedelta(1))
    event.add("transp", "TRANSPARENT")  # nobody is busy the whole day with it
    event.add("summary", title)
    event.add("description", readable(occasion_text(garage, plan, occasion)))
    event.add_component(_reminder(title, occasion.notice))
    return event


def _reminder(title: str, days: int) -> "Alarm":
    from icalendar import Alarm

    alarm = Alarm()
    alarm.add("action", "DISPLAY")
    alarm.add("description", title)
    alarm.add("trigger", timedelta(days=-days))
    return alarm
