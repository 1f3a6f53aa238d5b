from dataclasses import replace

from partsplan.domain import Month, Needs
from partsplan.reports import needs_plain, plan_plain
from tests.reports.made import GARAGE, PLAN, SHORTFALLS, SKIPS


def records() -> list[list[str]]:
    text = plan_plain(GARAGE, PLAN, SKIPS, SHORTFALLS)
    return [line.split("\t") for line in text.splitlines()]


def test_each_line_begins_with_what_it_is() -> None:
    kinds = [record[0] for record in records()]
    assert kinds == (
        ["plan"]
        + ["stage"] * 4
        + ["job"] * 2
        + ["tool"]
        + ["order"] * 2
        + ["month"] * 3
        + ["skipped"] * 2
        + ["shortfall"] * 3
        + ["assumed", "warning"]
    )


def test_a_job_is_one_record() -> None:
    assert records()[6] == [
        "job",
        "ecu-exchange",
        "ecu",
        "exchange",
        "mill",
        "2027-02",
        "2027-03",
        "210.00",
        "80.00",
        "82.47",
        "1",
    ]


def test_records_of_a_kind_have_the_same_fields() -> None:
    lengths: dict[str, set[int]] = {}
    for record in records():
        lengths.setdefault(record[0], set()).add(len(record))
    assert all(len(found) == 1 for found in lengths.values())


def test_tabs_and_line_breaks_in_words_do_not_split_a_record() -> None:
    garage = replace(GARAGE, name="two\told\ncars", warnings=("a\nb",))
    text = plan_plain(garage, PLAN, (), ())
    assert text.splitlines()[0].split("\t")[1] == "two old cars"
    assert text.splitlines()[-1] == "warning\ta b"


def test_an_impossible_plan_is_two_records() -> None:
    text = needs_plain(GARAGE, Needs(month=Month(2027, 2), money=12300))
    assert text.splitlines() == [
        "plan\ttwo old cars\tEUR\tinfeasible",
        "needs\t2027-02\t123.00",
    ]
