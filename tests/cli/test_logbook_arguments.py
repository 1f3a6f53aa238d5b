"""What the commands about the logbook take, and how they answer other programs."""

import json
from pathlib import Path

import pytest

from partsplan.cli.main import cli
from partsplan.domain import EntryKind
from tests.cli.logged import BOOK, data, entered, logged_garage
from tests.cli.running import ESCAPE, Capture, on_terminal, run, start
from tests.cli.test_settings import completed, imported
from tests.cli.test_streams_and_files import archive

ABOUT_A_GARAGE = ("enter", "now", "entries", "export", "restore", "bring-in")


@pytest.fixture
def cars(tmp_path: Path) -> Path:
    return logged_garage(tmp_path / "cars")


def test_every_kind_is_explained(capsys: Capture) -> None:
    told = run(capsys, "enter", "--help").out
    explained = [line.split()[0] for line in told.splitlines() if line.split()]
    assert {*map(str, EntryKind)} <= {*explained}


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("ordred", "hose-new"), 'no kind of entry "ordred". Did you mean "ordered"?'),
        (("",), 'no kind of entry ""'),
        (("ordered", "hose-new", "more"), "unexpected extra argument"),
        (("paid", "--amount", "1,50"), 'amount: expected an amount like 12.50, got "1'),
        (("paid", "--amount", "-1"), "amount: expected 0 or more"),
        (("paid", "--amount", "1e9"), "amount: expected an amount like 12.50"),
        (("paid", "--amount", "9" * 99), "amount: expected an amount like 12.50"),
        (("ordered", "hose-new", "--deposit", "x"), "deposit: expected an amount"),
        (("fitted", "hose-new", "--hours", "two"), "hours: expected a number"),
        (("fitted", "hose-new", "--hours", "1/0"), "hours: expected a number"),
        (("odometer", "van", "--reading", "1.5"), "reading: expected a whole number"),
        (("note", "--text", "a\x1b[31mb"), "text: expected no control characters"),
        (("note", "--text", "\udcff"), "text: 'utf-8' codec can't encode"),
        (("ordered", "a\x07"), "subject: expected no control characters"),
        (("paid", "--amont", "5"), "Did you mean one of: '--amount'"),
        (("note", "--text", "x", "--day", "2027-02-30"), "expected a day YYYY-MM-DD"),
        (("note", "--text", "x", "--day", "20270203"), "expected a day YYYY-MM-DD"),
        (("note", "--text", "x", "--today", "9999-12-31"), "expected a day YYYY-MM-DD"),
    ],
)
def test_garbage_is_answered_in_words(
    words: tuple[str, ...], said: str, cars: Path, capsys: Capture
) -> None:
    ran = run(capsys, "enter", cars, *words)
    assert (ran.code, ran.out) == (2, "")
    assert said in ran.err
    assert not (cars / BOOK).exists()


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("ordered", '"ordered" needs what it is about'),
        ("paid", '"paid" needs an amount'),
        ("note", '"note" needs a text'),
        ("undone", '"undone" needs what it is about'),
        ("undone 999999999999999999999", "there is no entry"),
        ("checked starter --cause x", '"checked" needs whether the cause was found'),
        ("ordered starter", 'expected an option, got the fault "starter"'),
        ("odometer hatch", '"odometer" needs a reading'),
    ],
)
def test_entries_without_their_form_are_refused(
    line: str, said: str, cars: Path, capsys: Capture
) -> None:
    ran = run(capsys, "enter", cars, *line.split(), "--anyway")
    assert (ran.code, ran.out) == (3, "")
    assert said in ran.err
    assert ran.err.endswith("Nothing was written.\n")


@pytest.mark.parametrize("command", ABOUT_A_GARAGE)
def test_a_garage_that_is_missing_or_wrong(
    command: str, tmp_path: Path, capsys: Capture
) -> None:
    more = {"enter": ["note", "--text", "x"], "restore": [__file__]}
    more["bring-in"] = [__file__, "--column", "day=a", "--column", "amount=b"]
    words = more.get(command, [])
    assert run(capsys, command, tmp_path / "nowhere", *words).code == 2
    assert run(capsys, command, *[]).code == 2
    (tmp_path / "empty").mkdir()
    ran = run(capsys, command, tmp_path / "empty", *words)
    assert (ran.code, ran.out) == (3, "")
    assert "garage.toml" in ran.err
    assert list((tmp_path / "empty").iterdir()) == []


def test_an_archive_has_no_logbook(cars: Path, capsys: Capture) -> None:
    entered(capsys, cars, "2027-01-05 ordered hose-new")
    told = start("now", "-", "--json", stdin=archive(cars))
    assert json.loads(told.stdout)["parts"] == []
    for words in (("enter", "-", "note", "--text", "x"), ("export", "-")):
        ran = start(*words, stdin=archive(cars))
        assert ran.returncode == 2
        assert b"an archive keeps nothing" in ran.stderr


