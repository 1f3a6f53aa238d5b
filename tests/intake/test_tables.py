"""CSV files as people's programs write them, and as they should not."""

import os
from collections.abc import Callable
from pathlib import Path

import pytest

from partsplan.errors import InvalidGarage
from partsplan.intake import read_garage
from partsplan.sheets import files
from tests.intake.plain_garage import PLAIN, problems, save, warnings

UTF8_MARK = b"\xef\xbb\xbf"
FAULTS = PLAIN["faults.csv"]
OPTIONS = PLAIN["options.csv"]


def separated(text: str, separator: str) -> str:
    """A table without commas inside its cells, with another separator."""
    return "\n".join(
        separator.join(f'"{cell}"' for cell in line.split(","))
        for line in text.split("\n")
        if line
    )


def reordered(text: str) -> str:
    """The columns of a table the other way round."""
    return "\n".join(",".join(line.split(",")[::-1]) for line in text.split("\n"))


def spaced(text: str) -> str:
    """Spaces around every cell, capitals in the header, blank rows between the rows."""
    header, *rows = (
        " , ".join(f' "{cell}"' for cell in line.split(","))
        for line in text.split("\n")
        if line
    )
    return "\n\n ,,\n\t\n".join([header.upper(), *rows])


@pytest.mark.parametrize(
    "change",
    [
        lambda text: UTF8_MARK + text.encode(),
        lambda text: text.replace("\n", "\r\n").encode(),
        lambda text: text.replace("\n", "\r").encode(),
        lambda text: UTF8_MARK + separated(text, ";").replace("\n", "\r\n").encode(),
        lambda text: separated(text, "\t").encode(),
        lambda text: separated(text, ",").encode(),
        lambda text: reordered(text).encode(),
        lambda text: spaced(text).encode(),
        lambda text: (
            text.replace(",yes,", ",YES,").replace("brakes", "Brakes").encode()
        ),
        lambda text: text.rstrip("\n").encode(),
    ],
    ids=[
        "byte order mark",
        "CR LF",
        "CR",
        "semicolons, CR LF and a mark",
        "tabs",
        "quotes",
        "other order",
        "spaces, capitals and blank rows",
        "capitals in words",
        "no last line end",
    ],
)
def test_every_way_to_write_a_table_reads_the_same(
    tmp_path: Path, change: Callable[[str], bytes]
) -> None:
    plain = read_garage(save(tmp_path, PLAIN))
    for name in ("faults.csv", "options.csv"):
        (tmp_path / name).write_bytes(change(PLAIN[name]))
    assert read_garage(tmp_path) == plain


def test_lines_are_counted_through_blank_rows_and_cells_of_many_lines(
    tmp_path: Path,
) -> None:
    tools = '\n\nid,name\n\nt1,"a ""press"""\n\n,\n"t1","b"\n'
    vehicles = 'id,name,notes\nv1,x,"one\n\n\nfour"\nv2,y,\nv2,z,\n'
    assert problems(
        tmp_path, {**PLAIN, "tools.csv": tools, "vehicles.csv": vehicles}
    ) == [
        'tools.csv:8: id: expected each id once, got "t1" again (first in line 5)',
        'vehicles.csv:7: id: expected each id once, got "v2" again (first in line 6)',
    ]


def test_text_that_looks_like_a_formula_is_read_behind_a_quote(tmp_path: Path) -> None:
    tools = "id,name,price\nt1,'=A1,39\nt2,''+x,\nt3,'plain,\nt4,+5,\nt5,'-,\n"
    garage = read_garage(save(tmp_path, {**PLAIN, "tools.csv": tools}))
    assert [tool.name for tool in garage.tools] == ["=A1", "'+x", "'plain", "+5", "'-"]


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("", ": empty; expected a header like id, hours, title, ..."),
        ("\n , ,\n\n", ": empty; expected a header like id, hours, title, ..."),
        ("id,title\na1,x\n", ":1: hours: needed column is missing"),
        ("id,hour\na1,1\n", ':1: hours: needed column is missing; is it "hour"?'),
        ("id,hours,\na1,1,\n", ":1: a column has no name"),
        (
            "id,hours,Hours\na1,1,1\n",
            ':1: expected each column once, got 2 named "hours"',
        ),
        ("id,hours,title\na1,1\n", ":2: expected 3 cells, got 2"),
        (
            "id,hours\n\na1,1,x,y\n",
            ":3: expected 2 cells, got 4; a cell with a separator in it needs quotes",
        ),
        ('id,hours\na1,1\na2,"1\na3,1\n', ":3: a quoted cell of this row never ends"),
        ('id,"hours\na1,1\n', ":1: a quoted cell of this row never ends"),
        (
            f"id,hours,title\na1,1,{'x' * 140_000}\n",
            ":2: expected cells of at most 131,072 characters; a missing quote?",
        ),
    ],
)
def test_a_broken_table_is_told_in_one_line(
    tmp_path: Path, text: str, message: str
) -> None:
    found = problems(tmp_path, {**PLAIN, "access.csv": text})
    assert found == [f"access.csv{message}"]


