"""Where the tables lie, and what a damaged one says."""

from collections.abc import Callable
from fractions import Fraction
from pathlib import Path

import pytest

from partsplan.catalogue import BrokenCatalogue, data_folder, tables
from partsplan.catalogue.tables import Row, read_table
from partsplan.domain import Severity, System

Write = Callable[[bytes], None]


@pytest.fixture
def write(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Write:
    """Puts ``parts.csv`` into a package that is installed without a checkout."""
    monkeypatch.setattr(tables, "_PACKAGE", tmp_path)
    (tmp_path / "data").mkdir()

    def put(content: bytes) -> None:
        (tmp_path / "data" / "parts.csv").write_bytes(content)

    return put


def names(row: Row) -> str:
    return row.text("name")


def test_the_packaged_folder_goes_before_the_checkouts(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    package = tmp_path / "partsplan"
    monkeypatch.setattr(tables, "_PACKAGE", package)
    assert data_folder() == tmp_path / "data"
    (package / "data").mkdir(parents=True)
    assert data_folder() == package / "data"


def test_the_tables_are_found_here() -> None:
    assert (data_folder() / "fault_kinds.csv").is_file()


def test_rows_are_read_in_file_order(write: Write) -> None:
    write(b'name,note\nhose,"a, b"\nclip,\n')
    assert read_table("parts.csv", names) == ("hose", "clip")


def test_a_missing_table_is_told_by_name(write: Write) -> None:
    with pytest.raises(BrokenCatalogue, match=r"lamps\.csv cannot be read .*again"):
        read_table("lamps.csv", names)


@pytest.mark.parametrize(
    ("content", "message"),
    [
        (b"", "parts.csv:1: expected a header and rows, got none"),
        (b"name,note\n", "parts.csv:1: expected a header and rows, got none"),
        (b"name,note\nhose,\nclip\n", "parts.csv:3: expected 2 cells, got 1"),
        (b"name,note\nhose,,\n", "parts.csv:2: expected 2 cells, got 3"),
        (b"title\nhose\n", "parts.csv:2: name: expected this column"),
        (b'name\n"hose\n', "cannot be read"),
        (b"name\n\xff\n", "cannot be read"),
    ],
)
def test_a_damaged_table_is_told_with_its_place(
    write: Write, content: bytes, message: str
) -> None:
    write(content)
    with pytest.raises(BrokenCatalogue) as caught:
        read_table("parts.csv", names)
    assert message in str(caught.value)
    assert "\n" not in str(caught.value)


@pytest.mark.parametrize(
    ("read", "cell", "message"),
    [
        (lambda row: row.number("cell"), "-1", "expected a number 0 or more"),
        (lambda row: row.number("cell"), "1e3", "expected a number 0 or more"),
        (lambda row: row.number("cell", most=1), "1.01", "expected a number 0-1"),
        (lambda row: row.whole("cell"), "2.5", "expected a whole number"),
        (lambda row: row.member("cell", Severity), "5", "expected one of 1, 2, 3, 4"),
        (lambda row: row.members("cell", System), "fuel;air", 'got "air"'),
    ],
)
def test_a_cell_out_of_range_is_told(
    read: Callable[[Row], object], cell: str, message: str
) -> None:
    with pytest.raises(BrokenCatalogue) as caught:
        read(Row("parts.csv", 7, {"cell": cell}))
    assert str(caught.value).startswith("parts.csv:7: cell: ")
    assert message in str(caught.value)


def test_cells_are_read_exactly() -> None:
    row = Row("parts.csv", 2, {"share": "0.15", "life": "", "fits": "fuel;body"})
    assert row.number("share", most=1) == Fraction(3, 20)
    assert row.optional("life", row.whole) is None
    assert row.members("fits", System) == (System.FUEL, System.BODY)
