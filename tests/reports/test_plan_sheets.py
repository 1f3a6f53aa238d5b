"""A plan in a workbook: exact sums, months as text, and no formula anywhere."""

import csv
import io
from dataclasses import replace
from decimal import Decimal
from typing import Any
from xml.etree import ElementTree
from zipfile import ZipFile

import pytest
from openpyxl import Workbook, load_workbook

from partsplan.domain import Currency, Garage, Job, Plan
from partsplan.reports import plan_csv, plan_workbook
from tests.reports.made import GARAGE, PLAN, SHORTFALLS, SKIPS
from tests.support.full_garage import full_garage, full_plan

SPREADSHEET = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"


def made(garage: Garage = GARAGE, plan: Plan = PLAN) -> bytes:
    return plan_workbook(garage, plan, SKIPS, SHORTFALLS)


def opened(content: bytes) -> Workbook:
    return load_workbook(io.BytesIO(content))


def rows(content: bytes, title: str) -> list[list[Any]]:
    return [[cell.value for cell in row] for row in opened(content)[title].iter_rows()]


def test_as_csv_the_sheets_say_the_same() -> None:
    book, tables = opened(made()), plan_csv(GARAGE, PLAN, SKIPS, SHORTFALLS)
    assert [*tables] == [title.replace(" ", "-") for title in book.sheetnames]
    for sheet, text in zip(book, tables.values(), strict=True):
        read = [*csv.reader(io.StringIO(text, newline=""))]
        cells = [[cell.value for cell in row] for row in sheet.iter_rows()]
        assert len(read) == len(cells)
        for told, shown in zip(read, cells, strict=True):
            for one, other in zip(told, shown, strict=True):
                if isinstance(other, int | float):
                    assert Decimal(one) == Decimal(str(other))
                else:
                    assert one == (other or "")


def test_the_shopping_list_of_this_month() -> None:
    assert rows(made(), "to buy") == [
        [
            *("Job", "Part number", "Pieces", "For", "From", "Route"),
            *("Price [EUR]", "Deposit [EUR]", "Coding [EUR]", "Coding by"),
            "Licensed work",
        ],
        [
            *("hose-new", "BH-1", 2, "Front brake hose bulges, small hatchback"),
            *("Mill Lane Spares", "new", 69, None, None, None, "yes"),
        ],
    ]


def test_what_is_to_pay_sums_to_the_ledger() -> None:
    *_, (total, amount) = found = rows(made(), "to pay")
    assert (total, amount) == ("Total", 103.9)
    assert round(sum(row[1] for row in found[1:-1]), 2) == amount


def test_every_order_and_fitting_has_its_month() -> None:
    assert [row[:3] for row in rows(made(), "months")[1:]] == [
        ["2027-01", "order, fit", "hose-new"],
        ["2027-02", "order", "ecu-exchange"],
        ["2027-03", "fit", "ecu-exchange"],
    ]
    prices = [(row[5], row[6]) for row in rows(made(), "months")[1:]]
    assert prices == [(69, 1.5), (210, None), (None, 1)]


def test_the_ledger_adds_up() -> None:
    head, *found = rows(made(), "ledger")
    assert head[1:6] == [
        f"{one} [EUR]" for one in ("Before", "Budget", "Out", "Back", "Balance")
    ]
    for _, before, budget, out, back, balance, used, there in found:
        assert round(before + budget - out + back, 2) == balance
        assert used <= there
    assert [row[0] for row in found] == ["2027-01", "2027-02", "2027-03"]


def test_what_is_left_alone_and_why() -> None:
    found = rows(made(), "skipped")[1:]
    assert [row[0] for row in found] == ["paint", "hum", "seep"]
    assert found[0][1:3] == ["Lacquer peels off the roof", "small hatchback"]
    assert found[0][3].startswith(
        "roof-film (refinish) would gain 120.00 EUR for 90.00"
    )
    assert found[2][3] == "Only watched, as you asked."


