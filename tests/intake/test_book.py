"""A workbook is read as the folder of the same tables is, and its mistakes are told."""

from decimal import Decimal
from pathlib import Path

import pytest

from partsplan.intake import read_garage
from tests.intake import plain_book, plain_garage, test_wrong_cells
from tests.intake.plain_book import book, problems, save, sheets, told, with_cell
from tests.intake.plain_garage import PLAIN

CASES = [
    case
    for case in test_wrong_cells.CASES
    # Text that begins like a formula is text in a workbook.
    if "no formula" not in case[-1]
]
OWN = "; sheets of your own begin with notes"


def column_of(file: str, column: str) -> str:
    place = PLAIN[file].split("\n")[0].split(",").index(column)
    return f"A{chr(65 + place - 26)}" if place > 25 else chr(65 + place)


def test_a_workbook_is_the_garage_of_the_folder(tmp_path: Path) -> None:
    folder = tmp_path / "folder"
    folder.mkdir()
    expected = read_garage(plain_garage.save(folder, PLAIN))
    assert read_garage(save(tmp_path, book(sheets()))) == expected
    assert plain_book.garage(sheets()) == expected


@pytest.mark.parametrize(("file", "line", "column", "text", "message"), CASES)
def test_a_wrong_cell_is_told_as_in_a_folder(
    file: str, line: int, column: str, text: str, message: str
) -> None:
    name = file.removesuffix(".csv")
    place = f"{name}!{column_of(file, column)}{line}"
    said = (
        message.removesuffix(test_wrong_cells.COMMA)  # a workbook has numbers
        .replace(".csv", "")
        .replace("[rates]", "rates")
        .replace("garage.toml", "garage")
    )
    found = problems(with_cell(name, line, column, text))
    assert found == [f"{place}: {column}: {said}"]


def test_a_message_names_sheet_and_cell(tmp_path: Path) -> None:
    made = sheets()
    blank: list[None] = [None] * len(made["faults"][0])
    made["faults"][1:1] = [blank] * 14
    made["faults"][15][8] = 7
    assert told(save(tmp_path, book(made))) == [
        'faults!I16: drivability: expected 0-4, got "7"'
    ]


def test_warnings_name_their_cells() -> None:
    made = with_cell("faults", 4, "codes", "12-3")
    warning = 'faults!Q4: codes: "12-3" is no code like P0171, so nothing looks it up'
    assert plain_book.garage(made).warnings[:1] == (warning,)


def test_problems_of_one_sheet_come_in_the_order_of_its_rows() -> None:
    made = sheets()
    made["tools"] = [["id", "name"], *([f"t{n}", None] for n in range(1, 12))]
    found = problems(made)
    assert [one.partition(":")[0] for one in found] == [
        f"tools!B{line}" for line in range(2, 13)
    ]


def test_sheets_may_stand_in_any_order_and_be_written_in_capitals() -> None:
    made = {title.upper(): rows for title, rows in reversed(sheets().items())}
    assert plain_book.garage(made) == plain_book.garage(sheets())


def test_columns_may_stand_in_any_order() -> None:
    made = {title: [row[::-1] for row in rows] for title, rows in sheets().items()}
    assert plain_book.garage(made) == plain_book.garage(sheets())


@pytest.mark.parametrize(
    ("title", "hint"),
    [("fualts", '; did you mean "faults"?'), ("2027", ""), ("my notes", "")],
)
def test_a_sheet_that_is_no_table_is_a_problem(title: str, hint: str) -> None:
    made = {**sheets(), title: [["anything"]]}
    assert problems(made) == [f"{title}: no such table{hint}{OWN}"]


def test_sheets_of_notes_are_not_read(tmp_path: Path) -> None:
    made = {**sheets(), "notes": [["=1+1"]], "Notes on prices": [[1], [2, 3]]}
    found = book(made)
    found["notes"].merge_cells("A1:C3")
    assert read_garage(save(tmp_path, found)) == plain_book.garage(sheets())


def test_sheets_that_are_needed_are_missed() -> None:
    made = sheets()
    del made["garage"], made["options"], made["tools"]
    assert problems(made) == [
        "garage: needed sheet is missing",
        "options: needed table is missing",
    ]


def test_a_sheet_without_a_header_is_told() -> None:
    assert problems({**sheets(), "garage": []}) == [
        "garage: empty; expected a header like key, value"
    ]
    assert problems({**sheets(), "milestones": [["", ""]]}) == [
        "milestones: empty; expected a header like id, month, faults, ..."
    ]


def test_a_column_that_is_needed_is_missed_in_the_header() -> None:
    made = sheets()
    made["tools"] = [["id", "nam", "price"], ["t1", "Press", "39"]]
    assert problems(made) == ['tools!A1: name: needed column is missing; is it "nam"?']


def test_a_header_that_is_there_twice_is_told(tmp_path: Path) -> None:
    made = sheets()
    made["tools"] = [["id", "name", "price", "Name"], ["t1", "Press", "39", "Big"]]
    assert told(save(tmp_path, book(made))) == [
        'tools!D1: expected each column once, got another one named "name"'
    ]


def test_blank_rows_and_columns_say_nothing(tmp_path: Path) -> None:
    made = sheets()
    made["tools"] = [
        [None, None, None, None],
        [None, "id", None, "name", None, "price", "owned", None],
        [None, None, None, None],
        [None, "t1", None, "Press", "  ", "39", "no", None],
        *[[None] * 30] * 20,
    ]
    assert read_garage(save(tmp_path, book(made))) == plain_book.garage(sheets())


def test_what_stands_below_no_name_is_told_once() -> None:
    made = sheets()
    made["tools"][1] += [None, "cheap"]
    made["tools"] += [[None] * 5 + ["dear"], [None] * 6 + ["far"]]
    assert problems(made) == [
        "tools!F2: expected a name in the header for this column",
        "tools!G4: expected a name in the header for this column",
    ]


def test_columns_of_ones_own_are_told_as_in_a_folder() -> None:
    made = sheets()
    made["tools"] = [["id", "nane", "name"], ["t1", Decimal(3), "Press"]]
    assert plain_book.garage(made).warnings == (
        'tools!A1: column "nane" is not used; did you mean "name"?',
    )


def test_a_hidden_sheet_is_a_problem(tmp_path: Path) -> None:
    found = book({**sheets(), "notes of mine": [["x"]]})
    found["tools"].sheet_state = "hidden"
    found["notes of mine"].sheet_state = "veryHidden"
    assert told(save(tmp_path, found)) == [
        "notes of mine: expected no hidden sheet; unhide it or delete it",
        "tools: expected no hidden sheet; unhide it or delete it",
    ]


def test_merged_cells_are_a_problem(tmp_path: Path) -> None:
    found = book(sheets())
    found["faults"].merge_cells("J3:K4")
    assert told(save(tmp_path, found)) == [
        "faults!J3: expected no merged cells, got some up to K4; unmerge"
    ]


def test_a_reference_into_a_sheet_names_the_sheet() -> None:
    assert problems(with_cell("faults", 2, "vehicle", "V1")) == [
        'faults!B2: vehicle: no vehicle "V1" in vehicles; did you mean "v1"?'
    ]
