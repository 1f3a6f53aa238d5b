"""What must hold between rows."""

from pathlib import Path

import pytest

from tests.intake.plain_garage import PLAIN, Files, problems, with_cells


def faults(*rows: str) -> Files:
    """The plain garage with more faults of vehicle v1; rows are ``id,after``."""
    width = PLAIN["faults.csv"].splitlines()[0].count(",")
    lines = [
        f"{name},v1,Something,{',' * (width - 5)}{after},,open"
        for name, after in (row.split(",") for row in rows)
    ]
    return {**PLAIN, "faults.csv": PLAIN["faults.csv"] + "\n".join(lines) + "\n"}


def test_an_id_that_comes_twice_is_told_with_its_first_line(tmp_path: Path) -> None:
    assert problems(tmp_path, with_cells("faults.csv", 4, id="f1", vehicle="v1")) == [
        'faults.csv:4: id: expected each id once, got "f1" again (first in line 2)'
    ]


@pytest.mark.parametrize(
    ("rows", "message"),
    [
        (("a,c", "b,a", "c,b"), "5: after: goes round in a circle: a after c after b"),
        (("a,f1", "b,d", "d,b;a"), "6: after: goes round in a circle: b after d"),
    ],
)
def test_a_circle_is_named_from_its_first_fault(
    tmp_path: Path, rows: tuple[str, ...], message: str
) -> None:
    (found,) = problems(tmp_path, faults(*rows))
    first = message.partition("circle: ")[2][0]
    assert found == f"faults.csv:{message} after {first}"


def test_every_circle_of_its_own_is_named(tmp_path: Path) -> None:
    found = problems(tmp_path, faults("a,b", "b,a", "c,d", "d,c"))
    assert [line.rpartition(": ")[2] for line in found] == [
        "a after b after a",
        "c after d after c",
    ]


def test_a_long_circle_is_cut_short_and_needs_no_deep_stack(tmp_path: Path) -> None:
    rows = [f"n{number},n{(number + 1) % 5000}" for number in range(5000)]
    (found,) = problems(tmp_path, faults(*rows))
    circle = " after ".join(f"n{number}" for number in range(8))
    assert found == (
        f"faults.csv:5: after: goes round in a circle: {circle} after ... after n0"
    )


def test_a_long_line_of_faults_is_no_circle(tmp_path: Path) -> None:
    rows = [f"n{number},n{number + 1}" for number in range(3000)]
    (found,) = problems(tmp_path, faults(*rows))
    assert found.startswith('faults.csv:3004: after: no fault "n3000" in faults.csv')


def test_all_problems_of_all_files_come_at_once_in_file_order(tmp_path: Path) -> None:
    files = {
        **PLAIN,
        "garage.toml": PLAIN["garage.toml"].replace("hours = 10", "hours = -1"),
        "faults.csv": with_cells("faults.csv", 4, drivability="9")["faults.csv"],
        "options.csv": with_cells("options.csv", 2, fixes="f9")["options.csv"],
        "tools.csv": "id,name\nt1\n",
    }
    assert problems(tmp_path, files) == [
        'faults.csv:4: drivability: expected 0-4, got "9"',
        'garage.toml:6: hours: expected 0 or more, got "-1"',
        'options.csv:2: fixes: no fault "f9" in faults.csv',
        "tools.csv:2: expected 2 cells, got 1",
    ]


def test_nothing_is_said_of_names_in_a_table_that_cannot_be_read(
    tmp_path: Path,
) -> None:
    files = {**PLAIN, "suppliers.csv": "idd,name\ns1,x\ns2,y\n"}
    assert problems(tmp_path, files) == [
        'suppliers.csv:1: id: needed column is missing; is it "idd"?'
    ]


def test_a_garage_without_vehicles_is_refused(tmp_path: Path) -> None:
    header = {
        name: PLAIN[name].splitlines()[0] for name in ("vehicles.csv", "faults.csv")
    }
    files = {
        "garage.toml": PLAIN["garage.toml"],
        "options.csv": "id,fixes,route,price\n",
        **header,
    }
    assert problems(tmp_path, files) == [
        "vehicles.csv: expected at least one vehicle, got none"
    ]


def test_more_faults_than_the_limit_are_refused(tmp_path: Path) -> None:
    rows = "".join(f"f{number},v1,x\n" for number in range(20_001))
    files = {
        "garage.toml": PLAIN["garage.toml"],
        "vehicles.csv": PLAIN["vehicles.csv"],
        "faults.csv": "id,vehicle,title\n" + rows,
        "options.csv": "id,fixes,route,price\n",
    }
    assert problems(tmp_path, files) == [
        "faults.csv: expected at most 20,000 faults, got 20,001"
    ]


def test_thousands_of_wrong_names_are_told_without_delay(tmp_path: Path) -> None:
    rows = "".join(f"f{number},v{number},x\n" for number in range(8000))
    cars = "".join(f"car{number},Car\n" for number in range(2000))
    files = {
        "garage.toml": PLAIN["garage.toml"],
        "vehicles.csv": "id,name\n" + cars,
        "faults.csv": "id,vehicle,title\n" + rows,
        "options.csv": "id,fixes,route,price\n",
    }
    assert len(problems(tmp_path, files)) == 8000
