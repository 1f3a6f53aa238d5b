"""The starter garage."""

import csv
from pathlib import Path

import pytest

from partsplan import catalogue
from partsplan.domain import Month
from partsplan.errors import InvalidRequest
from partsplan.intake import read_garage, write_starter
from partsplan.intake.columns import TABLES
from partsplan.intake.guide import columns_page
from partsplan.intake.settings import Settings, WeightSettings, WorkshopSettings


def test_the_starter_is_a_garage_with_nothing_odd(tmp_path: Path) -> None:
    folder = tmp_path / "new" / "garage"
    write_starter(folder)
    garage = read_garage(folder)
    assert garage.warnings == ()
    assert len(garage.vehicles) == 2
    assert len(garage.faults) == 6
    assert len(garage.options) == 9
    assert garage.suppliers
    assert garage.access
    assert garage.tools
    assert garage.causes
    assert garage.milestones


def test_every_fault_of_the_starter_has_an_option(tmp_path: Path) -> None:
    write_starter(tmp_path)
    garage = read_garage(tmp_path)
    assert all(garage.options_for[fault.id] for fault in garage.faults)


def test_the_starters_dates_follow_its_first_month(tmp_path: Path) -> None:
    write_starter(tmp_path, start=Month(2031, 11))
    garage = read_garage(tmp_path)
    assert garage.start == Month(2031, 11)
    assert garage.fault["hatch-pads"].fix_by == Month(2032, 1)
    assert garage.option["pads-new"].quoted_on == "2031-10"
    assert "{" not in "".join(path.read_text() for path in tmp_path.glob("*.csv"))


def test_the_settings_explain_every_key(tmp_path: Path) -> None:
    write_starter(tmp_path)
    text = (tmp_path / "garage.toml").read_text()
    for key in Settings.model_fields:
        assert f"\n{key} = " in text or f"# {key} = " in text or f"[{key}]" in text
    for section in (WeightSettings, WorkshopSettings):
        for key in section.model_fields:
            assert f"{key} = " in text


@pytest.mark.parametrize("name", ["notes.txt", ".hidden", "garage.toml"])
def test_a_folder_that_holds_anything_is_left_alone(tmp_path: Path, name: str) -> None:
    (tmp_path / name).write_text("mine")
    with pytest.raises(InvalidRequest) as caught:
        write_starter(tmp_path)
    expected = f"{tmp_path}: expected an empty or a new folder, it holds {name}"
    assert str(caught.value) == expected
    assert [path.name for path in tmp_path.iterdir()] == [name]


def test_a_file_is_no_folder_to_start_in(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("mine")
    with pytest.raises(InvalidRequest, match="expected a folder, got a file"):
        write_starter(tmp_path / "file")
    with pytest.raises(InvalidRequest, match="expected a folder, got a file"):
        write_starter(tmp_path / "file" / "below")


def test_the_page_explains_every_column_and_every_word(tmp_path: Path) -> None:
    write_starter(tmp_path)
    page = (tmp_path / "COLUMNS.md").read_text()
    assert page == columns_page()
    for table in TABLES:
        part = page.partition(f"## {table.file}\n")[2].partition("\n## ")[0]
        for column in table.columns:
            assert part.count(f"| `{column.name}` | {column.meaning}") == 1
    for words in catalogue.scales().values():
        assert all(f"- `{word.value}` " in page for word in words)


def test_the_starters_columns_are_all_known(tmp_path: Path) -> None:
    write_starter(tmp_path)
    for table in TABLES:
        with (tmp_path / table.file).open(newline="") as file:
            header = next(csv.reader(file))
        assert set(header) <= {column.name for column in table.columns}
