"""Files as text: the outer checks that spare every reader a traceback."""

import codecs
import stat
from pathlib import Path

from partsplan.errors import Problem

MAX_FILE_BYTES = 32 * 1024 * 1024
"""Longest file that is read; a garage of 20,000 faults takes a third of it."""

_MIB = 1024 * 1024
_UTF_16 = (codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)


def read_text(path: Path) -> str | Problem:
    """The text of a UTF-8 file, every line ended by ``\\n``; or what is wrong with it.

    A byte order mark is dropped; CR LF and CR count as line ends.
    """
    content = read_bytes(path)
    if isinstance(content, str):
        return Problem(path.name, 0, "", content)
    if content.startswith(_UTF_16):
        return Problem(
            path.name, 1, "", "expected UTF-8 text, got UTF-16; save as UTF-8"
        )
    if (at := content.find(0)) >= 0:
        message = "expected UTF-8 text, got a NUL byte; save as UTF-8"
        return Problem(path.name, _line(content, at), "", message)
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        # utf-8-sig counts from behind the mark, error.object says what it counted in.
        bad = error.object[error.start]
        message = f"expected UTF-8 text, got byte 0x{bad:02x}; save as UTF-8"
        return Problem(path.name, _line(error.object, error.start), "", message)
    return text.replace("\r\n", "\n").replace("\r", "\n")


def read_bytes(path: Path) -> bytes | str:
    """The content of a plain file, or why there is none."""
    try:
        found = path.stat()
        if stat.S_ISDIR(found.st_mode):
            return "expected a file, got a folder"
        if not stat.S_ISREG(found.st_mode):
            return "expected a plain file"
        if found.st_size > MAX_FILE_BYTES:
            got = f"{found.st_size / _MIB:.1f} MiB"
            return f"expected at most {MAX_FILE_BYTES // _MIB} MiB, got {got}"
        with path.open("rb") as file:
            return file.read(MAX_FILE_BYTES)
    except FileNotFoundError:
        return "no such file"
    except OSError as error:
        return f"cannot be read: {error.strerror or error}"


def _line(content: bytes, at: int) -> int:
    before = content[:at].replace(b"\r\n", b"\n")
    return 1 + before.count(b"\n") + before.count(b"\r")
