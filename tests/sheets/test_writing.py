"""What is written into a workbook, by the XML of its parts."""

import io
import re
from decimal import Decimal
from pathlib import Path
from xml.etree import ElementTree
from zipfile import ZipFile

import pytest

from partsplan.errors import InvalidRequest
from partsplan.sheets.workbooks import read_workbook
from partsplan.sheets.writing import (
    Choices,
    Filled,
    OutColumn,
    OutSheet,
    workbook_bytes,
)

NAMES = {"s": "http://schemas.openxmlformats.org/spreadsheetml/2006/main"}
NASTY = [
    "=1+1",
    "=cmd|' /C x'!A1",
    "+1",
    "-1+2",
    "@SUM(A1)",
    "\t=1+1",
    "\r=1+1",
    "\n=1",
    "'=1",
    "#N/A",
    "#DIV/0!",
    "2027-01",
    "1e5",
    "TRUE",
    "<b>&amp;",
    "_x0041_",
    "\ufffe",
]


def sheet_xml(content: bytes, number: int = 1) -> ElementTree.Element:
    with ZipFile(io.BytesIO(content)) as archive:
        return ElementTree.fromstring(archive.read(f"xl/worksheets/sheet{number}.xml"))


def one_sheet(
    *values: str | Decimal | Filled, column: OutColumn | None = None
) -> bytes:
    columns = (column or OutColumn(title="what"),)
    rows = [[value] for value in values]
    return workbook_bytes([OutSheet(title="one", columns=columns, rows=rows)])


def test_text_is_never_a_formula(tmp_path: Path) -> None:
    content = one_sheet(*NASTY, column=OutColumn(title="=1+1"))
    xml = sheet_xml(content)
    cells = xml.findall(".//s:c", NAMES)
    assert len(cells) == len(NASTY) + 1
    assert {cell.get("t") for cell in cells} == {"inlineStr"}
    assert not xml.findall(".//s:f", NAMES)
    (tmp_path / "x.xlsx").write_bytes(content)
    found = read_workbook(tmp_path / "x.xlsx", lambda _: True)
    assert isinstance(found, tuple)
    read = [row.cells[0] for row in found[0].rows]
    assert read == ["=1+1", *(text.strip() for text in NASTY)]


@pytest.mark.parametrize(
    "number", ["8.95", "0.1", "1234567.89", "0", "-75.00", "0.001", "999999999999.999"]
)
def test_numbers_are_written_digit_by_digit(number: str) -> None:
    cell = sheet_xml(one_sheet(Decimal(number))).find(".//s:c[@r='A2']", NAMES)
    assert cell is not None
    assert (cell.get("t"), cell.findtext("s:v", namespaces=NAMES)) == ("n", number)


def test_choices_are_offered_below_the_rows_too() -> None:
    column = OutColumn(title="what", choices=Choices(words=("yes", "no")))
    sheet = OutSheet(title="one", columns=(column,), rows=[["yes"]], more=9)
    found = sheet_xml(workbook_bytes([sheet])).find(".//s:dataValidation", NAMES)
    assert found is not None
    assert found.get("sqref") == "A2:A11"
    assert found.get("showErrorMessage") == "1"
    assert found.findtext("s:formula1", namespaces=NAMES) == '"yes,no"'


def test_one_cell_may_have_its_own_choices_and_format() -> None:
    place = "other!$A$2:$A$9"
    shape = Filled(Decimal("1.5"), "0.000", Choices(place=place, only=False))
    content = one_sheet("text", shape)
    found = sheet_xml(content).find(".//s:dataValidation", NAMES)
    assert found is not None
    assert found.get("sqref") == "A3"
    assert found.get("showErrorMessage") == "0"
    assert found.findtext("s:formula1", namespaces=NAMES) == place
    with ZipFile(io.BytesIO(content)) as archive:
        assert 'formatCode="0.000"' in archive.read("xl/styles.xml").decode()


def test_headers_stay_in_sight_and_are_explained() -> None:
    content = one_sheet("x", column=OutColumn(title="what", comment="What it is."))
    pane = sheet_xml(content).find(".//s:pane", NAMES)
    assert pane is not None
    assert (pane.get("topLeftCell"), pane.get("state")) == ("B2", "frozen")
    with ZipFile(io.BytesIO(content)) as archive:
        name = next(one for one in archive.namelist() if "comment" in one)
        assert re.search(b"What it is\\.", archive.read(name))


def test_a_text_that_no_cell_holds_is_refused() -> None:
    assert one_sheet("x" * 32_767)
    with pytest.raises(InvalidRequest) as caught:
        one_sheet("short", "\U0001f527" * 16_384)
    expected = "one!A3: a text of over 32,767 characters, which no cell holds"
    assert str(caught.value) == expected
