"""``export``, ``restore``, ``bring-in``, and files that are damaged or in the way."""

import csv
import json
import os
from pathlib import Path

import pytest

from tests.cli.logged import BOOK, data, entered, flowing, logged_garage
from tests.cli.running import Capture, raising, run

SPENDING = """\
Date;Cost;What;Who
03.11.2026;12,50;Fuses;Ann
24.12.2026;1008;"Oil; filter";
05.01.2027;7,00;'=Wipers;Kim
"""
COLUMNS = ("--column", "day=Date", "--column", "amount=Cost", "--column", "text=What")
GERMAN = ("--day-format", "%d.%m.%Y", "--decimal-comma")
TODAY = ("--today", "2027-02-03")


@pytest.fixture
def cars(tmp_path: Path) -> Path:
    return logged_garage(tmp_path / "cars")


@pytest.fixture
def spending(tmp_path: Path) -> Path:
    path = tmp_path / "spent.csv"
    path.write_text(SPENDING, encoding="utf-8")
    return path


def write_some(capsys: Capture, cars: Path) -> None:
    entered(capsys, cars, "2027-01-05 ordered starter-exchange", "--who", "Kim")
    entered(capsys, cars, "2027-01-09 arrived starter-exchange", "--text", "=1+1")
    entered(capsys, cars, "2027-01-09 undone 2")


def spoil(book: Path) -> bytes:
    """Changes a letter of an entry, and tells the whole file."""
    content = book.read_bytes()
    assert content.count(b"Kim") == 1
    book.write_bytes(content.replace(b"Kim", b"Tim"))
    return book.read_bytes()


def test_a_damaged_logbook_is_made_anew_from_its_export(
    cars: Path, tmp_path: Path, capsys: Capture
) -> None:
    write_some(capsys, cars)
    kept = tmp_path / "kept.json"
    ran = run(capsys, "export", cars, "-o", kept)
    assert (ran.code, ran.out, ran.err) == (0, "", "")
    before = run(capsys, "entries", cars, "--json").out

    damaged = spoil(cars / BOOK)
    for words in (
        ("now", cars),
        ("entries", cars),
        ("check", cars),
        ("export", cars),
        ("enter", cars, "note", "--text", "x"),
    ):
        ran = run(capsys, *words)
        assert (ran.code, ran.out) == (3, "")
        (line,) = ran.err.splitlines()
        assert "damaged (entries: 1 is not what was written), and left as it" in line
        assert line.endswith("last export: partsplan restore GARAGE EXPORT.json")
    ran = run(capsys, "restore", cars, kept)
    assert (ran.code, ran.out) == (2, "")
    assert "there is a logbook already; move it away first" in ran.err
    assert (cars / BOOK).read_bytes() == damaged

    (cars / BOOK).rename(tmp_path / "damaged.sqlite")
    ran = run(capsys, "restore", cars, kept)
    assert flowing(ran) == f"{cars / BOOK} holds 3 entries and 0 plans again."
    assert run(capsys, "entries", cars, "--json").out == before
    assert run(capsys, "export", cars).out == kept.read_text(encoding="utf-8")


def test_an_export_is_never_written_over_a_file(
    cars: Path, tmp_path: Path, capsys: Capture
) -> None:
    kept = tmp_path / "kept.json"
    kept.write_text("mine")
    ran = run(capsys, "export", cars, "-o", kept)
    assert (ran.code, kept.read_text()) == (2, "mine")
    assert run(capsys, "export", cars, "-o", kept, "--force").code == 0
    assert json.loads(kept.read_text())["entries"] == []


def test_entries_as_a_table_are_safe_to_open(cars: Path, capsys: Capture) -> None:
    write_some(capsys, cars)
    ran = run(capsys, "export", cars, "--csv")
    rows = list(csv.DictReader(ran.out.splitlines()))
    assert [row["kind"] for row in rows] == ["ordered", "arrived", "undone"]
    assert rows[0]["amount"] == "109.00"
    assert rows[1]["text"] == "'=1+1"
    assert run(capsys, "export", cars, "--csv", "--json").code == 2


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"{}", "export.json: no logbook export: schema: Field required"),
        (b"\xff\xfe", "export.json: 'utf-8' codec can't decode"),
        (b"id,vehicle\n", "export.json: no logbook export: Invalid JSON"),
        (
            b'{"schema": 1, "currency": "JPY", "entries": [], "plans": []}',
            "export.json: expected amounts in EUR, got JPY",
        ),
    ],
)
def test_what_is_no_export_of_this_garage_is_refused(
    content: bytes, said: str, cars: Path, tmp_path: Path, capsys: Capture
) -> None:
    export = tmp_path / "export.json"
    export.write_bytes(content)
    ran = run(capsys, "restore", cars, export)
    assert (ran.code, ran.out) == (3, "")
    assert ran.err.startswith(said)
    assert not (cars / BOOK).exists()


