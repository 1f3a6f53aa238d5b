"""Folder, workbook and folder again hold the same garage."""

from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from hypothesis import HealthCheck, Phase, given, settings

from partsplan.domain import Garage
from partsplan.intake import folder_of, read_garage, workbook_of, write_garage
from tests.intake.plain_garage import PLAIN, save, with_cells
from tests.support.garages import garages

ROOT = Path(__file__).parents[2]
SLOW = [HealthCheck.too_slow, HealthCheck.data_too_large]


def there_and_back(garage: Garage) -> None:
    with TemporaryDirectory() as name:
        folder = Path(name)
        write_garage(garage, folder)
        assert as_workbook(folder, folder / "garage.xlsx") == garage
        assert as_folder(folder / "garage.xlsx", folder / "again") == garage


def as_workbook(folder: Path, path: Path) -> Garage:
    path.write_bytes(workbook_of(folder))
    return read_garage(path)


def as_folder(path: Path, folder: Path) -> Garage:
    folder.mkdir()
    return read_garage(save(folder, dict(folder_of(path).texts)))


@settings(max_examples=20, deadline=None, suppress_health_check=SLOW)
@given(garages())
def test_nothing_is_lost(garage: Garage) -> None:
    there_and_back(garage)


@pytest.mark.slow
@settings(
    max_examples=300,
    deadline=None,
    suppress_health_check=SLOW,
    phases=[Phase.generate],
)
@given(garages())
def test_nothing_is_lost_of_300_garages(garage: Garage) -> None:
    there_and_back(garage)


@pytest.mark.parametrize("name", ["household", "project-car", "transport-club"])
def test_blank_cells_stay_blank_so_that_the_catalogue_still_fills_them(
    tmp_path: Path, name: str
) -> None:
    scenario = ROOT / "scenarios" / name
    expected = read_garage(scenario)
    assert as_workbook(scenario, tmp_path / "garage.xlsx") == expected
    assert as_folder(tmp_path / "garage.xlsx", tmp_path / "again") == expected


def test_columns_of_ones_own_stay(tmp_path: Path) -> None:
    files = {**PLAIN, "tools.csv": "shelf,id,name,owned\n=B2,t1,'=Press,\n-7,t2,x,\n"}
    folder = tmp_path / "folder"
    folder.mkdir()
    expected = read_garage(save(folder, files))
    garage = as_workbook(folder, tmp_path / "garage.xlsx")
    assert garage.tools == expected.tools
    assert garage.warnings == ('tools!A1: column "shelf" is not used',)
    again = folder_of(tmp_path / "garage.xlsx").texts["tools.csv"]
    assert again == ("id,name,price,owned,shelf\nt1,'=Press,,,'=B2\nt2,x,,,-7\n")


def test_numbers_that_no_cell_holds_exactly_stay_text(tmp_path: Path) -> None:
    folder = tmp_path / "folder"
    folder.mkdir()
    hours = "0.123456789012"
    files = with_cells("options.csv", 2, hours=hours, core_chance="2/3")
    files = {**files, "access.csv": "id,hours\na1,123456789012.123456\n"}
    expected = read_garage(save(folder, files))
    assert as_workbook(folder, tmp_path / "garage.xlsx") == expected


def test_amounts_keep_the_digits_of_their_own_currency(tmp_path: Path) -> None:
    from openpyxl import load_workbook

    folder = tmp_path / "folder"
    folder.mkdir()
    as_workbook(save(folder, PLAIN), tmp_path / "garage.xlsx")
    book = load_workbook(tmp_path / "garage.xlsx")
    shipping = {row[0].value: row[3] for row in book["suppliers"].iter_rows()}
    assert shipping["s1"].number_format == "0.00"
    assert shipping["s2"].number_format == "0"
    price = book["options"]["F2"]
    assert (price.value, price.number_format) == (30, "0.00")


def test_sheets_of_ones_own_are_told_to_be_left_out(tmp_path: Path) -> None:
    from openpyxl import load_workbook

    folder, path = tmp_path / "folder", tmp_path / "garage.xlsx"
    folder.mkdir()
    as_workbook(save(folder, PLAIN), path)
    assert folder_of(path).left_out == ()
    book = load_workbook(path)
    book.create_sheet("Notes on prices")
    book.save(path)
    assert folder_of(path).left_out == ("Notes on prices",)
