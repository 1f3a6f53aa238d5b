"""An export holds everything, and a logbook is made anew from it."""

import csv
import io
import json
from datetime import UTC, date, datetime
from fractions import Fraction
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from hypothesis import given, settings

from partsplan.domain import Currency, Entry, EntryKind, Happening, Month
from partsplan.errors import InvalidRequest, LogbookUnavailable
from partsplan.logbook import (
    FILE,
    Export,
    KeptPlan,
    append,
    as_csv,
    as_json,
    kept_plans,
    read,
    restore,
    restored,
)
from tests.logbook.appending import NOW, happening
from tests.logbook.made_up import EXPORT

EUR = Currency("EUR", 2)

FITTED = Entry(
    number=1,
    written=datetime(2027, 3, 1, 12, 30, tzinfo=UTC),
    what=Happening(
        kind=EntryKind.FITTED,
        day=date(2027, 2, 28),
        subject="pump-used",
        amount=1250,
        hours=Fraction(3, 2),
        who="=Ann",
        text='two\nlines, a "quote"',
        anyway=True,
        batch="import-1",
    ),
)
CHECKED = Entry(
    number=2,
    written=FITTED.written,
    what=Happening(
        kind=EntryKind.CHECKED,
        day=date(2027, 3, 1),
        subject="stalls",
        hours=Fraction(1, 3),
        cause="-relay",
        found=False,
    ),
)
PLAN = KeptPlan(number=1, written=FITTED.written, start=Month(2027, 3), text='{"a": 1}')
ALL = Export(currency="EUR", entries=(FITTED, CHECKED), plans=(PLAN,))


@settings(max_examples=40)
@given(EXPORT)
def test_json_reads_back_as_the_same(export: Export) -> None:
    assert restored(as_json(export)) == export


@settings(max_examples=30)  # each waits for the disk
@given(EXPORT)
def test_a_logbook_made_anew_holds_the_same(export: Export) -> None:
    with TemporaryDirectory() as folder:
        path = Path(folder) / FILE
        restore(path, export)
        assert read(path) == export.entries
        assert kept_plans(path) == export.plans
        (later,) = append(path, [happening("later")], now=NOW)
        assert later.number == len(export.entries) + 1


def test_json_has_money_in_minor_units_and_days_as_iso_text() -> None:
    told = json.loads(as_json(ALL))
    assert {key: told[key] for key in ("schema", "currency")} == {
        "schema": 1,
        "currency": "EUR",
    }
    assert told["plans"] == [
        {
            "number": 1,
            "written": "2027-03-01T12:30:00Z",
            "start": "2027-03",
            "text": '{"a": 1}',
        }
    ]
    assert told["entries"][0]["written"] == "2027-03-01T12:30:00Z"
    assert told["entries"][0]["what"] == {
        "kind": "fitted",
        "day": "2027-02-28",
        "subject": "pump-used",
        "amount": 1250,
        "deposit": None,
        "hours": "3/2",
        "cause": "",
        "found": None,
        "reading": None,
        "who": "=Ann",
        "text": 'two\nlines, a "quote"',
        "anyway": True,
        "batch": "import-1",
    }


def test_csv_is_what_spreadsheets_read() -> None:
    text = as_csv(ALL.entries, EUR)
    assert text == (
        "number,written,kind,day,subject,amount,deposit,hours,cause,found,reading,who,"
        "text,anyway,batch\r\n"
        "1,2027-03-01T12:30:00.000000+00:00,fitted,2027-02-28,pump-used,12.50,,1.5,,,,"
        '\'=Ann,"two\nlines, a ""quote""",yes,import-1\r\n'
        "2,2027-03-01T12:30:00.000000+00:00,checked,2027-03-01,stalls,,,1/3,'-relay,no,"
        ",,,no,\r\n"
    )


@settings(max_examples=40)
@given(EXPORT)
def test_csv_has_a_row_for_every_entry(export: Export) -> None:
    text = as_csv(export.entries, EUR)
    header, *rows = csv.reader(io.StringIO(text, newline=""))
    assert [row[0] for row in rows] == [str(entry.number) for entry in export.entries]
    assert {len(row) for row in rows} <= {len(header)}
    money = header.index("amount")
    assert [EUR.parse(row[money]) if row[money] else None for row in rows] == [
        entry.what.amount for entry in export.entries
    ]


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("{", "", "no logbook export: Invalid JSON"),
        ('"schema": 1', '"schema": 2', "no logbook export: schema: Input should be 1"),
        ('"entries"', '"entry"', "no logbook export: entries: Field required"),
        ("1250", "12.5", "entries.0.what.amount: Input should be a valid integer"),
        ("1250", '"1250"', "entries.0.what.amount: Input should be a valid integer"),
        ("fitted", "fited", "entries.0.what.kind: Input should be 'ordered'"),
        ("2027-02-28", "2027-02-29", "entries.0.what.day: Input should be a valid"),
        ('"2027-03"', '"2027-13"', "plans: expected a month YYYY-MM"),
        ("12:30:00Z", "12:30:00", "entries.0.written: Input should have timezone info"),
        ('"who"', '"whom"', "entries.0.what.whom: Unexpected keyword argument"),
    ],
)
def test_what_is_no_export_is_refused(old: str, new: str, said: str) -> None:
    with pytest.raises(InvalidRequest) as caught:
        restored(as_json(ALL).replace(old, new, 1))
    assert said in str(caught.value)


@pytest.mark.parametrize(
    ("entries", "said"),
    [
        pytest.param((CHECKED,), "expected the next number", id="starts at 2"),
        pytest.param((FITTED, FITTED), "expected the next number", id="twice"),
    ],
)
def test_an_export_that_does_not_fit_together_makes_no_file(
    tmp_path: Path, entries: tuple[Entry, ...], said: str
) -> None:
    with pytest.raises(InvalidRequest, match=said):
        restore(tmp_path / FILE, Export(currency="EUR", entries=entries, plans=()))
    assert list(tmp_path.iterdir()) == []


def test_a_logbook_that_is_there_is_not_written_over(tmp_path: Path) -> None:
    before = append(tmp_path / FILE, [happening("one")], now=NOW)
    with pytest.raises(InvalidRequest, match="there is a logbook already"):
        restore(tmp_path / FILE, ALL)
    assert read(tmp_path / FILE) == before


def test_a_logbook_in_no_folder_cannot_be_made(tmp_path: Path) -> None:
    with pytest.raises(LogbookUnavailable):
        restore(tmp_path / "gone" / FILE, ALL)
