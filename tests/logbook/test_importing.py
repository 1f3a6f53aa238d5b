"""Past spending is read from tables as people keep them."""

from datetime import date
from pathlib import Path

import pytest

from partsplan.domain import Currency, EntryKind, Happening
from partsplan.errors import InvalidRequest, InvalidSpending
from partsplan.logbook import read_spending

EUR = Currency("EUR", 2)
COLUMNS = {"day": "Date", "amount": "Cost", "text": "What"}
TABLE = """\
Date,Cost,What,Car,By
2026-11-03,12.50,Fuses,van,Ann
2026-12-24,8,"Oil, filter",saloon,
"""
ROWS = [(date(2026, 11, 3), 1250, "Fuses"), (date(2026, 12, 24), 800, "Oil, filter")]


def save(folder: Path, content: str | bytes) -> Path:
    path = folder / "spending.csv"
    path.write_bytes(content.encode() if isinstance(content, str) else content)
    return path


def told(spending: tuple[Happening, ...]) -> list[tuple[date, int | None, str]]:
    return [(one.day, one.amount, one.text) for one in spending]


@pytest.mark.parametrize(
    "content",
    [
        pytest.param(TABLE, id="commas"),
        pytest.param(TABLE.encode("utf-8-sig"), id="with a mark"),
        pytest.param(TABLE.replace("\n", "\r\n"), id="CRLF"),
        pytest.param(
            'Date;Cost;What\n2026-11-03;12.50;Fuses\n2026-12-24;8;"Oil, filter"\n',
            id="semicolons",
        ),
        pytest.param(
            "Cost\tWhat\tDate\n12.50\tFuses\t2026-11-03\n8.0\tOil, filter\t2026-12-24",
            id="tabs, another order",
        ),
        pytest.param(TABLE.replace("Date,Cost", "DATE, cost "), id="capitals"),
    ],
)
def test_tables_of_many_programs_are_read(tmp_path: Path, content: str | bytes) -> None:
    spending = read_spending(save(tmp_path, content), COLUMNS, EUR)
    assert told(spending) == ROWS
    assert {one.kind for one in spending} == {EntryKind.PAID}


def test_each_column_has_its_place(tmp_path: Path) -> None:
    columns = {**COLUMNS, "subject": "Car", "who": "By"}
    first, second = read_spending(save(tmp_path, TABLE), columns, EUR)
    assert first == Happening(
        kind=EntryKind.PAID,
        day=date(2026, 11, 3),
        amount=1250,
        text="Fuses",
        subject="van",
        who="Ann",
    )
    assert (second.subject, second.who) == ("saloon", "")


def test_days_and_commas_are_read_as_told(tmp_path: Path) -> None:
    path = save(tmp_path, "Date;Cost;What\n03.11.2026;12,50;Fuses\n24.12.2026;8;Oil\n")
    spending = read_spending(
        path, COLUMNS, EUR, day_format="%d.%m.%Y", decimal_comma=True
    )
    assert told(spending) == [ROWS[0], (date(2026, 12, 24), 800, "Oil")]


def test_money_is_exact_in_a_currency_without_decimals(tmp_path: Path) -> None:
    path = save(tmp_path, "Date,Cost,What\n2026-11-03,123456789012,Fuses\n")
    (one,) = read_spending(path, COLUMNS, Currency("JPY", 0))
    assert one.amount == 123456789012


def test_text_is_one_line_and_loses_the_mark_of_a_spreadsheet(tmp_path: Path) -> None:
    path = save(tmp_path, 'Date,Cost,What\n2026-11-03,1,"\'=a\n  b"\n')
    assert told(read_spending(path, COLUMNS, EUR))[0][2] == "=a b"


