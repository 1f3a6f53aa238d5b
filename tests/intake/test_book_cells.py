"""Numbers, dates, yes and no, and formulas in the cells of a workbook."""

from datetime import date, datetime, time
from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from typing import Any
from zipfile import ZipFile

import pytest
from openpyxl.utils.datetime import CALENDAR_MAC_1904

from partsplan.domain import Garage, Month
from partsplan.intake import read_garage
from tests.intake.plain_book import book, problems, save, sheets, told, with_cell

ISO = "yyyy-mm-dd"


def written(folder: Path, column: str, value: Any, number_format: str = "") -> Path:
    """The plain garage with something else in one cell of its first option."""
    found = book(sheets())
    sheet = found["options"]
    names = [cell.value for cell in sheet[1]]
    cell = sheet.cell(2, names.index(column) + 1, value)
    if number_format:
        cell.number_format = number_format
    return save(folder, found)


def read(folder: Path, column: str, value: Any, number_format: str = "") -> Garage:
    return read_garage(written(folder, column, value, number_format))


@pytest.mark.parametrize(
    ("column", "value", "means"),
    [
        ("price", 30, 3000),
        ("price", 30.1, 3010),
        ("core_chance", 0.1 + 0.2, Fraction(3, 10)),
        ("quantity", 8.95, Fraction("8.95")),
        ("hours", 1e-3, Fraction(1, 1000)),
        ("hours", 1000000.0, Fraction(1000000)),
        ("lead_days", 5.0, 5),
        ("part_no", 4711, "4711"),
        ("part_no", 0.5, "0.5"),
        ("notes", 12.0, "12"),
    ],
)
def test_a_number_is_its_digits(
    tmp_path: Path, column: str, value: float, means: object
) -> None:
    found = read(tmp_path, column, value)
    assert getattr(found.options[0], column) == means


@pytest.mark.parametrize("value", [1.1 + 2.2, 3.3 - 4e-16])
def test_no_noise_of_floats_is_read(tmp_path: Path, value: float) -> None:
    assert value != 3.3
    assert read(tmp_path, "price", value).options[0].price == 330


def test_a_number_with_more_decimals_than_its_currency_is_told(tmp_path: Path) -> None:
    assert told(written(tmp_path, "price", 12.505)) == [
        'options!F2: price: expected at most 2 decimals in EUR, got "12.505"'
    ]


def test_a_long_number_in_a_text_column_has_lost_digits(tmp_path: Path) -> None:
    path = written(tmp_path, "part_no", 1234567890123456)
    assert told(path) == [
        "options!E2: part_no: expected text, got a number of which only 15 digits are "
        "kept; make the cell text, and write it again"
    ]
    assert read(tmp_path, "part_no", 123456789012345).options[0].part_no.isdigit()


def test_a_number_of_forty_digits_is_told(tmp_path: Path) -> None:
    (message,) = told(written(tmp_path, "hours", 10**40))
    assert message.startswith("options!V2: hours: expected a number, 0 or more, got ")


@pytest.mark.parametrize(("value", "means"), [(True, True), (False, False)])
def test_yes_and_no_may_be_boolean(tmp_path: Path, value: bool, means: bool) -> None:
    assert read(tmp_path, "road_legal", value).options[0].road_legal is means


@pytest.mark.parametrize("column", ["hours", "part_no", "valid_until", "route"])
def test_a_boolean_elsewhere_is_told(tmp_path: Path, column: str) -> None:
    (message,) = told(written(tmp_path, column, True))
    assert message.endswith(", got TRUE")


@pytest.mark.parametrize(
    ("value", "number_format"),
    [
        (date(2027, 3, 1), "mmm-yy"),
        (date(2027, 3, 31), ISO),
        (datetime(2027, 3, 5), "dd.mm.yyyy"),
        ("2027-03", ""),
    ],
)
def test_a_date_in_a_column_of_months_is_its_month(
    tmp_path: Path, value: object, number_format: str
) -> None:
    found = read(tmp_path, "valid_until", value, number_format)
    assert found.options[0].valid_until == Month(2027, 3)


@pytest.mark.parametrize(
    ("number_format", "means"),
    [
        (ISO, "2026-11-05"),
        ("d/m/yy", "2026-11-05"),
        ('yyyy"-"mm"-"dd', "2026-11-05"),
        ("mmm-yy", "2026-11"),
        ('mmmm\\ yyyy" (d)"', "2026-11"),
        ("[$-809]mmmm yyyy", "2026-11"),
    ],
)
def test_a_date_in_a_column_of_days_is_what_it_shows(
    tmp_path: Path, number_format: str, means: str
) -> None:
    found = read(tmp_path, "quoted_on", date(2026, 11, 5), number_format)
    assert found.options[0].quoted_on == means