def test_columns_that_nothing_uses_are_warned_of(tmp_path: Path) -> None:
    files = {**PLAIN, "access.csv": "id,hours,titel,colour\na1,1,x,=y\n"}
    assert warnings(tmp_path, files) == (
        'access.csv:1: column "colour" is not used',
        'access.csv:1: column "titel" is not used; did you mean "title"?',
    )


@pytest.mark.parametrize(
    ("content", "message"),
    [
        (FAULTS.encode("utf-16"), ":1: expected UTF-8 text, got UTF-16; save as UTF-8"),
        (
            FAULTS.encode("utf-16-be"),
            ":1: expected UTF-8 text, got a NUL byte; save as UTF-8",
        ),
        (
            FAULTS.replace("Rust", "Röst").encode("latin-1"),
            ":4: expected UTF-8 text, got byte 0xf6; save as UTF-8",
        ),
        (
            UTF8_MARK + FAULTS.replace("Rust", "Röst").encode("latin-1"),
            ":4: expected UTF-8 text, got byte 0xf6; save as UTF-8",
        ),
        (
            FAULTS.replace("Rust", "R\0st").replace("\n", "\r\n").encode(),
            ":4: expected UTF-8 text, got a NUL byte; save as UTF-8",
        ),
    ],
)
def test_what_is_no_utf_8_text_is_told_with_its_line(
    tmp_path: Path, content: bytes, message: str
) -> None:
    save(tmp_path, PLAIN)
    (tmp_path / "faults.csv").write_bytes(content)
    with pytest.raises(InvalidGarage) as caught:
        read_garage(tmp_path)
    assert str(caught.value) == f"faults.csv{message}"


def too_long(path: Path) -> None:
    with path.open("wb") as file:
        file.truncate(100 * 1024 * 1024)


def folder(path: Path) -> None:
    path.unlink()
    path.mkdir()


def circle(path: Path) -> None:
    path.unlink()
    path.symlink_to(path.name)


def pipe(path: Path) -> None:
    path.unlink()
    os.mkfifo(path)


@pytest.mark.parametrize(
    ("change", "message"),
    [
        (Path.unlink, "needed table is missing"),
        (
            lambda path: path.rename(path.with_name("Fault.csv")),
            'needed table is missing; is it "Fault.csv"?',
        ),
        (too_long, "expected at most 32 MiB, got 100.0 MiB"),
        (folder, "expected a file, got a folder"),
        (circle, "cannot be read: Too many levels of symbolic links"),
        (pipe, "expected a plain file"),
    ],
)
def test_what_is_no_file_is_told_in_one_line(
    tmp_path: Path, change: Callable[[Path], object], message: str
) -> None:
    change(save(tmp_path, PLAIN) / "faults.csv")
    with pytest.raises(InvalidGarage) as caught:
        read_garage(tmp_path)
    assert str(caught.value) == f"faults.csv: {message}"


def test_a_file_that_may_not_be_read_is_told_in_one_line(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    # Permissions do not bind every user, so the refusal is made up.
    def refuse(self: Path, mode: str) -> None:
        raise PermissionError(13, "Permission denied", str(self))

    save(tmp_path, PLAIN)
    monkeypatch.setattr(Path, "open", refuse)
    assert str(files.read_text(tmp_path / "faults.csv")) == (
        "faults.csv: cannot be read: Permission denied"
    )


def test_a_misnamed_table_that_may_be_left_out_is_warned_of(tmp_path: Path) -> None:
    left = {name: text for name, text in PLAIN.items() if name != "milestones.csv"}
    files = {**left, "milestone.csv": "id\n", "prices.csv": "id\n"}
    assert warnings(tmp_path, files) == (
        'milestone.csv: not read; did you mean "milestones.csv"?',
    )


@pytest.mark.parametrize(
    ("name", "message"),
    [
        ("nowhere", "no such folder"),
        ("faults.csv", "expected an .xlsx workbook, got something else"),
        ("nowhere.xlsx", "nowhere.xlsx: no such file"),
        ("a\nb", "no such folder"),
        ("a\0b", "cannot be read: embedded null byte"),
    ],
)
def test_what_is_no_folder_is_told_in_one_line(
    tmp_path: Path, name: str, message: str
) -> None:
    save(tmp_path, PLAIN)
    with pytest.raises(InvalidGarage) as caught:
        read_garage(tmp_path / name)
    assert str(caught.value).endswith(message)
    assert str(caught.value).isprintable()
