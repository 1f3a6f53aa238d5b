"""A reader of calendars that knows the rules of RFC 5545 and tells which are broken.

It shares nothing with the writer. Sections in brackets.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field

LONGEST_LINE = 75  # octets, without the line break [3.1]
_LINE = re.compile(
    r'([A-Za-z0-9-]+)((?:;[A-Za-z0-9-]+=(?:"[^"]*"|[^";:,]*))*):(.*)', re.DOTALL
)
_ESCAPED = re.compile(r"(?:[^\\;,]|\\[\\;,nN])*", re.DOTALL)
_UTC = re.compile(r"\d{8}T\d{6}Z")
_DATE = re.compile(r"\d{8}")
_TRIGGER = re.compile(r"[+-]?P(\d+W|(\d+D)?(T(\d+H)?(\d+M)?(\d+S)?)?)")
_CONTROL = re.compile(r"[\x00-\x08\x0a-\x1f\x7f]")
_TEXTS = ("SUMMARY", "DESCRIPTION")
_ONCE_AT_MOST = ("DTSTART", "DTEND", "SUMMARY", "DESCRIPTION", "SEQUENCE", "TRANSP")


@dataclass
class Line:
    """One property."""

    name: str
    parameters: str
    value: str

    @property
    def text(self) -> str:
        """Its value without escapes. [3.3.11]"""
        return re.sub(
            r"\\(.)", lambda one: {"n": "\n", "N": "\n"}.get(one[1], one[1]), self.value
        )


@dataclass
class Component:
    """What stands between a BEGIN and its END."""

    name: str
    lines: list[Line] = field(default_factory=list)
    parts: list["Component"] = field(default_factory=list)

    def all(self, name: str) -> list[Line]:
        """Every property of that name."""
        return [line for line in self.lines if line.name == name]

    def text(self, name: str) -> str:
        """The text of its only property of that name."""
        (line,) = self.all(name)
        return line.text


def events(calendar: bytes) -> list[Component]:
    """The events of a calendar that breaks no rule."""
    broken = violations(calendar)
    assert not broken, broken
    return read(calendar).parts


def read(calendar: bytes) -> Component:
    """The outermost component; a ValueError says what makes it unreadable."""
    outside = Component("")
    open_: list[Component] = [outside]
    for text in _unfolded(calendar):
        found = _LINE.fullmatch(text)
        if not found:
            raise ValueError(f"no content line: {text!r}")
        line = Line(found[1].upper(), found[2].upper(), found[3])
        if line.name == "BEGIN":
            inner = Component(line.value.upper())
            open_[-1].parts.append(inner)
            open_.append(inner)
        elif line.name == "END":
            if len(open_) < 2 or open_.pop().name != line.value.upper():
                raise ValueError(f"END:{line.value} ends nothing")
        else:
            open_[-1].lines.append(line)
    if len(open_) > 1 or outside.lines or len(outside.parts) != 1:
        raise ValueError("expected one component from BEGIN to END")
    return outside.parts[0]


def violations(calendar: bytes) -> list[str]:
    """Every rule that the calendar breaks."""
    found = list(_octets(calendar))
    try:
        top = read(calendar)
    except ValueError as error:
        return [*found, str(error)]
    return [*found, *_calendar(top)]


def _octets(calendar: bytes) -> Iterator[str]:
    if not calendar.endswith(b"\r\n"):
        yield "the last line has no CRLF"
    for line in calendar.split(b"\r\n"):
        if b"\r" in line or b"\n" in line:
            yield f"a line break that is no CRLF: {line!r}"
        if len(line) > LONGEST_LINE:
            yield f"{len(line)} octets: {line!r}"
        try:
            line.decode()
        except UnicodeDecodeError:
            yield f"folded inside a character: {line!r}"


def _unfolded(calendar: bytes) -> list[str]:
    joined = re.sub(rb"\r\n[ \t]", b"", calendar)
    return joined.decode().removesuffix("\r\n").split("\r\n")


def _calendar(top: Component) -> Iterator[str]:
    if top.name != "VCALENDAR":
        yield f"expected VCALENDAR, got {top.name}"
    yield from _once(top, "PRODID", "VERSION")  # [3.6]
    if not top.parts:
        yield "a calendar needs a component"
    uids = []
    for part in top.parts:
        if part.name == "VALARM":
            yield "VALARM outside of an event"
        if part.name == "VEVENT":
            yield from _event(part, method=bool(top.all("METHOD")))
            uids += [line.value for line in part.all("UID")]
    if len(set(uids)) < len(uids):
        yield "two events have the same UID"


def _event(event: Component, *, method: bool) -> Iterator[str]:
    """[3.6.1]"""
    yield from _once(event, "UID", "DTSTAMP")
    yield from _texts(event)
    for name in _ONCE_AT_MOST:
        if len(event.all(name)) > 1:
            yield f"{name} more than once"
    for stamp in event.all("DTSTAMP"):
        if not _UTC.fullmatch(stamp.value):
            yield f"DTSTAMP is not in UTC: {stamp.value}"
    starts, ends = event.all("DTSTART"), event.all("DTEND")
    if not starts and not method:
        yield "DTSTART is missing"
    if ends and event.all("DURATION"):
        yield "both DTEND and DURATION"
    for line in (*starts, *ends):
        if "VALUE=DATE" in line.parameters and not _DATE.fullmatch(line.value):
            yield f"{line.name} is no date: {line.value}"
    for start, end in zip(starts, ends, strict=False):
        if start.parameters != end.parameters:
            yield "DTSTART and DTEND are of two kinds"
        if end.value <= start.value:  # [3.8.2.2] it is the first day after
            yield "DTEND is not after DTSTART"
    for part in event.parts:
        if part.name != "VALARM":
            yield f"{part.name} inside an event"
        yield from _alarm(part, starts=bool(starts))


def _alarm(alarm: Component, *, starts: bool) -> Iterator[str]:
    """[3.6.6]"""
    yield from _once(alarm, "ACTION", "TRIGGER")
    yield from _texts(alarm)
    actions = {line.value for line in alarm.all("ACTION")}
    needs = {"DISPLAY": ["DESCRIPTION"], "EMAIL": ["DESCRIPTION", "SUMMARY"]}
    for action in actions:
        yield from _once(alarm, *needs.get(action, []))
    if "EMAIL" in actions and not alarm.all("ATTENDEE"):
        yield "EMAIL needs ATTENDEE"
    if bool(alarm.all("DURATION")) != bool(alarm.all("REPEAT")):
        yield "DURATION and REPEAT go together"
    for trigger in alarm.all("TRIGGER"):
        if "VALUE=DATE-TIME" in trigger.parameters:
            continue
        if not _TRIGGER.fullmatch(trigger.value):
            yield f"TRIGGER is no duration: {trigger.value}"
        if not starts:
            yield "TRIGGER counts from a DTSTART that is missing"


def _texts(component: Component) -> Iterator[str]:
    for name in _TEXTS:
        for line in component.all(name):
            if not _ESCAPED.fullmatch(line.value):
                yield f"{name} is not escaped: {line.value!r}"
    for line in component.lines:
        if _CONTROL.search(line.value):
            yield f"{line.name} has control characters: {line.value!r}"


def _once(component: Component, *names: str) -> Iterator[str]:
    for name in names:
        if len(component.all(name)) != 1:
            yield f"{component.name} needs {name} once"
