"""``--tables``: every table of an answer as a CSV file, by RFC 4180."""

import csv
import io
import re
from decimal import Decimal
from pathlib import Path

import pytest

from tests.cli.answers import WITH_TABLES, lived_in, words
from tests.cli.running import Capture, run, write_garage

QUOTED = re.compile(r'"(?:[^"]|"")*"')
BARE = re.compile(r'[^",\r\n]*')


def by_the_rules(text: str) -> list[list[str]]:
    """The records of a CSV file, read strictly by section 2 of RFC 4180."""
    records: list[list[str]] = []
    place, cells = 0, []
    while place < len(text):
        found = QUOTED.match(text, place) or BARE.match(text, place)
        assert found
        cell = found[0]
        cells.append(cell[1:-1].replace('""', '"') if cell[:1] == '"' else cell)
        place = found.end()
        if text.startswith(",", place):
            place += 1
            continue
        assert text.startswith("\r\n", place), text[place : place + 20]
        place += 2
        records.append(cells)
        cells = []
    assert not cells, "the last line does not end"
    assert len({len(record) for record in records}) == 1
    return records


def written(folder: Path) -> dict[str, list[list[str]]]:
    return {
        path.stem: by_the_rules(path.read_bytes().decode("utf-8"))
        for path in folder.iterdir()
    }


@pytest.mark.parametrize("command", WITH_TABLES)
def test_every_table_is_a_file_by_the_rules(
    command: str, tmp_path: Path, capsys: Capture
) -> None:
    garage, folder = lived_in(tmp_path / "g", capsys), tmp_path / "tables"
    asked = words(command, garage)
    shown = run(capsys, *asked)
    ran = run(capsys, *asked, "--tables", folder)
    assert (ran.code, ran.out, ran.err) == (shown.code, shown.out, shown.err)
    tables = written(folder)
    assert tables
    for name, (header, *rows) in tables.items():
        text = (folder / f"{name}.csv").read_bytes().decode()
        assert [*csv.reader(io.StringIO(text, newline=""))] == [header, *rows]
        assert len(set(header)) == len(header) or command in ("whatif", "beside")
        assert not any(cell[:1] in "=@" for row in rows for cell in row if cell)
    assert any(rows for _, *rows in tables.values())


def test_figures_are_numbers_and_name_their_unit(
    tmp_path: Path, capsys: Capture
) -> None:
    garage, folder = lived_in(tmp_path / "g", capsys), tmp_path / "tables"
    run(capsys, "plan", garage, "--tables", folder, "--locale", "de")
    header, *rows = written(folder)["ledger"]
    assert header[:4] == ["Month", "Before [EUR]", "Budget [EUR]", "Out [EUR]"]
    assert [row[0] for row in rows] == ["2027-02", "2027-03", "2027-04", "2027-05"]
    before, budget, out, back, balance = (
        [Decimal(row[at]) for row in rows] for at in range(1, 6)
    )
    assert budget == [Decimal("1200.00")] * 4
    assert balance == [
        a + b - c + d for a, b, c, d in zip(before, budget, out, back, strict=True)
    ]


def test_the_compared_options_have_a_row_each(tmp_path: Path, capsys: Capture) -> None:
    garage, folder = lived_in(tmp_path / "g", capsys), tmp_path / "tables"
    run(capsys, "compare", garage, "belt", "--tables", folder)
    (header, row) = written(folder)["options"]
    told = dict(zip(header, row, strict=True))
    assert told["Option"] == "belt-kit"
    assert told["Landed price [EUR]"] == "200.00"


def test_no_cell_is_taken_for_a_formula(tmp_path: Path, capsys: Capture) -> None:
    title = "+1-1 leaks"
    faults = f"id,vehicle,title,drivability\nhose,hatch,{title},2\n"
    options = "id,fixes,route,price\n'@x,hose,new,9.00\n"
    garage = write_garage(tmp_path / "g", faults_csv=faults, options_csv=options)
    for command, name in (("plan", "to-buy"), ("faults", "faults")):
        folder = tmp_path / command
        assert run(capsys, command, garage, "--tables", folder).code == 0
        cells = [cell for row in written(folder)[name] for cell in row]
        assert not any(cell[:1] in "=@" for cell in cells if cell)
        assert not any(cell.startswith("+") for cell in cells)


def test_a_folder_that_holds_something_is_left_alone(
    garage: Path, tmp_path: Path, capsys: Capture
) -> None:
    ran = run(capsys, "faults", garage, "--tables", garage)
    assert ran.code == 2
    assert "is not empty; name a new folder" in ran.err
    file = garage / "garage.toml"
    assert "is no folder" in run(capsys, "faults", garage, "--tables", file).err
    lost = tmp_path / "no" / "such"
    assert "there is no folder" in run(capsys, "faults", garage, "--tables", lost).err
    empty = tmp_path / "empty"
    empty.mkdir()
    assert run(capsys, "faults", garage, "--tables", empty).code == 0
    assert [path.name for path in empty.iterdir()] == ["faults.csv"]


def test_programs_ask_for_one_shape(
    garage: Path, tmp_path: Path, capsys: Capture
) -> None:
    for shape in ("--json", "--plain"):
        ran = run(capsys, "plan", garage, shape, "--tables", tmp_path / "t")
        assert ran.code == 2
        assert f"--tables and {shape} exclude each other" in ran.err
