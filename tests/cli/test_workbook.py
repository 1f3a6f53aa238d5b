"""``partsplan workbook``, and commands that are given one."""

import json
from pathlib import Path
from zipfile import ZipFile

import pytest
from openpyxl import load_workbook

from tests.cli.running import Capture, on_terminal, raising, run, start


@pytest.fixture
def book(garage: Path, capsys: Capture) -> Path:
    """The small garage as a workbook."""
    path = garage.with_suffix(".xlsx")
    assert run(capsys, "workbook", path, "--from", garage).code == 0
    return path


def test_a_workbook_to_start_from_is_a_garage(tmp_path: Path, capsys: Capture) -> None:
    path = tmp_path / "new.xlsx"
    ran = run(capsys, "workbook", path)
    assert (ran.code, ran.err) == (0, "")
    assert " ".join(ran.out.split()).startswith(
        f"{path} now holds garage, vehicles, faults, options, suppliers, access, "
        f'tools, causes and milestones. Fill them in, then try "partsplan check {path}"'
    )
    assert run(capsys, "check", path).code == 0


def test_every_command_takes_a_workbook(
    garage: Path, book: Path, capsys: Capture
) -> None:
    for words in (
        ("check", "GARAGE"),
        ("faults", "GARAGE", "--why"),
        ("compare", "GARAGE", "hose"),
        ("plan", "GARAGE"),
        ("plan", "GARAGE", "--json"),
        ("why", "GARAGE", "window", "--search", "0"),
        ("whatif", "GARAGE", "--budget", "50"),
        ("diagnose", "GARAGE"),
        ("now", "GARAGE", "--today", "2027-01-05"),
    ):
        folder = run(capsys, *(garage if one == "GARAGE" else one for one in words))
        found = run(capsys, *(book if one == "GARAGE" else one for one in words))
        assert folder.code == 0, folder.err
        assert found == folder


def test_a_workbook_may_come_on_standard_input(book: Path, garage: Path) -> None:
    piped = start("plan", "-", "--json", stdin=book.read_bytes())
    assert piped.returncode == 0, piped.stderr
    assert piped.stdout == start("plan", garage, "--json").stdout


def test_a_folder_a_workbook_and_a_folder_again(
    garage: Path, book: Path, tmp_path: Path, capsys: Capture
) -> None:
    again = tmp_path / "again"
    ran = run(capsys, "workbook", book, "--to", again)
    assert (ran.code, ran.err) == (0, "")
    assert ran.out.startswith(f"{again} now holds access.csv,")
    assert run(capsys, "plan", again, "--json") == run(capsys, "plan", garage, "--json")


def test_what_becomes_of_a_garage_as_json(
    book: Path, tmp_path: Path, capsys: Capture
) -> None:
    again = tmp_path / "again"
    found = json.loads(run(capsys, "workbook", book, "--to", again, "--json").out)
    assert found["schema"] == 1
    assert found["files"] == sorted(path.name for path in again.iterdir())
    assert (found["left_out"], found["logbook"]) == ([], None)
    new = tmp_path / "new.xlsx"
    made = json.loads(run(capsys, "workbook", new, "--json").out)
    assert made["workbook"] == str(new)
    assert made["sheets"][:2] == ["garage", "vehicles"]


def test_mistakes_are_told_with_sheet_and_cell_and_nothing_is_written(
    book: Path, tmp_path: Path, capsys: Capture
) -> None:
    found = load_workbook(book)
    header = [cell.value for cell in found["faults"][1]]
    found["faults"].cell(3, header.index("drivability") + 1).value = 7
    found["faults"].cell(2, header.index("vehicle") + 1).value = "hatsch"
    found.save(book)
    for words in (
        ("plan", book),
        ("plan", book, "--xlsx", tmp_path / "plan.xlsx"),
        ("workbook", book, "--to", tmp_path / "again"),
        ("workbook", tmp_path / "copy.xlsx", "--from", book),
    ):
        ran = run(capsys, *words)
        assert (ran.code, ran.out) == (3, "")
        assert ran.err.splitlines() == [
            'faults!B2: vehicle: no vehicle "hatsch" in vehicles; '
            'did you mean "hatch"?',
            'faults!I3: drivability: expected 0-4, got "7"',
            "2 problems; nothing was written.",
        ]
    for name in ("plan.xlsx", "again", "copy.xlsx"):
        assert not (tmp_path / name).exists()


