"""What blank cells mean."""

from dataclasses import fields
from fractions import Fraction
from pathlib import Path

import pytest

from partsplan.domain import (
    LONG_AGO,
    Coding,
    Cure,
    Currency,
    Inspection,
    Instalment,
    Likelihood,
    Month,
    Severity,
)
from partsplan.intake import read_garage
from partsplan.intake.columns import TABLES
from partsplan.intake.schema import Column, Table
from tests.intake.plain_garage import PLAIN, save, with_cells

WITH_DEFAULT = [
    (table, column) for table in TABLES for column in table.columns if column.default
]


@pytest.mark.parametrize(
    ("table", "column"),
    WITH_DEFAULT,
    ids=[f"{table.name}-{column.name}" for table, column in WITH_DEFAULT],
)
def test_a_stated_default_is_what_a_blank_cell_leaves(
    table: Table, column: Column
) -> None:
    blank = next(f.default for f in fields(table.makes) if f.name == column.name)
    assert column.kind.read(column.default, Currency("EUR", 2)) == blank


FROM_THE_LOGBOOK = {"faults": {"fitted"}, "options": {"bought"}}
"""Fields that no table has: what happened before the plan."""


@pytest.mark.parametrize("table", TABLES, ids=[table.name for table in TABLES])
def test_columns_are_the_fields_of_the_fact(table: Table) -> None:
    assert [one.name for one in fields(table.makes)] != []
    later = FROM_THE_LOGBOOK.get(table.name, set())
    assert {one.name for one in fields(table.makes)} - later == {
        column.name for column in table.columns
    }


def test_cells_become_exact_values(tmp_path: Path) -> None:
    garage = read_garage(save(tmp_path, PLAIN))
    fault, option = garage.fault["f1"], garage.option["o1"]
    assert fault.severity is Severity.CRITICAL
    assert fault.likelihood is Likelihood.OCCASIONAL
    assert fault.inspection is Inspection.MAJOR
    assert fault.damage_chance == Fraction(1, 10)
    assert fault.damage_cost == 12000
    assert fault.lamps == ("abs", "brake-wear")
    assert option.fixes == (Cure(fault="f1"),)
    assert option.quantity == 2
    assert option.core_deposit == 500
    assert option.coding is Coding.NONE
    assert option.instalments == (
        Instalment(months=0, share=Fraction(1, 4)),
        Instalment(months=1, share=Fraction(3, 4)),
    )
    assert option.min_temp == 5
    assert garage.option["o2"].fixes == (Cure(fault="f1", relief=Fraction(1, 2)),)
    assert garage.fault["f2"].fix_by == Month(2027, 4)
    assert garage.fault["f3"].severity is None
    assert garage.vehicle["v2"].notes == "two\nlines"
    assert garage.assumed == ()


@pytest.mark.parametrize(
    ("use", "cell", "driven_from"),
    [
        ("daily", "", LONG_AGO),
        ("", "", LONG_AGO),
        ("stored", "", None),
        ("daily", "NO", None),
        ("stored", "2027-03", Month(2027, 3)),
        ("stored", "1900-01", LONG_AGO),
    ],
)
def test_only_stored_vehicles_stand_still_by_default(
    tmp_path: Path, use: str, cell: str, driven_from: Month | None
) -> None:
    files = with_cells("vehicles.csv", 2, use=use, driven_from=cell)
    garage = read_garage(save(tmp_path, files))
    assert garage.vehicle["v1"].driven_from == driven_from


@pytest.mark.parametrize(
    ("supplier", "cell", "price", "currency", "amount"),
    [
        ("", "", "30.00", "EUR", 3000),
        ("s1", "", "30.00", "EUR", 3000),
        ("s2", "", "30", "JPY", 30),
        ("s2", "eur", "30.00", "EUR", 3000),
        ("s1", "JPY", "30", "JPY", 30),
    ],
)
def test_an_option_has_its_own_or_its_suppliers_or_the_garages_currency(
    tmp_path: Path, supplier: str, cell: str, price: str, currency: str, amount: int
) -> None:
    files = with_cells("options.csv", 2, supplier=supplier, currency=cell, price=price)
    option = read_garage(save(tmp_path, files)).option["o1"]
    assert (option.currency, option.price) == (currency, amount)


def test_return_costs_are_in_the_garages_currency(tmp_path: Path) -> None:
    files = with_cells(
        "options.csv", 2, currency="JPY", price="30", core_return_cost="4.25"
    )
    option = read_garage(save(tmp_path, files)).option["o1"]
    assert (option.core_deposit, option.core_return_cost) == (5, 425)


def test_a_suppliers_figures_are_in_its_own_currency(tmp_path: Path) -> None:
    supplier = read_garage(save(tmp_path, PLAIN)).supplier["s2"]
    assert (supplier.currency, supplier.shipping) == ("JPY", 900)
    assert supplier.free_over is None


def test_instalments_are_put_in_order_of_time(tmp_path: Path) -> None:
    files = with_cells("options.csv", 2, instalments="2:2/3; 0:1/3")
    option = read_garage(save(tmp_path, files)).option["o1"]
    assert option.instalments == (
        Instalment(months=0, share=Fraction(1, 3)),
        Instalment(months=2, share=Fraction(2, 3)),
    )