def test_what_there_is_to_know_comes_first() -> None:
    found = rows(made(), "plan")
    assert found[1] == ["two old cars, 2027-01 to 2027-03", None]
    assert found[2] == ["Plan", "Proven: no plan is better."]
    about = list(dict.fromkeys(row[0] for row in found))
    for heading in ("Plan", "DO NOT DRIVE", "Missed deadlines", "Warnings", "Cautions"):
        assert heading in about
    assert ["Warnings", "faults.csv:6: seep: watched only"] in found


@pytest.mark.parametrize(
    ("currency", "text", "shape"),
    [
        (Currency("EUR", 2), "8.95", "#,##0.00"),
        (Currency("JPY", 0), "895", "#,##0"),
        (Currency("KWD", 3), "0.895", "#,##0.000"),
    ],
)
def test_a_sum_is_written_to_its_last_digit(
    currency: Currency, text: str, shape: str
) -> None:
    # 8.95 is no float; as one it would be written 8.949999999999999.
    plan = replace(PLAN, jobs=(replace(PLAN.jobs[0], landed=895), *PLAN.jobs[1:]))
    garage = replace(
        GARAGE,
        currency=currency,
        options=tuple(replace(one, currency=currency.code) for one in GARAGE.options),
    )
    content = made(garage, plan)
    with ZipFile(io.BytesIO(content)) as archive:
        sheet = ElementTree.fromstring(archive.read("xl/worksheets/sheet2.xml"))
    cell = sheet.find(f".//{SPREADSHEET}c[@r='G2']")
    assert cell is not None
    assert (cell.get("t"), cell.findtext(f"{SPREADSHEET}v")) == ("n", text)
    assert opened(content)["to buy"]["G2"].number_format == shape


def test_months_are_text(made_once: bytes) -> None:
    for title in ("months", "ledger"):
        for row in opened(made_once)[title].iter_rows(min_row=2):
            assert row[0].data_type == "s"
            assert row[0].number_format == "@"


@pytest.fixture(scope="module")
def made_once() -> bytes:
    return made()


@pytest.mark.parametrize("start", ["=", "+", "-", "@", "\t=", "\r="])
def test_no_text_of_a_garage_becomes_a_formula(start: str) -> None:
    nasty = f"{start}1+1"
    garage = replace(
        GARAGE,
        name=nasty,
        vehicles=tuple(replace(one, name=nasty) for one in GARAGE.vehicles),
        faults=tuple(replace(one, title=nasty) for one in GARAGE.faults),
        options=tuple(replace(one, part_no=nasty) for one in GARAGE.options),
        suppliers=tuple(replace(one, name=nasty) for one in GARAGE.suppliers),
        warnings=(nasty,),
    )
    content = made(garage)
    texts = 0
    with ZipFile(io.BytesIO(content)) as archive:
        for name in archive.namelist():
            if "worksheets/sheet" in name:
                sheet = ElementTree.fromstring(archive.read(name))
                assert not list(sheet.iter(f"{SPREADSHEET}f"))
                cells = list(sheet.iter(f"{SPREADSHEET}c"))
                assert {cell.get("t") for cell in cells} <= {"n", "inlineStr", None}
                texts += sum(nasty.strip() in "".join(one.itertext()) for one in cells)
    assert texts >= 6


def test_parts_that_were_bought_before_are_not_bought_again() -> None:
    bought: Job = replace(PLAN.jobs[0], bought=True)
    content = made(plan=replace(PLAN, jobs=(bought, *PLAN.jobs[1:])))
    assert len(rows(content, "to buy")) == 1
    assert rows(content, "months")[1][:3] == ["2027-01", "fit", "hose-new"]


def test_a_plan_with_every_rule_fits() -> None:
    garage, plan = full_garage(), full_plan()
    content = plan_workbook(garage, plan, (), ())
    assert len(rows(content, "ledger")) == garage.months + 1
    hours = [row[6] for row in rows(content, "ledger")[1:]]
    assert hours == [float(round(line.hours, 2)) for line in plan.ledger]
