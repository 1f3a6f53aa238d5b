"""What keeps the logbook from being written is told, and nothing is lost."""

import os
import resource
import signal
import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path
from typing import Any

import pytest

from partsplan.domain import Entry
from partsplan.errors import LogbookUnavailable
from partsplan.logbook import FILE, append, opening, read
from tests.logbook.appending import LONG, NOW, happening


@pytest.fixture
def path(tmp_path: Path) -> Path:
    path = tmp_path / FILE
    append(path, [happening("one")], now=NOW)
    return path


def refusal(path: Path) -> str:
    """What is said when a big entry is written; the file's entries stay as they are."""
    before = read(path)
    with pytest.raises(LogbookUnavailable) as caught:
        append(path, [happening("fits"), happening(LONG * 100)], now=NOW)
    assert read(path) == before
    return str(caught.value)


def check_that_it_can_be_written(path: Path) -> None:
    before = read(path)
    later = append(path, [happening("later")], now=NOW)
    assert read(path) == (*before, *later)


def connecting(
    monkeypatch: pytest.MonkeyPatch, *, pragma: str = "", mode: str = ""
) -> None:
    """Lets every connection that is opened to write have a limit."""
    connect = sqlite3.connect

    def limited(where: str, **options: Any) -> sqlite3.Connection:
        limited_where = where.replace("mode=rw", mode or "mode=rw")
        connection: sqlite3.Connection = connect(limited_where, **options)
        connection.execute(pragma)
        return connection

    monkeypatch.setattr(sqlite3, "connect", limited)


def test_a_full_disk(path: Path) -> None:
    with pytest.MonkeyPatch.context() as patch:
        connecting(patch, pragma="PRAGMA max_page_count = 8")
        assert refusal(path) == f"{path}: the disk is full; nothing was written"
    check_that_it_can_be_written(path)


@contextmanager
def files_of_at_most(size: int) -> Iterator[None]:
    """The system refuses to write more into any file. [bytes]"""
    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
    before = signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
    resource.setrlimit(resource.RLIMIT_FSIZE, (size, hard))
    try:
        yield
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))
        signal.signal(signal.SIGXFSZ, before)


def test_a_disk_that_refuses_amid_a_write(path: Path) -> None:
    with files_of_at_most(path.stat().st_size + 2 * 4096):
        assert "the disk reports an error; nothing was written" in refusal(path)
    check_that_it_can_be_written(path)


def test_a_disk_that_refuses_a_new_file(tmp_path: Path) -> None:
    with files_of_at_most(4096), pytest.raises(LogbookUnavailable):
        append(tmp_path / FILE, [happening("one")], now=NOW)
    assert list(tmp_path.iterdir()) == []


def test_a_file_that_can_only_be_read(path: Path) -> None:
    # Permissions do not bind every user, so the connection is made one to read.
    with pytest.MonkeyPatch.context() as patch:
        connecting(patch, mode="mode=ro")
        assert refusal(path) == f"{path}: it can only be read here; nothing was written"
    check_that_it_can_be_written(path)


@pytest.mark.skipif(os.geteuid() == 0, reason="permissions do not bind root")
def test_a_folder_that_can_only_be_read(path: Path) -> None:
    path.parent.chmod(0o500)
    try:
        assert "it can only be read here; nothing was written" in refusal(path)
        with pytest.raises(LogbookUnavailable, match="Permission denied"):
            append(path.with_name("new.sqlite"), [happening("one")], now=NOW)
    finally:
        path.parent.chmod(0o700)
    check_that_it_can_be_written(path)


def test_a_folder_that_is_not_there(tmp_path: Path) -> None:
    with pytest.raises(LogbookUnavailable, match="No such file or directory"):
        append(tmp_path / "gone" / FILE, [happening("one")], now=NOW)


def test_a_folder_in_the_place_of_the_file(tmp_path: Path) -> None:
    (tmp_path / FILE).mkdir()
    with pytest.raises(LogbookUnavailable, match="cannot be opened"):
        read(tmp_path / FILE)


@pytest.mark.parametrize("command", ["BEGIN IMMEDIATE", "BEGIN EXCLUSIVE"])
def test_a_file_that_somebody_else_keeps(
    path: Path, monkeypatch: pytest.MonkeyPatch, command: str
) -> None:
    monkeypatch.setattr(opening, "TIMEOUT", 0.05)
    with closing(sqlite3.connect(path, isolation_level=None)) as other:
        other.execute(command)
        with pytest.raises(LogbookUnavailable) as caught:
            append(path, [happening("two")], now=NOW)
    assert str(caught.value) == (
        f"{path}: another program has kept it busy for 5 s; nothing was written"
    )
    check_that_it_can_be_written(path)


def test_a_reader_that_does_not_end(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(opening, "TIMEOUT", 0.05)
    with closing(sqlite3.connect(path, isolation_level=None)) as other:
        other.execute("BEGIN")
        other.execute("SELECT * FROM entries").fetchall()
        assert "busy for 5 s" in refusal(path)
    check_that_it_can_be_written(path)


def test_a_journal_of_another_file_is_not_mixed_into_a_new_one(tmp_path: Path) -> None:
    journal = tmp_path / f"{FILE}-journal"
    journal.write_bytes(b"left behind")
    with pytest.raises(LogbookUnavailable, match=f"move {journal.name} away first"):
        append(tmp_path / FILE, [happening("one")], now=NOW)
    assert list(tmp_path.iterdir()) == [journal]


def test_a_file_system_without_links(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(source: Path, target: Path) -> None:
        raise PermissionError(1, "Operation not permitted", str(source))

    monkeypatch.setattr(os, "link", refuse)
    written: tuple[Entry, ...] = append(tmp_path / FILE, [happening("one")], now=NOW)
    assert read(tmp_path / FILE) == written
    assert not opening.create(tmp_path / FILE, lambda connection: None)
    assert read(tmp_path / FILE) == written
    assert [file.name for file in tmp_path.iterdir()] == [FILE]