def test_a_file_that_is_no_workbook_is_told_in_a_line(
    tmp_path: Path, capsys: Capture
) -> None:
    (tmp_path / "old.xls").write_bytes(bytes.fromhex("d0cf11e0a1b11ae1") + bytes(99))
    ran = run(capsys, "check", tmp_path / "old.xls")
    assert (ran.code, ran.out) == (3, "")
    assert ran.err == (
        "old.xls: expected an .xlsx workbook, got an old .xls, or none; save it as "
        ".xlsx\n"
    )


@pytest.mark.parametrize("words", [(), ("--from", "GARAGE")])
def test_only_force_overwrites_a_workbook(
    words: tuple[str, ...], garage: Path, tmp_path: Path, capsys: Capture
) -> None:
    there = tmp_path / "there.xlsx"
    there.write_text("mine")
    arguments = [str(garage) if one == "GARAGE" else one for one in words]
    ran = run(capsys, "workbook", there, *arguments)
    assert (ran.code, ran.out) == (2, "")
    assert f"{there} is there already; --force overwrites it" in ran.err
    assert there.read_text() == "mine"
    assert run(capsys, "workbook", there, *arguments, "--force").code == 0
    assert run(capsys, "check", there).code == 0


def test_only_force_overwrites_files_of_a_folder(
    book: Path, tmp_path: Path, capsys: Capture
) -> None:
    again = tmp_path / "again"
    again.mkdir()
    (again / "tools.csv").write_text("id,name\nold,Old tool\n")
    (again / "mine.txt").write_text("mine")
    ran = run(capsys, "workbook", book, "--to", again)
    assert (ran.code, ran.out) == (2, "")
    message = f"{again / 'tools.csv'} is there already; --force overwrites it"
    assert ran.err == f"Error: {message}\n"
    assert not (again / "garage.toml").exists()
    assert run(capsys, "workbook", book, "--to", again, "--force").code == 0
    assert (again / "mine.txt").read_text() == "mine"
    # A table that the workbook has nothing for is blank, or old tools would stay.
    assert (again / "tools.csv").read_text() == "id,name,price,owned\n"


def test_a_terminal_asks_before_it_overwrites(tmp_path: Path) -> None:
    there = tmp_path / "there.xlsx"
    there.write_text("mine")
    ran = on_terminal("workbook", there, typed="n\n")
    assert ran.code == 2
    assert "Overwrite it?" in ran.out
    assert there.read_text() == "mine"


def test_workbooks_appear_whole_or_not_at_all(
    garage: Path, tmp_path: Path, capsys: Capture, monkeypatch: pytest.MonkeyPatch
) -> None:
    out = tmp_path / "out"
    out.mkdir()
    monkeypatch.setattr("os.replace", raising(OSError(28, "disk full")))
    for words in (
        ("workbook", out / "new.xlsx", "--from", garage),
        ("plan", garage, "--xlsx", out / "plan.xlsx"),
    ):
        ran = run(capsys, *words)
        assert ran.code == 3
        assert "disk full" in ran.err
        assert list(out.iterdir()) == []


