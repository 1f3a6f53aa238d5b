"""The reader that checks our calendars finds what it is to find."""

import pytest

from tests.support.icalendar_rules import events, violations

# RFC 5545, section 3.6.1: 28 June to 8 July 2007, both included.
FESTIVAL = b"""\
BEGIN:VCALENDAR\r
VERSION:2.0\r
PRODID:-//partsplan//test//EN\r
BEGIN:VEVENT\r
UID:one\r
DTSTAMP:20070423T123432Z\r
DTSTART;VALUE=DATE:20070628\r
DTEND;VALUE=DATE:20070709\r
SUMMARY:Show\\, and\\n sale\r
BEGIN:VALARM\r
ACTION:DISPLAY\r
DESCRIPTION:Show\r
TRIGGER:-P1D\r
END:VALARM\r
END:VEVENT\r
END:VCALENDAR\r
"""
EVENT = FESTIVAL[FESTIVAL.index(b"BEGIN:VEVENT") : FESTIVAL.index(b"END:VCALENDAR")]


def test_a_calendar_that_breaks_nothing() -> None:
    (event,) = events(FESTIVAL)
    assert event.text("SUMMARY") == "Show, and\n sale"


@pytest.mark.parametrize(
    ("old", "new", "broken"),
    [
        (b"\r\nVERSION", b"\nVERSION", "no CRLF"),
        (b"END:VCALENDAR\r\n", b"END:VCALENDAR", "last line has no CRLF"),
        (b"Show\\,", b"Show" * 20, "octets"),
        (b"Show\\,", b"\xc3\r\n \xa4", "inside a character"),
        (b"VERSION:2.0\r\n", b"", "needs VERSION once"),
        (b"UID:one\r\n", b"UID:one\r\nUID:two\r\n", "needs UID once"),
        (b"432Z", b"432", "not in UTC"),
        (b"DTSTAMP:20070423T123432Z\r\n", b"", "needs DTSTAMP once"),
        (b"DTSTART;VALUE=DATE:20070628\r\n", b"", "DTSTART is missing"),
        (b"20070709", b"20070628", "not after"),
        (b"DTEND;VALUE=DATE:20070709", b"DTEND:20070709T000000Z", "two kinds"),
        (b"SUMMARY", b"DURATION:P1D\r\nSUMMARY", "both DTEND and DURATION"),
        (b"Show\\,", b"Show,", "not escaped"),
        (b"Show\\,", b"Show\\t", "not escaped"),
        (b"Show\\,", b"Show\x07", "control characters"),
        (b"ACTION:DISPLAY\r\n", b"", "needs ACTION once"),
        (b"DESCRIPTION:Show\r\n", b"", "needs DESCRIPTION once"),
        (b"-P1D", b"one day", "no duration"),
        (b"TRIGGER:-P1D\r\n", b"", "needs TRIGGER once"),
        (b"ACTION:DISPLAY", b"ACTION:EMAIL", "needs SUMMARY once"),
        (b"ACTION", b"REPEAT:2\r\nACTION", "go together"),
        (b"SUMMARY:Show\\, and\\n sale\r\n", b"no line\r\n", "no content line"),
        (b"END:VALARM\r\n", b"", "ends nothing"),
        (EVENT, b"", "needs a component"),
        (EVENT, EVENT * 2, "same UID"),
    ],
    ids=lambda one: one if isinstance(one, str) else "",
)
def test_what_is_broken_is_told(old: bytes, new: bytes, broken: str) -> None:
    assert old in FESTIVAL
    told = violations(FESTIVAL.replace(old, new, 1))
    assert any(broken in one for one in told), told
