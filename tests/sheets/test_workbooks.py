"""Sheets of any size, and what their files say of it."""

import re
from collections.abc import Iterator
from pathlib import Path
from zipfile import ZIP_DEFLATED, ZipFile

import pytest
from openpyxl import Workbook

from partsplan.sheets import workbooks
from partsplan.sheets.workbooks import Grid, read_workbook

MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
HEAD = f'<worksheet xmlns="{MAIN}"><dimension ref="{{}}"/><sheetData>'
SHARED = "xl/sharedStrings.xml"


def made(folder: Path, rows: str, dimension: str = "A1") -> Path:
    """A workbook whose only sheet has these rows, as XML."""
    plain, path = folder / "plain.xlsx", folder / "made.xlsx"
    Workbook().save(plain)
    with ZipFile(plain) as old, ZipFile(path, "w", ZIP_DEFLATED) as new:
        for name in old.namelist():
            if name != "xl/worksheets/sheet1.xml":
                new.writestr(name, old.read(name))
        sheet = f"{HEAD.format(dimension)}{rows}</sheetData></worksheet>"
        new.writestr("xl/worksheets/sheet1.xml", sheet)
    return path


def only(path: Path) -> Grid:
    found = read_workbook(path, lambda _: True)
    assert isinstance(found, tuple)
    (grid,) = found
    return grid


def row(line: int, *cells: str) -> str:
    inside = "".join(f'<c r="{one}{line}"><v>{line}</v></c>' for one in cells)
    return f'<row r="{line}">{inside}</row>'


@pytest.mark.parametrize("dimension", ["A1:XFD1048576", "A1", "C3:B2"])
def test_the_size_that_a_sheet_states_means_nothing(
    tmp_path: Path, dimension: str
) -> None:
    grid = only(made(tmp_path, row(1, "A") + row(2, "A", "C"), dimension))
    assert grid.whole
    assert [(one.line, len(one.cells)) for one in grid.rows] == [(1, 1), (2, 3)]


def test_a_cell_in_the_last_row_is_read(tmp_path: Path) -> None:
    grid = only(made(tmp_path, row(1, "A") + row(1048576, "B")))
    assert grid.whole
    assert [one.line for one in grid.rows] == [1, 1048576]


@pytest.mark.parametrize("line", [1048577, 999999999999999])
def test_rows_beyond_the_last_are_not_waited_for(tmp_path: Path, line: int) -> None:
    assert not only(made(tmp_path, row(1, "A") + row(line, "A"))).whole


def test_a_sheet_with_too_many_cells_is_not_read_to_its_end(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(workbooks, "MOST_CELLS", 100_000)
    rows = "".join(row(line, "ZZZ") for line in range(1, 50))
    grid = only(made(tmp_path, rows))
    assert not grid.whole
    assert len(grid.rows) < 10


def test_blank_cells_to_the_end_are_left_out(tmp_path: Path) -> None:
    blank = '<row r="3"><c r="A3" s="0"/><c r="XFD3"/></row>'
    spaces = '<row r="4"><c r="A4" t="inlineStr"><is><t>  </t></is></c></row>'
    grid = only(made(tmp_path, row(2, "A") + blank + spaces))
    assert [one.line for one in grid.rows] == [2]


def test_sheets_that_nobody_wants_are_not_read(tmp_path: Path) -> None:
    path = made(tmp_path, "<row><c>this would be no sheet</row>")
    found = read_workbook(path, lambda _: False)
    assert isinstance(found, tuple)
    assert found[0].rows == ()


def test_rich_text_is_its_letters(tmp_path: Path) -> None:
    text = "<is><r><t>two </t></r><r><rPr><b/></rPr><t>words</t></r></is>"
    cell = f'<row r="1"><c r="A1" t="inlineStr">{text}</c></row>'
    assert only(made(tmp_path, cell)).rows[0].cells == ("two words",)


def test_shared_texts_are_read_as_other_programs_write_them(tmp_path: Path) -> None:
    texts = (
        "<si><t>plain</t></si>"
        '<si><t xml:space="preserve"> one_x000D_&#10;two </t></si>'
        "<si><r><t>_x005F_</t></r><r><rPr><b/></rPr><t>x00E4_</t></r></si>"
    )
    cells = "".join(
        f'<c r="{column}1" t="s"><v>{place}</v></c>'
        for place, column in enumerate("ABC")
    )
    path = made(tmp_path, f'<row r="1">{cells}</row>')
    kind = "application/vnd.openxmlformats-officedocument.spreadsheetml.sharedStrings"
    override = f'<Override PartName="/{SHARED}" ContentType="{kind}+xml"/>'
    _change(path, "[Content_Types].xml", "</Types>", f"{override}</Types>")
    with ZipFile(path, "a") as archive:
        archive.writestr(SHARED, f'<sst xmlns="{MAIN}">{texts}</sst>')
    assert only(path).rows[0].cells == ("plain", "one\ntwo", "_x00E4_")


def test_openpyxl_says_nothing_of_its_own(tmp_path: Path) -> None:
    extension = '<extLst><ext uri="{x}"/></extLst>'
    path = made(tmp_path, row(1, "A"))
    sheet = "xl/worksheets/sheet1.xml"
    _change(path, sheet, "</sheetData>", f"</sheetData>{extension}")
    assert only(path).whole  # its warning would be an error here


def _change(path: Path, name: str, old: str, new: str) -> None:
    with ZipFile(path) as archive:
        parts = dict(_parts(archive))
    changed = re.sub(old, new, parts[name].decode())
    assert changed != parts[name].decode()
    parts[name] = changed.encode()
    with ZipFile(path, "w") as archive:
        for one, content in parts.items():
            archive.writestr(one, content)


def _parts(archive: ZipFile) -> Iterator[tuple[str, bytes]]:
    for name in archive.namelist():
        yield name, archive.read(name)
