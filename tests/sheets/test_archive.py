"""Files that are no workbook to be opened: one clear line, and nothing is unpacked."""

import io
from collections.abc import Callable
from pathlib import Path
from zipfile import ZIP_DEFLATED, ZipFile

import pytest

from partsplan.sheets import archive
from partsplan.sheets.workbooks import read_workbook
from tests.intake.plain_book import book, sheets

OLE = bytes.fromhex("d0cf11e0a1b11ae1")
DAMAGED = "expected an .xlsx workbook, got a damaged file, or none"
MACROS = "holds macros, which are never run here; save it as .xlsx, without macros"


def whole() -> bytes:
    file = io.BytesIO()
    book(sheets()).save(file)
    return file.getvalue()


def with_part(name: str, content: bytes) -> bytes:
    """A workbook with one more part, or another one of that name."""
    file = io.BytesIO()
    with (
        ZipFile(io.BytesIO(whole())) as old,
        ZipFile(file, "w", ZIP_DEFLATED) as new,
    ):
        for one in old.namelist():
            if one != name:
                new.writestr(one, old.read(one))
        new.writestr(name, content)
    return file.getvalue()


def with_text(name: str, old: bytes, new: bytes) -> bytes:
    """A workbook with a text of one part replaced."""
    with ZipFile(io.BytesIO(whole())) as found:
        content = found.read(name)
    assert old in content
    return with_part(name, content.replace(old, new))


def said(folder: Path, content: bytes) -> str:
    """What is said of such a file."""
    (folder / "my.xlsx").write_bytes(content)
    found = read_workbook(folder / "my.xlsx", lambda _: True)
    assert not isinstance(found, tuple), "it was read"
    assert str(found).startswith("my.xlsx: ")
    assert str(found).isprintable()
    return str(found).removeprefix("my.xlsx: ")


@pytest.mark.parametrize(
    ("content", "message"),
    [
        (b"", "expected an .xlsx workbook, got something else"),
        (b"id,name\nt1,Press\n", "expected an .xlsx workbook, got something else"),
        (b"PK\x03\x04 not a zip", DAMAGED),
        (
            OLE + bytes(600),
            "expected an .xlsx workbook, got an old .xls, or none; save it as .xlsx",
        ),
        (
            OLE + bytes(99) + "EncryptedPackage".encode("utf-16-le"),
            "expected an .xlsx workbook without a password; save it without one",
        ),
    ],
)
def test_what_is_no_workbook_at_all(
    tmp_path: Path, content: bytes, message: str
) -> None:
    assert said(tmp_path, content) == message


MADE: dict[str, tuple[Callable[[], bytes], str]] = {
    "cut off": (lambda: whole()[:-400], DAMAGED),
    "macros": (lambda: with_part("xl/vbaProject.bin", b"x"), MACROS),
    "old macros": (lambda: with_part("xl/macrosheets/sheet1.xml", b"<x/>"), MACROS),
    "type of macros": (
        lambda: with_text(
            "[Content_Types].xml",
            b"application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main",
            b"application/vnd.ms-excel.sheet.macroEnabled.main",
        ),
        MACROS,
    ),
    "links": (
        lambda: with_part("xl/externalLinks/externalLink1.xml", b"<x/>"),
        "takes values from other files; break these links and save it",
    ),
    "binary": (
        lambda: with_part("xl/workbook.bin", b"x"),
        "expected an .xlsx workbook, got an .xlsb; save it as .xlsx",
    ),
    "OpenDocument": (
        lambda: with_part(
            "mimetype", b"application/vnd.oasis.opendocument.spreadsheet"
        ),
        "expected an .xlsx workbook, got an OpenDocument file; save it as .xlsx",
    ),
    "document type": (
        lambda: with_text(
            "xl/styles.xml",
            b"<styleSheet",
            b'<!DOCTYPE x [<!ENTITY a "a">]><styleSheet',
        ),
        "holds a document type, which no workbook needs; not opened",
    ),
    "strict": (
        lambda: with_text(
            "xl/workbook.xml",
            b"http://schemas.openxmlformats.org/spreadsheetml/2006/main",
            b"http://purl.oclc.org/ooxml/spreadsheetml/main",
        ),
        "expected an .xlsx workbook, got a Strict Open XML one; save it as a plain one",
    ),
    "another zip": (lambda: zipped({"readme.txt": b"hello"}), DAMAGED),
    "bad XML": (
        lambda: with_text("xl/workbook.xml", b"<sheets>", b"<sheets"),
        "expected an .xlsx workbook, got a damaged one; open and save it in a "
        "spreadsheet program",
    ),
}


def zipped(parts: dict[str, bytes]) -> bytes:
    file = io.BytesIO()
    with ZipFile(file, "w", ZIP_DEFLATED) as new:
        for name, content in parts.items():
            new.writestr(name, content)
    return file.getvalue()


@pytest.mark.parametrize("case", MADE)
def test_a_workbook_that_is_not_opened(tmp_path: Path, case: str) -> None:
    made, message = MADE[case]
    assert said(tmp_path, made()) == message


def test_a_part_that_unpacks_to_a_hundred_times_its_size(tmp_path: Path) -> None:
    bomb = with_part("xl/media/bomb.xml", bytes(20 * archive.MIB))
    assert len(bomb) < archive.MIB
    expected = "a part unpacks to over 100 times its size; not opened"
    assert said(tmp_path, bomb) == expected


def test_more_than_is_ever_unpacked(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(archive, "MOST_BYTES", 2048)
    assert said(tmp_path, whole()).startswith(
        "expected a workbook of at most 0 MiB when unpacked, got "
    )


def test_more_parts_than_a_workbook_has(tmp_path: Path) -> None:
    parts = {f"{number}.xml": b"" for number in range(archive.MOST_PARTS + 1)}
    assert said(tmp_path, zipped(parts)) == "expected at most 2,000 parts, got 2,001"


def test_a_size_that_lies_unpacks_no_more_than_it_says(tmp_path: Path) -> None:
    bomb = zipped({"[Content_Types].xml": bytes(20 * archive.MIB)})
    size = (20 * archive.MIB).to_bytes(4, "little")
    assert said(tmp_path, bomb.replace(size, (1000).to_bytes(4, "little"))) == DAMAGED


def test_a_password_on_its_parts(tmp_path: Path) -> None:
    content = bytearray(whole())
    for mark, flags in ((b"PK\x03\x04", 6), (b"PK\x01\x02", 8)):
        at = content.find(mark)
        while at >= 0:
            content[at + flags] |= 1
            at = content.find(mark, at + 1)
    assert said(tmp_path, bytes(content)) == (
        "expected an .xlsx workbook without a password; save it without one"
    )


def test_a_folder_is_no_workbook(tmp_path: Path) -> None:
    found = read_workbook(tmp_path, lambda _: True)
    assert str(found) == f"{tmp_path.name}: expected a file, got a folder"
