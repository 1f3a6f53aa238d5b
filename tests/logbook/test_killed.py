"""Whoever is killed while writing loses nothing that was confirmed."""

import shutil
import sqlite3
import time
from collections.abc import Iterator
from contextlib import closing
from multiprocessing import get_context
from pathlib import Path
from random import Random

import pytest

from partsplan.domain import Entry
from partsplan.errors import DamagedLogbook
from partsplan.logbook import FILE, append, read
from tests.logbook.appending import LONG, NOW, SHORT, append_for_ever, happening

FORKS = get_context("forkserver")
FORKS.set_forkserver_preload(["__main__", "tests.logbook.appending"])


def killed(path: Path, chance: Random) -> Iterator[int]:
    """Numbers that a process confirmed before it was killed at some moment."""
    ours, theirs = FORKS.Pipe(duplex=False)
    process = FORKS.Process(target=append_for_ever, args=(path, theirs))
    process.start()
    theirs.close()
    with ours:
        if chance.random() < 0.9:  # else it may not even have made the file
            ours.poll(60)
        time.sleep(chance.uniform(0, 0.03))
        process.kill()
        process.join()
        try:
            while True:
                yield from ours.recv()
        except EOFError:
            return


def copied(path: Path) -> tuple[Entry, ...] | None:
    """What a copy of the file alone holds; None if it is found to be torn."""
    copy = path.with_name("copy.sqlite")
    if path.exists():
        shutil.copyfile(path, copy)
    try:
        return read(copy)
    except DamagedLogbook:
        return None


def check_kills(path: Path, times: int) -> None:
    """Kill a writer again and again, and look at what is left each time."""
    chance = Random(1)
    journal = path.with_name(f"{FILE}-journal")
    confirmed: list[int] = []
    amid = 0
    for _ in range(times):
        confirmed += killed(path, chance)
        writing, copy = journal.exists(), copied(path)
        amid += writing
        entries = read(path)
        # Some may be there unconfirmed: the writer was killed before it said so.
        assert [entry.number for entry in entries] == list(range(1, len(entries) + 1))
        assert [entry.what.text for entry in entries] == [LONG, SHORT] * (
            len(entries) // 2
        )
        assert confirmed == sorted(set(confirmed))
        assert not confirmed or confirmed[-1] <= len(entries)
        if writing:  # the copy lacks the journal, so it may be torn, but never wrong
            assert copy is None or copy[: len(entries)] == entries
        else:
            assert copy == entries
    assert confirmed
    assert amid, "no kill came amid a write, so this has tested little"
    with closing(sqlite3.connect(path)) as connection:
        assert connection.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
    print(f"{times} kills, {amid} of them amid a write; {len(confirmed)} confirmed")


def test_forty_kills_lose_nothing_that_was_confirmed(tmp_path: Path) -> None:
    check_kills(tmp_path / FILE, 40)


def test_a_kill_while_the_file_is_made_leaves_none_or_a_sound_one(
    tmp_path: Path,
) -> None:
    chance = Random(2)
    made = []
    for turn in range(20):
        path = tmp_path / str(turn) / FILE
        path.parent.mkdir()
        _, theirs = FORKS.Pipe(duplex=False)
        process = FORKS.Process(target=append_for_ever, args=(path, theirs))
        process.start()
        time.sleep(chance.uniform(0, 0.02))
        process.kill()
        process.join()
        made.append(path.exists())
        assert len(read(path)) % 2 == 0
        assert append(path, [happening(SHORT)], now=NOW)
    assert not all(made), "no kill came early, so this has tested little"


@pytest.mark.slow
def test_a_thousand_kills_lose_nothing_that_was_confirmed(tmp_path: Path) -> None:
    check_kills(tmp_path / FILE, 1000)
