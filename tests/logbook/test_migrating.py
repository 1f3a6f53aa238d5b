"""Files of earlier versions are brought up to date; later ones are left alone."""

import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from partsplan.domain import Month
from partsplan.errors import DamagedLogbook, LogbookUnavailable
from partsplan.logbook import FILE, append, keep_plan, kept_plans, read, schema
from tests.logbook.appending import NOW, happening


def first_version(path: Path) -> bytes:
    """A file with two entries as the first version wrote it."""
    append(path.with_name("now.sqlite"), map(happening, ["one", "two"]), now=NOW)
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        connection.execute("BEGIN")
        schema.migrate(connection, to=1)
        connection.execute("COMMIT")
        connection.execute("ATTACH ? AS now", (str(path.with_name("now.sqlite")),))
        connection.execute("INSERT INTO main.entries SELECT * FROM now.entries")
    path.with_name("now.sqlite").unlink()
    return path.read_bytes()


def version(path: Path) -> int:
    with closing(sqlite3.connect(path)) as connection:
        return schema.version(connection)


def test_the_first_version_is_read_and_brought_up_to_date(tmp_path: Path) -> None:
    path = tmp_path / FILE
    first_version(path)
    assert version(path) == 1
    assert [entry.what.text for entry in read(path)] == ["one", "two"]
    assert version(path) == schema.VERSION == 2
    assert kept_plans(path) == ()


def test_the_first_version_is_written_to(tmp_path: Path) -> None:
    path = tmp_path / FILE
    first_version(path)
    assert keep_plan(path, "{}", start=Month(2027, 3), now=NOW).number == 1
    assert append(path, [happening("three")], now=NOW)[0].number == 3
    assert [entry.what.text for entry in read(path)] == ["one", "two", "three"]


def test_a_damaged_file_of_the_first_version_is_left_as_it_is(tmp_path: Path) -> None:
    path = tmp_path / FILE
    content = bytearray(first_version(path))
    # The page of rows says that it has seven.
    content[-4096 + 3 : -4096 + 5] = b"\0\7"
    path.write_bytes(content)
    with pytest.raises(DamagedLogbook):
        read(path)
    assert path.read_bytes() == content


def test_a_migration_that_fails_changes_nothing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / FILE
    content = first_version(path)
    first, second = schema.MIGRATIONS
    schema.expected_definitions(1)
    monkeypatch.setattr(schema, "MIGRATIONS", (first, (*second, "CREATE nonsense")))
    with pytest.raises(DamagedLogbook, match="syntax error"):
        read(path)
    assert path.read_bytes() == content


def test_a_file_of_a_later_version_is_left_as_it_is(tmp_path: Path) -> None:
    path = tmp_path / FILE
    append(path, [happening("one")], now=NOW)
    with closing(sqlite3.connect(path)) as connection:
        connection.execute("PRAGMA user_version = 3")
    content = path.read_bytes()
    said = "written by a newer partsplan .format 3, this one knows 2."
    with pytest.raises(LogbookUnavailable, match=said):
        read(path)
    with pytest.raises(LogbookUnavailable, match=said):
        append(path, [happening("two")], now=NOW)
    assert path.read_bytes() == content
