"""Processes that write at the same time lose nothing."""

from collections import Counter
from multiprocessing import get_context
from pathlib import Path

from partsplan.logbook import FILE, read
from tests.logbook.appending import append_some

FORKS = get_context("forkserver")
FORKS.set_forkserver_preload(["__main__", "tests.logbook.appending"])


def test_processes_that_make_and_fill_a_file_at_once_lose_nothing(
    tmp_path: Path,
) -> None:
    path = tmp_path / FILE
    people = ["Ann", "Ben", "Cy"]
    processes = [
        FORKS.Process(target=append_some, args=(path, 40, who)) for who in people
    ]
    for process in processes:
        process.start()
    for process in processes:
        process.join()
    assert [process.exitcode for process in processes] == [0, 0, 0]
    entries = read(path)
    assert [entry.number for entry in entries] == list(range(1, 121))
    assert Counter(entry.what.text for entry in entries) == dict.fromkeys(people, 40)