@pytest.mark.parametrize(
    ("column", "value", "got"),
    [
        ("lead_days", date(2027, 1, 3), "the date 2027-01-03"),
        ("price", date(2027, 1, 3), "the date 2027-01-03"),
        ("part_no", date(2027, 3, 4), "the date 2027-03-04"),
        ("instalments", time(0, 1), "the time 00:01:00"),
        ("valid_until", time(10, 30), "the time 10:30:00"),
        ("valid_until", datetime(2027, 3, 4, 5, 6), "the time 2027-03-04 05:06:00"),
        ("valid_until", 202703, "the number 202703"),
        ("quoted_on", 46082.0, "the number 46082"),
    ],
)
def test_a_date_where_none_belongs_is_told_and_so_is_a_number_for_one(
    tmp_path: Path, column: str, value: object, got: str
) -> None:
    (message,) = told(written(tmp_path, column, value))
    assert message.startswith("options!")
    assert f"2: {column}: expected " in message
    assert message.endswith(f", got {got}")


@pytest.mark.parametrize("iso_dates", [False, True])
def test_dates_are_read_however_a_workbook_counts_days(
    tmp_path: Path, iso_dates: bool
) -> None:
    found = book(sheets())
    found.epoch = CALENDAR_MAC_1904
    found.iso_dates = iso_dates
    found["options"]["AF2"] = date(2027, 3, 5)
    found["options"]["AE2"] = date(2026, 11, 5)
    option = read_garage(save(tmp_path, found)).options[0]
    assert option.valid_until == Month(2027, 3)
    assert option.quoted_on == "2026-11-05"


def test_a_serial_number_outside_of_the_calendar_is_told(tmp_path: Path) -> None:
    path = written(tmp_path, "valid_until", 99999999, ISO)
    assert told(path) == [
        "options!AF2: valid_until: expected a month YYYY-MM, got the error #VALUE!"
    ]


def test_an_error_is_told(tmp_path: Path) -> None:
    assert told(written(tmp_path, "hours", "#N/A")) == [
        "options!V2: hours: expected 0 or more, got the error #N/A"
    ]


def test_a_formula_without_a_stored_value_is_told(tmp_path: Path) -> None:
    path = written(tmp_path, "hours", "=1+1")
    assert told(path) == [
        "options!V2: hours: expected 0 or more, got a formula without a stored value; "
        "open and save the workbook in a spreadsheet program"
    ]


@pytest.mark.parametrize(
    ("column", "stored", "means"),
    [
        ("hours", "<v>2.5</v>", Fraction(5, 2)),
        ("hours", "<v>0.30000000000000004</v>", Fraction(3, 10)),
        ("min_temp", "<v></v>", None),
    ],
)
def test_a_formula_counts_with_its_stored_value(
    tmp_path: Path, column: str, stored: str, means: object
) -> None:
    path = written(tmp_path, column, "=1+1")
    kind = ' t="str"' if stored == "<v></v>" else ""
    _store(path, stored, kind)
    assert getattr(read_garage(path).options[0], column) == means


def test_a_formula_that_came_to_an_error_is_told(tmp_path: Path) -> None:
    path = written(tmp_path, "hours", "=1/0")
    _store(path, "<v>#DIV/0!</v>", ' t="e"', formula="1/0")
    assert told(path) == [
        "options!V2: hours: expected 0 or more, got the error #DIV/0!"
    ]


@pytest.mark.parametrize(
    "text", ["=1+1", "+x", "-x", "@x", "'=1", "''-x", "#N/A", "_x0041_", "-5 C"]
)
def test_text_stays_text_whatever_it_begins_with(tmp_path: Path, text: str) -> None:
    found = book(sheets())
    found["options"]["E2"].value = text
    found["options"]["E2"].data_type = "s"
    assert read_garage(save(tmp_path, found)).options[0].part_no == text


def test_line_ends_of_other_programs_are_line_ends(tmp_path: Path) -> None:
    for text in ("one\ntwo", "one\r\ntwo", "one_x000D_\ntwo", "one_x000d_two"):
        assert read(tmp_path, "notes", text).options[0].notes == "one\ntwo"


def test_a_wrong_cell_is_not_taken_for_a_blank_one() -> None:
    made = with_cell("options", 2, "core_chance", True)
    made["options"][1][made["options"][0].index("hours")] = Decimal("2.50")
    assert problems(made) == ["options!L2: core_chance: expected 0-1, got TRUE"]


def _store(path: Path, stored: str, kind: str = "", formula: str = "1+1") -> None:
    """Put a value beside the one formula of a workbook, as spreadsheets do."""
    with ZipFile(path) as archive:
        parts = {name: archive.read(name) for name in archive.namelist()}
    old = f"<f>{formula}</f><v /></c>".encode()
    with ZipFile(path, "w") as archive:
        for name, part in parts.items():
            if old in part:
                before, _, after = part.partition(old)
                head, _, cell = before.rpartition(b"<c ")
                part = b"".join(
                    [
                        head,
                        b"<c ",
                        cell.replace(b">", f"{kind}>".encode(), 1),
                        f"<f>{formula}</f>{stored}</c>".encode(),
                        after,
                    ]
                )
            archive.writestr(name, part)
