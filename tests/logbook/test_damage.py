"""A damaged file is recognised and left as it is."""

import sqlite3
from collections.abc import Callable
from contextlib import closing
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from partsplan.domain import Month
from partsplan.errors import DamagedLogbook, LogbookUnavailable
from partsplan.logbook import FILE, append, keep_plan, kept_plans, read
from tests.logbook.appending import LONG, NOW, happening

NEWER = range(60, 64)
"""Where a SQLite file has its version: a higher one is taken for a newer partsplan."""


def made() -> bytes:
    """A sound file of several pages."""
    with TemporaryDirectory() as folder:
        path = Path(folder) / FILE
        texts = [f"entry {number}" for number in range(200)]
        append(path, map(happening, [*texts, LONG]), now=NOW)
        keep_plan(path, '{"schema": 1}', start=Month(2027, 3), now=NOW)
        return path.read_bytes()


SOUND = made()


def reads(content: bytes) -> object:
    """What a file of this content is read as; it and its folder stay as they are."""
    with TemporaryDirectory() as folder:
        path = Path(folder) / FILE
        path.write_bytes(content)
        try:
            return read(path), kept_plans(path)
        finally:
            assert path.read_bytes() == content
            assert [file.name for file in path.parent.iterdir()] == [FILE]


ENTRIES = reads(SOUND)


@settings(max_examples=300)
@example(SOUND.index(b"plans_not_changed"), 0x80)  # what SQLite says is no text then
@given(st.integers(0, len(SOUND) - 1), st.integers(0, 255))
def test_one_wrong_byte_is_recognised_or_does_not_matter(place: int, byte: int) -> None:
    content = bytearray(SOUND)
    content[place] = byte
    check(bytes(content), newer=place in NEWER)


@settings(max_examples=100)
@given(
    st.integers(0, len(SOUND) - 1),
    st.binary(min_size=1, max_size=600),
    st.integers(0, 4096),
)
def test_bytes_lost_or_written_over_are_recognised(
    place: int, instead: bytes, lost: int
) -> None:
    content = SOUND[:place] + instead + SOUND[place + lost :]
    check(content, newer=place < NEWER.stop)


@settings(max_examples=50)
@given(st.integers(0, len(SOUND) - 1))
def test_a_truncated_file_is_recognised_or_nothing_is_lost(length: int) -> None:
    check(SOUND[:length])


def test_a_file_that_asks_for_a_second_file_gets_none() -> None:
    content = bytearray(SOUND)
    content[19] = 2  # readers shall look for a write-ahead log
    content[SOUND.index(b"plans_not_changed")] = 0x80
    with pytest.raises(DamagedLogbook):
        reads(bytes(content))


def check(content: bytes, *, newer: bool = False) -> None:
    """It holds what was written, or is said to be damaged; or newer than this."""
    try:
        assert reads(content) == ENTRIES
    except DamagedLogbook:
        pass
    except LogbookUnavailable:
        assert newer


def test_the_message_names_the_file_and_the_way_back(tmp_path: Path) -> None:
    path = tmp_path / FILE
    path.write_bytes(b"no logbook at all, just some text")
    with pytest.raises(DamagedLogbook) as caught:
        read(path)
    assert str(caught.value) == (
        f"{path}: damaged (file is not a database), and left as it is; move it away "
        "and make it anew from your last export: partsplan restore GARAGE EXPORT.json"
    )


def add_plan(path: Path) -> object:
    return keep_plan(path, "{}", start=Month(2027, 5), now=NOW)


def altered(path: Path, command: str) -> bytes:
    """The sound file after somebody has been at it who knows SQL."""
    path.write_bytes(SOUND)
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        connection.execute(command)
    return path.read_bytes()


@pytest.mark.parametrize(
    ("command", "said"),
    [
        ("DROP TRIGGER entries_not_changed", "tables or triggers were changed"),
        ("DROP TABLE plans", "tables or triggers were changed"),
        ("CREATE TABLE more (x)", "tables or triggers were changed"),
        ("PRAGMA application_id = 1", "not a logbook of partsplan"),
        ("PRAGMA user_version = 1", "tables or triggers were changed"),
        ("PRAGMA user_version = 0", "its format is 0"),
        ("PRAGMA user_version = -1", "its format is -1"),
        ("PRAGMA journal_mode = WAL", "its journal mode is wal"),
        (
            "INSERT INTO plans VALUES (2, '2027-03-01', '2027-04', '{}', 0)",
            "plans: 2 is not what was written",
        ),
    ],
)
@pytest.mark.parametrize("use", [kept_plans, add_plan], ids=["read", "write"])
def test_a_file_that_was_tampered_with_is_recognised(
    tmp_path: Path, command: str, said: str, use: Callable[[Path], object]
) -> None:
    path = tmp_path / FILE
    content = altered(path, command)
    with pytest.raises(DamagedLogbook, match=said):
        use(path)
    assert path.read_bytes() == content
    assert [file.name for file in tmp_path.iterdir()] == [FILE]


@pytest.mark.parametrize(
    "command",
    [
        "DELETE FROM entries WHERE number = 7",
        "DELETE FROM entries WHERE number = 1",
        "UPDATE entries SET amount = 1 WHERE number = 7",
        "UPDATE entries SET day = 'some day' WHERE number = 7",
        "UPDATE entries SET kind = 'lent' WHERE number = 201",
    ],
)
def test_rows_that_were_changed_are_recognised(tmp_path: Path, command: str) -> None:
    path = tmp_path / FILE
    triggers = (
        "SELECT name, sql FROM sqlite_schema WHERE type = 'trigger' "
        "AND name LIKE 'entries%'"
    )
    path.write_bytes(SOUND)
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        connection.execute("PRAGMA ignore_check_constraints = ON")
        found = connection.execute(triggers).fetchall()
        for name, _ in found:
            connection.execute(f"DROP TRIGGER {name}")
        connection.execute(command)
        for _, sql in found:
            connection.execute(sql)
    with pytest.raises(DamagedLogbook):
        read(path)


def test_an_empty_file_has_lost_everything(tmp_path: Path) -> None:
    (tmp_path / FILE).touch()
    with pytest.raises(DamagedLogbook):
        read(tmp_path / FILE)
    with pytest.raises(DamagedLogbook):
        append(tmp_path / FILE, [happening("one")], now=NOW)
    assert (tmp_path / FILE).read_bytes() == b""
