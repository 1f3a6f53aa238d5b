"""The starter workbook: a garage, with help in every cell."""

from pathlib import Path

import pytest
from openpyxl import load_workbook
from openpyxl.cell import Cell
from openpyxl.worksheet.worksheet import Worksheet

from partsplan import catalogue
from partsplan.domain import Garage, Month
from partsplan.intake import SHEETS, read_garage, starter_workbook, write_starter
from partsplan.intake.book_words import WORDS
from partsplan.intake.columns import TABLES
from partsplan.intake.explained import blank, expected, meaning

START = Month(2031, 11)
LONGEST_LIST = 255
"""Most characters of a list that stands in a validation itself."""


@pytest.fixture(scope="module")
def path(tmp_path_factory: pytest.TempPathFactory) -> Path:
    made = tmp_path_factory.mktemp("starter") / "garage.xlsx"
    made.write_bytes(starter_workbook(START))
    return made


def header(sheet: Worksheet) -> list[Cell]:
    return [cell for cell in sheet[1] if isinstance(cell, Cell)]


def test_it_is_the_garage_of_the_starter_folder(path: Path, tmp_path: Path) -> None:
    write_starter(tmp_path, START)
    found = read_garage(path)
    assert found == read_garage(tmp_path)
    assert found.warnings == ()


def test_it_has_every_sheet_and_every_column(path: Path) -> None:
    book = load_workbook(path)
    assert book.sheetnames == [*SHEETS, WORDS]
    for table in TABLES:
        names = [cell.value for cell in header(book[table.name])]
        assert names == [column.name for column in table.columns]


def test_every_column_is_explained_as_in_the_folders_guide(path: Path) -> None:
    book = load_workbook(path)
    for table in TABLES:
        for cell, column in zip(header(book[table.name]), table.columns, strict=True):
            assert cell.comment is not None
            said = cell.comment.text
            for words in (meaning(column), expected(column), blank(column)):
                assert words in said


def test_every_closed_list_is_a_drop_down(path: Path) -> None:
    book = load_workbook(path)
    for table in TABLES:
        offered = {
            str(one.sqref)[0:2].rstrip("2"): str(one.formula1)
            for one in book[table.name].data_validations.dataValidation
        }
        for cell, column in zip(header(book[table.name]), table.columns, strict=True):
            if words := column.kind.words:
                assert offered[cell.column_letter] == f'"{",".join(words)}"'
                assert len(offered[cell.column_letter]) <= LONGEST_LIST
        listed = sum(1 for one in table.columns if one.kind.words)
        assert len(offered) >= listed
    scales = catalogue.scales()
    for name in ("severity", "likelihood", "system", "drivability", "inspection"):
        assert f'"{",".join(one.value for one in scales[name])}' in "".join(
            str(one.formula1) for one in book["faults"].data_validations.dataValidation
        )


def test_lists_that_are_too_long_for_a_cell_stand_in_a_sheet(path: Path) -> None:
    book = load_workbook(path)
    places = {
        str(one.formula1): str(one.sqref)
        for one in book["faults"].data_validations.dataValidation
    }
    place = next(one for one in places if one.startswith(f"'{WORDS}'!"))
    first, last = place.replace("$", "").partition("!")[2].split(":")
    kinds = [row[0].value for row in book[WORDS][first:last]]
    assert kinds == list(catalogue.fault_kinds())
    assert places[place].startswith("D2:")
    codes = next(
        str(one.formula1) for one in book["garage"].data_validations.dataValidation
    )
    first, last = codes.replace("$", "").partition("!")[2].split(":")
    assert [row[0].value for row in book[WORDS][first:last]] == [
        *catalogue.currencies()
    ]


def test_what_is_typed_below_stays_what_it_is(path: Path) -> None:
    sheet = load_workbook(path)["options"]
    formats = {
        cell.value: sheet.column_dimensions[cell.column_letter].number_format
        for cell in header(sheet)
    }
    assert formats["valid_until"] == "@"  # or 2027-02 would become a date
    assert formats["part_no"] == "@"
    assert formats["price"] == "0.00"
    assert formats["lead_days"] == "General"


def test_a_filled_in_garage_takes_numbers_words_and_dates(
    path: Path, tmp_path: Path
) -> None:
    from datetime import date

    book = load_workbook(path)
    settings = {row[0].value: row[1] for row in book["garage"].iter_rows()}
    settings["start"].value = date(2031, 12, 1)
    settings["start"].number_format = "mmm-yy"
    settings["rates.USD"].value = 0.92
    settings["carry_over"].value = False
    book["tools"].append(["lamp", "Work lamp", 19.9, "yes"])
    book.save(tmp_path / "mine.xlsx")
    found: Garage = read_garage(tmp_path / "mine.xlsx")
    assert found.start == Month(2031, 12)
    assert not found.carry_over
    assert found.tool["lamp"].price == 1990
    assert found.tool["lamp"].owned
