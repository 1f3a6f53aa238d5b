"""Files appear whole, or stay as they were."""

import os
from pathlib import Path

import pytest

from partsplan.errors import InvalidRequest
from partsplan.intake import read_garage, write_garage
from tests.intake.plain_garage import PLAIN, save, with_cells


def test_every_cell_that_means_something_is_written(tmp_path: Path) -> None:
    write_garage(read_garage(save(tmp_path, PLAIN)), tmp_path / "out")
    assert (tmp_path / "out" / "suppliers.csv").read_text() == (
        "id,name,currency,shipping,free_over,tax,duty_rate,notes\n"
        "s1,Parts counter,EUR,6.90,100.00,included,0,\n"
        "s2,Far away,JPY,900,,included,0.03,\n"
    )
    assert (tmp_path / "out" / "vehicles.csv").read_text() == (
        "id,name,year,use,keep_months,driven_from,value,notes\n"
        "v1,Small hatchback,2004,daily,36,1900-01,900.00,\n"
        'v2,Diesel van,1999,stored,60,no,,"two\nlines"\n'
    )


def test_written_settings_leave_nothing_to_defaults(tmp_path: Path) -> None:
    write_garage(read_garage(save(tmp_path, PLAIN)), tmp_path / "out")
    assert (
        (tmp_path / "out" / "garage.toml").read_text()
        == """\
name = "Plain"
currency = "EUR"
start = "2027-01"
months = 6
budget = [200.00, 250.50]
hours = [10]
opening_cash = 0.00
carry_over = true
reserve = 0.00
money_per_point = "581/480"
hour_value = 0.00
tax_rate = 0
look_beyond = 6
core_trust = 0.8
allow_risky_routes = false
discount_rate = 0
priority = ["deadlines", "safety", "mobility", "worth"]

[weights]
safety = 0.6
drivability = 0.3
enjoyment = 0.1

[rates]
JPY = 0.006

[workshop]
heated = true
coding_tool = false
"""
    )


def test_text_is_written_so_that_no_spreadsheet_runs_it(tmp_path: Path) -> None:
    tools = "id,name\n'=t1,'=A1+1\nt1,''+x\n"
    files = with_cells("options.csv", 2, tools="'=t1;t1")
    garage = read_garage(save(tmp_path, {**files, "tools.csv": tools}))
    write_garage(garage, tmp_path / "out")
    assert (tmp_path / "out" / "tools.csv").read_text() == (
        "id,name,price,owned\n'=t1,'=A1+1,0.00,no\nt1,''+x,0.00,no\n"
    )
    assert read_garage(tmp_path / "out") == garage


def test_old_files_are_replaced_and_nothing_is_left_beside(tmp_path: Path) -> None:
    garage = read_garage(save(tmp_path, PLAIN))
    (tmp_path / "tools.csv").write_text("rubbish")
    write_garage(garage, tmp_path)
    assert read_garage(tmp_path) == garage
    assert {path.name for path in tmp_path.iterdir()} == PLAIN.keys()


def test_a_write_that_fails_leaves_the_old_file(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    garage = read_garage(save(tmp_path, PLAIN))

    def refuse(source: Path, target: Path) -> None:
        raise OSError(28, "No space left on device", str(source))

    monkeypatch.setattr(os, "replace", refuse)
    with pytest.raises(InvalidRequest) as caught:
        write_garage(garage, tmp_path)
    place = tmp_path / "garage.toml"
    assert str(caught.value) == f"{place}: cannot be written: No space left on device"
    assert {path.name: path.read_text() for path in tmp_path.iterdir()} == PLAIN


def test_a_file_is_no_folder_to_write_in(tmp_path: Path) -> None:
    garage = read_garage(save(tmp_path, PLAIN))
    with pytest.raises(InvalidRequest) as caught:
        write_garage(garage, tmp_path / "tools.csv")
    place = tmp_path / "tools.csv"
    assert str(caught.value) == f"{place}: cannot be written: File exists"