def test_json_begins_with_its_schema_and_is_all_that_is_printed(
    cars: Path, tmp_path: Path, capsys: Capture
) -> None:
    spent = tmp_path / "spent.csv"
    spent.write_text("d,a\n2027-01-02,5\n")
    kept = tmp_path / "kept.json"
    columns = ("--column", "day=d", "--column", "amount=a", "--today", "2027-01-05")
    for words in (
        ("enter", cars, "ordered", "starter-exchange", "--today", "2027-01-05"),
        ("now", cars, "--today", "2027-01-05"),
        ("entries", cars),
        ("bring-in", cars, spent, *columns),
        ("export", cars, "-o", kept),
    ):
        ran = run(capsys, *words, "--json")
        assert (ran.code, ran.err) == (0, "")
        text = ran.out or kept.read_text(encoding="utf-8")
        assert next(iter(json.loads(text).items())) == ("schema", 1)
    (cars / BOOK).unlink()
    assert data(capsys, "restore", cars, kept)["entries"] == 2


def test_an_entry_as_json(cars: Path, capsys: Capture) -> None:
    ran = entered(
        capsys, cars, "2027-01-05 ordered starter-exchange --amount 100 --json"
    )
    found = json.loads(ran.out)
    assert found["entry"]["number"] == 1
    assert found["entry"]["written"].startswith("2027-01-0")
    assert (found["entry"]["amount"], found["entry"]["deposit"]) == (10000, 3500)
    assert found["quoted"] == ["deposit"]
    assert (found["spent"], found["received"]) == (13500, 0)
    assert found["part"]["expected"] == "2027-01-09"
    assert found["money"]["free"] == 10000 - 13500


def test_plain_records(cars: Path, capsys: Capture) -> None:
    entered(capsys, cars, "2027-01-05 ordered belt-kit", "--text", "a\tb")
    entered(capsys, cars, "2027-01-06 fitted hose-new --anyway")
    entries = run(capsys, "entries", cars, "--plain").out.splitlines()
    assert [line.split("\t")[0] for line in entries] == ["entry", "entry", "doubt"]
    assert entries[0].split("\t")[1:6] == [
        "1",
        "2027-01-05",
        "ordered",
        "belt-kit",
        "200.00",
    ]
    assert "a b" in entries[0].split("\t")
    now = run(capsys, "now", cars, "--plain", "--today", "2027-02-01").out.splitlines()
    kinds = [line.split("\t")[0] for line in now]
    assert kinds == [
        "now",
        "duty",
        "duty",
        *["money"] * 9,
        "due",
        "part",
        "part",
        "doubt",
    ]
    for command in ("now", "entries"):
        assert run(capsys, command, cars, "--plain", "--json").code == 2


def test_colour_is_for_terminals_that_want_it(cars: Path) -> None:
    for command in ("now", "entries"):
        assert ESCAPE in on_terminal(command, cars).out
        assert ESCAPE not in on_terminal(command, cars, NO_COLOR="1").out
        assert ESCAPE not in start(command, cars).stdout.decode()


def test_names_complete(cars: Path, tmp_path: Path) -> None:
    assert completed(f"partsplan enter {cars} s") == ["sent-back"]
    line = f"partsplan enter {cars}"
    assert completed(f"{line} ordered ") == ["hose-new", "starter-exchange", "belt-kit"]
    assert completed(f"{line} checked st") == ["starter"]
    assert completed(f"{line} odometer ") == ["hatch", "van"]
    assert completed(f"{line} undone ") == []
    assert "depot" in completed(f"{line} paid d")
    assert completed(f"{line} ordred ") == []
    assert completed(f"partsplan enter {tmp_path / 'nowhere'} ordered ") == []


def test_nothing_slow_is_loaded(cars: Path, capsys: Capture) -> None:
    entered(capsys, cars, "2027-01-05 ordered starter-exchange")
    slow = {"pandas", "numpy", "pulp", "highspy"}
    for words in (
        ("enter", cars, "note", "--text", "x"),
        ("now", cars),
        ("entries", cars),
        ("export", cars),
    ):
        assert not imported(*words) & slow
    assert imported("enter", "--help") == set()


def test_what_is_only_read_makes_no_file(cars: Path, capsys: Capture) -> None:
    for command in ("now", "entries", "export", "check"):
        assert run(capsys, command, cars).code == 0
    assert not (cars / BOOK).exists()
    assert "Nothing is written down yet" in run(capsys, "entries", cars).out


def test_they_are_all_in_the_help() -> None:
    assert {*ABOUT_A_GARAGE} <= {*cli.commands}