def test_past_spending_comes_in_and_is_undone_at_once(
    cars: Path, spending: Path, capsys: Capture
) -> None:
    entered(capsys, cars, "2027-01-02 paid", "--amount", "1")
    before = data(capsys, "now", cars, *TODAY)
    ran = run(
        capsys,
        "bring-in",
        cars,
        spending,
        *COLUMNS,
        "--column",
        "who=Who",
        *GERMAN,
        *TODAY,
    )
    assert ran.code == 0
    assert ran.out.splitlines()[-1] == f"partsplan enter {cars} undone import-1"
    assert (
        "3 sums, 1,027.50 EUR from 2026-11-03 to 2027-01-05, written down as import-1. "
        "1,020.50 EUR of it is older than 2027-01, so"
    ) in flowing(ran)
    entries = data(capsys, "entries", cars)["entries"]
    assert [one["amount"] for one in entries] == [100, 1250, 100800, 700]
    assert [one["text"] for one in entries] == ["", "Fuses", "Oil; filter", "=Wipers"]
    assert [one["who"] for one in entries] == ["", "Ann", "", "Kim"]
    assert {one["batch"] for one in entries[1:]} == {"import-1"}
    assert data(capsys, "now", cars, *TODAY)["money"]["opening"] == 10000 - 800

    undone = flowing(entered(capsys, cars, "2027-02-03 undone import-1"))
    assert "- 1,027.50 EUR less spent." in undone
    assert data(capsys, "now", cars, *TODAY) == before
    more = data(capsys, "bring-in", cars, spending, *COLUMNS, *GERMAN, *TODAY)
    assert (more["batch"], more["entries"], more["amount"]) == ("import-2", 3, 102750)


def test_every_wrong_row_is_named_at_once_and_nothing_is_written(
    cars: Path, tmp_path: Path, capsys: Capture
) -> None:
    path = tmp_path / "spent.csv"
    path.write_text(
        "Date,Cost,On\n2026-13-01,5,\n2027-01-05,1.234,\n2027-01-05,5,strter-exchange\n"
        "2030-01-01,5,\n2027-01-06,5,belt-kit\n"
    )
    words = (*COLUMNS[:4], "--column", "subject=On", *TODAY)
    ran = run(capsys, "bring-in", cars, path, *words)
    assert (ran.code, ran.out) == (3, "")
    lines = ran.err.splitlines()
    assert lines[0].startswith('spent.csv:2: Date: expected a day YYYY-MM-DD, got "20')
    assert lines[1].startswith("spent.csv:3: Cost: expected at most 2 decimals in EUR")
    assert lines[2] == (
        "spent.csv:4: there is no option, tool, vehicle, fault or supplier "
        '"strter-exchange"; did you mean "starter-exchange"?'
    )
    assert lines[3].startswith("spent.csv:5: 2030-01-01 is still to come;")
    assert lines[4:] == ["4 problems; nothing was written."]
    assert not (cars / BOOK).exists()


@pytest.mark.parametrize(
    ("words", "code", "said"),
    [
        ((), 2, "expected the name of the column with the day"),
        (("--column", "day"), 2, "expected FIELD=NAME, got 'day'"),
        (("--column", "price=Cost"), 2, 'no entry of spending has "price"'),
        ((*COLUMNS, "--day-format", "%d"), 2, '"%d" does not say how days'),
        ((*COLUMNS[:2], "--column", "amount=Price"), 3, "Price: no such column"),
        ((*COLUMNS, "--day-format", "%d.%m.%Y"), 3, "expected an amount like 12.50"),
    ],
)
def test_columns_and_formats_that_make_no_sense(
    words: tuple[str, ...],
    code: int,
    said: str,
    cars: Path,
    spending: Path,
    capsys: Capture,
) -> None:
    ran = run(capsys, "bring-in", cars, spending, *words, *TODAY)
    assert (ran.code, ran.out) == (code, "")
    assert said in ran.err


def test_a_table_without_rows_brings_nothing(
    cars: Path, tmp_path: Path, capsys: Capture
) -> None:
    path = tmp_path / "empty.csv"
    path.write_text("Date,Cost,What\n")
    ran = run(capsys, "bring-in", cars, path, *COLUMNS, *TODAY)
    assert (ran.code, ran.out) == (3, "")
    assert ran.err == "empty.csv: expected rows below the header, got none\n"
    assert not (cars / BOOK).exists()


def test_a_logbook_that_cannot_be_written_is_told_in_one_line(
    cars: Path, capsys: Capture, monkeypatch: pytest.MonkeyPatch
) -> None:
    # Permissions do not bind every user, so the system call is made to fail.
    monkeypatch.setattr(
        "partsplan.logbook.opening.TemporaryDirectory",
        raising(PermissionError(13, "Permission denied", str(cars))),
    )
    ran = run(capsys, "enter", cars, "note", "--text", "x")
    assert (ran.code, ran.out) == (3, "")
    assert ran.err == f"Error: {cars / BOOK}: Permission denied; nothing was written\n"
    assert run(capsys, "now", cars).code == 0


@pytest.mark.skipif(os.geteuid() == 0, reason="permissions do not bind root")
def test_a_folder_that_can_only_be_read_can_still_be_asked(
    cars: Path, capsys: Capture
) -> None:
    write_some(capsys, cars)
    cars.chmod(0o500)
    try:
        assert run(capsys, "now", cars).code == 0
        assert run(capsys, "enter", cars, "note", "--text", "x").code == 3
    finally:
        cars.chmod(0o700)


def test_a_folder_in_the_place_of_the_logbook(cars: Path, capsys: Capture) -> None:
    (cars / BOOK).mkdir()
    ran = run(capsys, "now", cars)
    assert (ran.code, ran.out) == (3, "")
    assert len(ran.err.splitlines()) == 1
