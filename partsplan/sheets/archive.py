"""The zip file that a workbook is: what speaks against opening it.

Sizes are looked at before anything is unpacked; ``zipfile`` unpacks no more of a part
than its size in the directory says.
"""

import re
from collections.abc import Iterator
from io import BytesIO
from zipfile import BadZipFile, ZipFile, ZipInfo
from zlib import error as ZlibError

MIB = 1024 * 1024

MOST_BYTES = 128 * MIB
"""Most that all parts may unpack to; a garage of 20,000 faults takes 80 MB."""

MOST_RATIO = 100
"""Most that a part may shrink by; sheets of long tables shrink by 10 to 12."""

SMALL = MIB
"""A part up to this size may shrink by any ratio. [bytes]"""

MOST_PARTS = 2_000

_OLE = bytes.fromhex("d0cf11e0a1b11ae1")
_ENCRYPTED_PACKAGE = "EncryptedPackage".encode("utf-16-le")
_ENCRYPTED = 0x1  # flag of a zip entry
_TYPES = "[Content_Types].xml"
_XML = (".xml", ".rels")
_STRICT = re.compile(rb"<(?:\w+:)?workbook\b[^>]*purl\.oclc\.org/ooxml")

_EXPECTED = "expected an .xlsx workbook"
_SAVE = "save it as .xlsx"
_DAMAGED = f"{_EXPECTED}, got a damaged file, or none"


def objection(content: bytes) -> str:
    """Why these bytes are no workbook to be opened; "" if nothing is wrong."""
    if content.startswith(_OLE):
        if _ENCRYPTED_PACKAGE in content:
            return f"{_EXPECTED} without a password; save it without one"
        return f"{_EXPECTED}, got an old .xls, or none; {_SAVE}"
    if not content.startswith(b"PK"):
        return f"{_EXPECTED}, got something else"
    try:
        with ZipFile(BytesIO(content)) as archive:
            return next(_objections(archive), "")
    except (BadZipFile, ZlibError, EOFError, NotImplementedError, ValueError, OSError):
        return _DAMAGED


def _objections(archive: ZipFile) -> Iterator[str]:
    """Each check relies on those before it."""
    parts = archive.infolist()
    yield from _sizes(parts)
    names = {part.filename.lower() for part in parts}
    if any(part.flag_bits & _ENCRYPTED for part in parts):
        yield f"{_EXPECTED} without a password; save it without one"
    if "mimetype" in archive.namelist() and b"opendocument" in archive.read("mimetype"):
        yield f"{_EXPECTED}, got an OpenDocument file; {_SAVE}"
    if _TYPES.lower() not in names:
        yield _DAMAGED
    if "xl/workbook.bin" in names:
        yield f"{_EXPECTED}, got an .xlsb; {_SAVE}"
    if any(
        name.endswith("vbaproject.bin") or "/macrosheets/" in name for name in names
    ):
        yield f"holds macros, which are never run here; {_SAVE}, without macros"
    if any(name.startswith("xl/externallinks/") for name in names):
        yield "takes values from other files; break these links and save it"
    for part in parts:
        if part.filename.lower().endswith(_XML):
            yield from _xml(part.filename.lower(), archive.read(part))


def _sizes(parts: list[ZipInfo]) -> Iterator[str]:
    if len(parts) > MOST_PARTS:
        yield f"expected at most {MOST_PARTS:,} parts, got {len(parts):,}"
    total = sum(part.file_size for part in parts)
    if total > MOST_BYTES:
        yield (
            f"expected a workbook of at most {MOST_BYTES // MIB} MiB when unpacked, "
            f"got {total / MIB:,.0f} MiB"
        )
    for part in parts:
        if part.file_size > max(SMALL, MOST_RATIO * part.compress_size):
            yield f"a part unpacks to over {MOST_RATIO} times its size; not opened"


def _xml(name: str, content: bytes) -> Iterator[str]:
    if b"<!DOCTYPE" in content:
        yield "holds a document type, which no workbook needs; not opened"
    if name == _TYPES.lower() and b"macroEnabled" in content:
        yield f"holds macros, which are never run here; {_SAVE}, without macros"
    if name == "xl/workbook.xml" and _STRICT.search(content):
        yield f"{_EXPECTED}, got a Strict Open XML one; save it as a plain one"
