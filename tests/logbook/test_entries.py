"""What is written down is read again, and nothing else."""

from datetime import UTC, datetime, timedelta, timezone
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from partsplan.domain import Entry, Happening
from partsplan.errors import InvalidRequest, LogbookUnavailable
from partsplan.logbook import FILE, append, read
from tests.logbook.appending import NOW, happening
from tests.logbook.made_up import HAPPENING, MOMENT


@settings(max_examples=30)  # each waits for the disk
@given(st.lists(st.tuples(MOMENT, st.lists(HAPPENING, max_size=3)), max_size=4))
def test_entries_are_read_as_they_were_written(
    batches: list[tuple[datetime, list[Happening]]],
) -> None:
    with TemporaryDirectory() as folder:
        path = Path(folder) / FILE
        written = [
            entry for now, some in batches for entry in append(path, some, now=now)
        ]
        assert read(path) == tuple(written)
    assert [entry.what for entry in written] == [
        what for _, some in batches for what in some
    ]
    assert [entry.number for entry in written] == list(range(1, len(written) + 1))


def test_without_a_file_there_are_no_entries_and_none_is_made(tmp_path: Path) -> None:
    assert read(tmp_path / FILE) == ()
    assert list(tmp_path.iterdir()) == []


def test_the_file_stands_alone(tmp_path: Path) -> None:
    append(tmp_path / FILE, [happening("one")], now=NOW)
    read(tmp_path / FILE)
    assert [path.name for path in tmp_path.iterdir()] == [FILE]


def test_moments_are_kept_in_utc(tmp_path: Path) -> None:
    zone = timezone(timedelta(hours=2))
    (entry,) = append(
        tmp_path / FILE,
        [happening("one")],
        now=datetime(2027, 3, 1, 1, 30, tzinfo=zone),
    )
    assert str(entry.written) == "2027-02-28 23:30:00+00:00"
    assert entry.written.tzinfo is UTC
    assert read(tmp_path / FILE) == (entry,)


def test_a_moment_without_zone_is_refused(tmp_path: Path) -> None:
    with pytest.raises(ValueError, match="with its zone"):
        append(tmp_path / FILE, [happening("one")], now=datetime(2027, 3, 1))
    assert read(tmp_path / FILE) == ()


@pytest.mark.parametrize(
    ("known", "given"),
    [
        pytest.param(0, ["one", "two", "three"], id="nothing known"),
        pytest.param(2, ["three"], id="all but one known"),
        pytest.param(3, [], id="all known"),
    ],
)
def test_a_check_gets_the_entries_that_are_not_known(
    tmp_path: Path, known: int, given: list[str]
) -> None:
    path = tmp_path / FILE
    append(path, map(happening, ["one", "two", "three"]), now=NOW)
    seen: list[Entry] = []
    append(path, [happening("four")], now=NOW, known=known, check=seen.extend)
    assert [entry.what.text for entry in seen] == given
    assert [entry.number for entry in seen] == list(range(known + 1, 4))


class Refused(Exception):
    """What a check may raise."""


def refuse(entries: tuple[Entry, ...]) -> None:
    raise Refused


def test_what_a_check_refuses_is_not_written(tmp_path: Path) -> None:
    path = tmp_path / FILE
    before = append(path, [happening("one")], now=NOW)
    with pytest.raises(Refused):
        append(path, [happening("two")], now=NOW, check=refuse)
    assert read(path) == before
    assert append(path, [happening("three")], now=NOW)[0].number == 2


def test_a_file_that_lost_entries_meanwhile_is_not_written(tmp_path: Path) -> None:
    path = tmp_path / FILE
    append(path, [happening("one")], now=NOW)
    with pytest.raises(LogbookUnavailable, match="2 entries were read, now it has 1"):
        append(path, [happening("two")], now=NOW, known=2)
    assert len(read(path)) == 1


def test_batches_get_the_next_free_name(tmp_path: Path) -> None:
    path = tmp_path / FILE
    for texts in (["one", "two"], ["three"]):
        append(path, map(happening, texts), now=NOW, as_batch=True)
    append(path, [happening("four")], now=NOW)
    batches = [entry.what.batch for entry in read(path)]
    assert batches == ["import-1", "import-1", "import-2", ""]


@pytest.mark.parametrize(
    "wrong",
    [
        pytest.param(happening("refund", amount=-1), id="below 0"),
        pytest.param(happening("", amount=2**63), id="too much"),
        pytest.param(happening("\udcff"), id="no character"),
    ],
)
def test_what_cannot_be_stored_is_refused_with_all_that_came_with_it(
    tmp_path: Path, wrong: Happening
) -> None:
    path = tmp_path / FILE
    with pytest.raises(InvalidRequest, match="cannot be written down"):
        append(path, [happening("fine"), wrong], now=NOW)
    assert read(path) == ()