def test_everything_wrong_is_told_at_once(tmp_path: Path) -> None:
    path = save(
        tmp_path,
        "Date,Cost,What\n"
        "2026-11-03,abc,Fuses\n"
        "3.11.2026,12.505,Fuses\n"
        "2026-02-30,,Fuses\n"
        '2026-11-03,-5,"Fu\x07ses"\n'
        "2026-11-03,12.50\n"
        "20261103,1e3,Fuses\n",
    )
    with pytest.raises(InvalidSpending) as caught:
        read_spending(path, COLUMNS, EUR)
    assert str(caught.value).splitlines() == [
        'spending.csv:2: Cost: expected an amount like 12.50, got "abc"',
        'spending.csv:3: Cost: expected at most 2 decimals in EUR, got "12.505"',
        'spending.csv:3: Date: expected a day YYYY-MM-DD, got "3.11.2026"',
        'spending.csv:4: Cost: expected an amount like 12.50, got ""',
        'spending.csv:4: Date: expected a day YYYY-MM-DD, got "2026-02-30"',
        'spending.csv:5: Cost: expected 0 or more, got "-5"',
        'spending.csv:5: What: expected no control characters, got "Fu\\x07ses"',
        "spending.csv:6: expected 3 cells, got 2",
        'spending.csv:7: Cost: expected an amount like 12.50, got "1e3"',
        'spending.csv:7: Date: expected a day YYYY-MM-DD, got "20261103"',
    ]


@pytest.mark.parametrize(
    ("amount", "said"),
    [
        ("12.50", 'expected an amount like 12,50, got "12.50"'),
        ("1.250,00", 'expected an amount like 12,50, got "1.250,00"'),
        ("12,505", 'expected at most 2 decimals in EUR, got "12.505"'),
        ("1,2,3", 'expected an amount like 12,50, got "1,2,3"'),
    ],
)
def test_wrong_amounts_with_a_comma(tmp_path: Path, amount: str, said: str) -> None:
    path = save(tmp_path, f"Date;Cost;What\n2026-11-03;{amount};Fuses\n")
    with pytest.raises(InvalidSpending) as caught:
        read_spending(path, COLUMNS, EUR, decimal_comma=True)
    assert str(caught.value) == f"spending.csv:2: Cost: {said}"


def test_commas_are_no_decimal_points_unless_told(tmp_path: Path) -> None:
    path = save(tmp_path, "Date;Cost;What\n2026-11-03;12,50;Fuses\n")
    with pytest.raises(InvalidSpending, match=r'like 12\.50, got "12,50"'):
        read_spending(path, COLUMNS, EUR)


@pytest.mark.parametrize(
    ("content", "said"),
    [
        ("", "spending.csv: empty; expected a header like date, cost, what, ..."),
        (
            "Date,Price\n2026-11-03,1\n",
            "spending.csv:1: Cost: no such column; there are date, price\n"
            "spending.csv:1: What: no such column; there are date, price",
        ),
        (
            b"Date,Cost,What\n\xff,1,x\n",
            "spending.csv:2: expected UTF-8 text, got byte 0xff; save as UTF-8",
        ),
    ],
)
def test_a_table_that_is_none_is_told(
    tmp_path: Path, content: str | bytes, said: str
) -> None:
    with pytest.raises(InvalidSpending) as caught:
        read_spending(save(tmp_path, content), COLUMNS, EUR)
    assert str(caught.value) == said


def test_a_file_that_is_not_there_is_told(tmp_path: Path) -> None:
    with pytest.raises(InvalidSpending, match=r"spending\.csv: no such file"):
        read_spending(tmp_path / "spending.csv", COLUMNS, EUR)


@pytest.mark.parametrize(
    ("columns", "said"),
    [
        ({"day": "Date"}, "expected the name of the column with the amount"),
        ({"amount": "Cost"}, "expected the name of the column with the day"),
        ({**COLUMNS, "price": "Cost"}, 'no entry of spending has "price"; it has day,'),
    ],
)
def test_a_map_that_makes_no_sense_is_refused(
    tmp_path: Path, columns: dict[str, str], said: str
) -> None:
    with pytest.raises(InvalidRequest, match=said):
        read_spending(save(tmp_path, TABLE), columns, EUR)


@pytest.mark.parametrize("day_format", ["%d.%m.", "%H:%M", "day", "%Q", "%"])
def test_a_format_that_names_no_day_is_refused(tmp_path: Path, day_format: str) -> None:
    with pytest.raises(InvalidRequest, match="does not say how days are written"):
        read_spending(save(tmp_path, TABLE), COLUMNS, EUR, day_format=day_format)


def test_a_table_without_rows_holds_nothing(tmp_path: Path) -> None:
    assert read_spending(save(tmp_path, "Date,Cost,What\n"), COLUMNS, EUR) == ()