@pytest.mark.parametrize(
    ("words", "message"),
    [
        (("workbook", "new.ods"), "expected a name that ends in .xlsx, got "),
        (("workbook", "no/new.xlsx"), "there is no folder "),
        (("workbook", "x.xlsx", "--from", ".", "--to", "y"), "exclude each other"),
        (("plan", ".", "--xlsx", "-"), "expected a name that ends in .xlsx, got -"),
        (("plan", ".", "--xlsx", "no/plan.xlsx"), "--xlsx: there is no folder no"),
        (("start", "new.xlsx"), '"partsplan workbook new.xlsx" makes a workbook'),
    ],
)
def test_what_cannot_be_meant_is_a_usage_error(
    words: tuple[str, ...],
    message: str,
    garage: Path,
    capsys: Capture,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.chdir(garage)
    before = sorted(garage.iterdir())
    ran = run(capsys, *words)
    assert (ran.code, ran.out) == (2, "")
    assert message in ran.err
    assert sorted(garage.iterdir()) == before


def test_a_plan_is_written_beside_what_is_printed(
    garage: Path, tmp_path: Path, capsys: Capture
) -> None:
    path = tmp_path / "plan.xlsx"
    plain = run(capsys, "plan", garage, "--json")
    assert run(capsys, "plan", garage, "--json", "--xlsx", path) == plain
    book = load_workbook(path)
    assert book.sheetnames == [
        *("plan", "to buy", "to pay", "months", "ledger"),
        *("old units", "tools", "skipped"),
    ]
    jobs = [row[0].value for row in book["to buy"].iter_rows(min_row=2)]
    assert jobs == ["hose-new", "window-used"]
    ran = run(capsys, "plan", garage, "--xlsx", path)
    assert ran.code == 2
    assert "--xlsx: " in ran.err
    assert run(capsys, "plan", garage, "--xlsx", path, "--force").code == 0


def test_a_plan_that_is_impossible_is_not_written(
    garage: Path, tmp_path: Path, capsys: Capture
) -> None:
    toml = (garage / "garage.toml").read_text()
    (garage / "garage.toml").write_text(f"{toml}opening_cash = -900\n")
    ran = run(capsys, "plan", garage, "--json", "--xlsx", tmp_path / "plan.xlsx")
    assert ran.code == 4
    assert json.loads(ran.out)["status"] == "infeasible"
    assert "There is no plan to write into " in ran.err
    assert not (tmp_path / "plan.xlsx").exists()


def test_a_workbook_has_a_logbook_next_to_it(book: Path, capsys: Capture) -> None:
    words = ("--today", "2027-01-05")
    ran = run(capsys, "enter", book, "ordered", "hose-new", *words)
    assert ran.code == 0, ran.err
    assert book.with_name("my-garage.logbook.sqlite").is_file()
    told = json.loads(run(capsys, "entries", book, "--json").out)
    assert [one["subject"] for one in told["entries"]] == ["hose-new"]
    assert run(capsys, "plan", book, "--keep").err == "Kept as plan 1.\n"
    assert run(capsys, "against", book, *words).code == 0


def test_a_logbook_stays_and_its_owner_is_told(
    book: Path, tmp_path: Path, capsys: Capture
) -> None:
    run(capsys, "plan", book, "--keep")
    ran = run(capsys, "workbook", book, "--to", tmp_path / "again")
    said = " ".join(ran.out.split())
    assert "The logbook stays where it is" in said
    assert f"partsplan restore {tmp_path / 'again'} logbook.json" in said


def test_the_workbook_of_a_plan_holds_no_formula(
    garage: Path, tmp_path: Path, capsys: Capture
) -> None:
    text = (garage / "faults.csv").read_text()
    text = text.replace("Brake hose bulges", "'=HYPERLINK(1)")
    (garage / "faults.csv").write_text(text)
    path = tmp_path / "plan.xlsx"
    assert run(capsys, "plan", garage, "--xlsx", path).code == 0
    with ZipFile(path) as archive:
        sheets = [name for name in archive.namelist() if "worksheets/sheet" in name]
        content = b"".join(archive.read(name) for name in sheets)
    assert b"=HYPERLINK(1)" in content
    assert b"<f>" not in content
