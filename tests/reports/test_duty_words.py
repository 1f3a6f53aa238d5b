"""Every duty has a sentence, and says since when or by when."""

from dataclasses import fields
from datetime import date
from typing import Any

import pytest

from partsplan import domain
from partsplan.domain import DoNotDrive, Duty
from partsplan.reports.duty_words import duty_line
from tests.support.small_logbook import GARAGE

DAY = date(2027, 2, 28)
FIELDS: dict[str, Any] = {
    "day": DAY,
    "option": "alternator",
    "fault": "charging",
    "faults": ("charging", "cooling"),
    "vehicle": "van",
    "milestone": "inspection",
    "deposit": 8000,
    "amount": 2500,
    "sent": date(2027, 1, 15),
}
KINDS = [
    one
    for one in vars(domain).values()
    if isinstance(one, type) and issubclass(one, Duty) and one is not Duty
]


def duty(kind: type[Duty], **changes: Any) -> Duty:
    known = {one.name: FIELDS[one.name] for one in fields(kind)}
    return kind(**{**known, **changes})


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.code)
def test_each_is_one_sentence_that_names_what_it_is_about(kind: type[Duty]) -> None:
    line = duty_line(GARAGE, duty(kind), DAY)
    assert line.endswith(".")
    about = FIELDS.get(next(one.name for one in fields(kind) if one.name != "day"))
    name = GARAGE.vehicle["van"].name if kind is DoNotDrive else str(about)
    assert name in line
    assert ("2027-02-28" in line) == (kind is not DoNotDrive)


@pytest.mark.parametrize(
    ("code", "on_the_day", "later"),
    [
        ("cure_fault", "By 2027-02-28: cure", "OVERDUE since 2027-02-28: cure"),
        ("send_back", "By 2027-02-28: send", "OVERDUE since 2027-02-28: send"),
        ("pay_instalment", "By 2027-02-28: pay", "OVERDUE since 2027-02-28: pay"),
        ("ask_for_part", "Since 2027-02-28: ", "Since 2027-02-28: "),
        ("fit_part", "Since 2027-02-28: ", "Since 2027-02-28: "),
    ],
)
def test_what_has_a_last_day_is_overdue_after_it(
    code: str, on_the_day: str, later: str
) -> None:
    (kind,) = (one for one in KINDS if one.code == code)
    assert duty_line(GARAGE, duty(kind), DAY).startswith(on_the_day)
    assert duty_line(GARAGE, duty(kind), date(2027, 3, 1)).startswith(later)


def test_options_that_are_gone_are_called_by_their_id() -> None:
    for kind in KINDS:
        if {"option", "faults"} & {one.name for one in fields(kind)} == {"option"}:
            assert "gone-part" in duty_line(GARAGE, duty(kind, option="gone-part"), DAY)
