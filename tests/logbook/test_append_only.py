"""Nothing that is in the file can be changed, whoever asks."""

import sqlite3
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest

from partsplan.domain import Month
from partsplan.logbook import FILE, append, keep_plan, kept_plans, read
from tests.logbook.appending import NOW, happening


@pytest.fixture
def path(tmp_path: Path) -> Path:
    path = tmp_path / FILE
    append(path, map(happening, ["one", "two", "three"]), now=NOW)
    keep_plan(path, "{}", start=Month(2027, 3), now=NOW)
    keep_plan(path, "[]", start=Month(2027, 4), now=NOW)
    return path


@pytest.fixture(params=["recursive_triggers = OFF", "recursive_triggers = ON"])
def stranger(
    path: Path, request: pytest.FixtureRequest
) -> Iterator[sqlite3.Connection]:
    """A connection that anybody may open."""
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        connection.execute(f"PRAGMA {request.param}")
        yield connection


def same_again(table: str, number: str) -> str:
    """SQL of a query for the first row, with another number."""
    columns = {
        "entries": "written, kind, day, subject, amount, deposit, hours, cause, found, "
        "reading, who, text, anyway, batch, seal",
        "plans": "written, start, text, seal",
    }[table]
    return (
        f"(number, {columns}) SELECT {number}, {columns} FROM {table} WHERE number = 1"
    )


@pytest.mark.parametrize("table", ["entries", "plans"])
@pytest.mark.parametrize(
    ("command", "said"),
    [
        ("UPDATE {table} SET text = 'x'", "nothing is ever changed"),
        ("UPDATE {table} SET number = 9 WHERE number = 1", "nothing is ever changed"),
        ("UPDATE OR REPLACE {table} SET number = 1", "nothing is ever changed"),
        ("DELETE FROM {table}", "nothing is ever deleted"),
        ("DELETE FROM {table} WHERE number = 2", "nothing is ever deleted"),
        ("INSERT OR REPLACE INTO {table} {1}", "expected the next number"),
        ("REPLACE INTO {table} {2}", "expected the next number"),
        ("INSERT OR IGNORE INTO {table} {2}", "expected the next number"),
        ("INSERT INTO {table} {0}", "expected the next number"),
        ("INSERT INTO {table} {9}", "expected the next number"),
        ("INSERT INTO {table} {NULL}", "expected the next number"),
        (
            "INSERT INTO {table} {1} ON CONFLICT DO UPDATE SET text = 'x'",
            "expected the next number",
        ),
    ],
)
def test_a_stranger_cannot_change_a_row(
    path: Path, stranger: sqlite3.Connection, table: str, command: str, said: str
) -> None:
    before = read(path), kept_plans(path)
    for number in ("0", "1", "2", "9", "NULL"):
        command = command.replace(f"{{{number}}}", same_again(table, number))
    with pytest.raises(sqlite3.IntegrityError, match=said):
        stranger.execute(command.replace("{table}", table))
    assert (read(path), kept_plans(path)) == before


def test_a_row_of_the_wrong_type_is_refused(stranger: sqlite3.Connection) -> None:
    with pytest.raises(sqlite3.IntegrityError, match="cannot store TEXT value"):
        stranger.execute(
            "INSERT INTO plans VALUES (3, '2027', '2027-03', 'x', 'no number')"
        )
