"""A decimal comma, read only where garage.toml says so."""

import csv
import io
import re
from fractions import Fraction
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from hypothesis import HealthCheck, given, settings

from partsplan.domain import Garage
from partsplan.intake import folder_of, read_garage, workbook_of, write_garage
from tests.intake.plain_garage import PLAIN, problems, save, with_cells
from tests.support.garages import garages

TEXTS = {"title", "name", "notes", "part_no", "lamps", "codes", "cause", "id", "access"}
TEXTS |= {"vehicle", "supplier", "tools", "after", "pair_with", "fault", "faults"}
TEXTS |= {"cure", "kind"}
SHARES = {"fixes", "instalments"}
SAYS = "decimal_comma = true\n"


def with_commas(name: str, cell: str) -> str:
    """The cell as one would type it in Lisbon; written apart from what reads it."""
    if name in TEXTS:
        return cell
    if name in SHARES:
        return re.sub(r":([^;:]*)", lambda found: found[0].replace(".", ","), cell)
    return cell.replace(".", ",")


def rewrite(folder: Path, separator: str) -> None:
    """Every table with commas, and garage.toml that says so."""
    for path in folder.glob("*.csv"):
        text = path.read_bytes().decode("utf-8")
        header, *rows = csv.reader(io.StringIO(text, newline=""))
        file = io.StringIO()
        writer = csv.writer(file, delimiter=separator, lineterminator="\n")
        writer.writerow(header)
        writer.writerows(
            [with_commas(name, cell) for name, cell in zip(header, row, strict=True)]
            for row in rows
        )
        path.write_bytes(file.getvalue().encode())
    toml = folder / "garage.toml"
    toml.write_bytes(SAYS.encode() + toml.read_bytes())


@settings(
    max_examples=25,
    deadline=None,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large],
)
@given(garages())
def test_it_says_what_a_point_would_say(garage: Garage) -> None:
    for separator in ";,\t":
        with TemporaryDirectory() as name:
            folder = Path(name)
            write_garage(garage, folder)
            rewrite(folder, separator)
            assert read_garage(folder) == garage


@settings(
    max_examples=10,
    deadline=None,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large],
)
@given(garages())
def test_a_workbook_has_numbers_and_a_folder_of_it_has_commas_again(
    garage: Garage,
) -> None:
    with TemporaryDirectory() as name:
        folder, again = Path(name, "one"), Path(name, "two")
        folder.mkdir()
        again.mkdir()
        write_garage(garage, folder)
        rewrite(folder, ";")
        book = Path(name, "book.xlsx")
        book.write_bytes(workbook_of(folder))
        assert read_garage(book) == garage
        texts = folder_of(book).texts
        assert "decimal_comma = true" in texts["garage.toml"]
        assert read_garage(save(again, dict(texts))) == garage
        options = csv.DictReader(io.StringIO(texts["options.csv"]), delimiter=";")
        assert not any("." in row["price"] for row in options)


def in_commas(folder: Path) -> str:
    """Saves the plain garage with commas; gives its garage.toml."""
    rewrite(save(folder, PLAIN), ";")
    path = folder / "garage.toml"
    text = path.read_text(encoding="utf-8").replace("250.50", "250,50")
    path.write_text(text, encoding="utf-8")
    return text


def said(folder: Path, change: tuple[str, str]) -> list[str]:
    """What is wrong with the plain garage in commas, once something is changed."""
    in_commas(folder)
    path = folder / "options.csv"
    text = path.read_text(encoding="utf-8")
    assert change[0] in text
    return problems(folder, {path.name: text.replace(*change, 1)})


@pytest.mark.parametrize("cell", ["30.00", "1.250,00"])
def test_a_point_is_refused_then(tmp_path: Path, cell: str) -> None:
    assert said(tmp_path, ("30,00", cell)) == [
        f'options.csv:2: price: expected an amount, 0 or more, got "{cell}" with a '
        "point, and decimal_comma is true"
    ]


def test_so_it_is_in_the_shares_of_a_list(tmp_path: Path) -> None:
    assert said(tmp_path, ("f1:0,5", "f1:0.5")) == [
        "options.csv:3: fixes: expected fault or fault:relief, with ; between them, "
        'got "0.5" with a point, and decimal_comma is true'
    ]


def test_texts_among_the_settings_follow_and_numbers_of_toml_do_not(
    tmp_path: Path,
) -> None:
    text = in_commas(tmp_path)
    garage = read_garage(tmp_path)
    assert garage.budget == (20000, 25050)
    assert "JPY = 0.006" in text
    assert garage.rates["JPY"] == Fraction("0.6")
    point = {"garage.toml": text.replace("250,50", "250.50")}
    assert problems(tmp_path, point) == [
        'garage.toml:6: budget: expected an amount, 0 or more, got "250.50" with a '
        "point, and decimal_comma is true"
    ]


def test_a_key_that_is_none_is_told_once(tmp_path: Path) -> None:
    text = in_commas(tmp_path).replace("[rates]", 'owner = "A. B."\n\n[rates]')
    assert problems(tmp_path, {"garage.toml": text}) == [
        "garage.toml:9: owner: no such key"
    ]


@pytest.mark.parametrize("cell", ["12,50", "1250,00"])
def test_without_the_key_a_comma_is_refused_and_the_key_is_named(
    cell: str, tmp_path: Path
) -> None:
    assert problems(tmp_path, with_cells("options.csv", 2, price=cell)) == [
        f'options.csv:2: price: expected an amount like 12.50, got "{cell}"; if '
        "figures are written so, say decimal_comma = true in garage.toml"
    ]
