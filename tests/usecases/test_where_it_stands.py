"""What a logbook says is read with the quotes of its garage."""

from datetime import date
from pathlib import Path

import pytest

from partsplan import usecases
from partsplan.domain import Month, MonthMoney, PartState, Plan, Quote
from partsplan.errors import DamagedLogbook, NoKeptPlan
from partsplan.logbook import FILE
from partsplan.usecases.where_it_stands import quotes_of, where_it_stands
from tests.cli.running import write_garage
from tests.support.kept_plans import enter, keep
from tests.support.small_logbook import GARAGE, QUOTES

TODAY = date(2027, 3, 20)


@pytest.fixture
def garage(tmp_path: Path) -> Path:
    return write_garage(tmp_path / "my-garage")


def test_quotes_are_what_pricing_says() -> None:
    assert quotes_of(GARAGE) == QUOTES
    assert quotes_of(GARAGE)["alternator"] == Quote(
        landed=24000, deposit=8000, fitting=2800, core_return=900
    )


def test_without_a_logbook_nothing_happened(garage: Path) -> None:
    ledger = where_it_stands(garage).ledger
    assert (ledger.money, ledger.parts) == ({}, {})
    assert not (garage / FILE).exists()


def test_an_entry_without_a_figure_takes_the_quote(garage: Path) -> None:
    enter(garage, "2027-01-05 ordered hose-new")
    ledger = where_it_stands(garage).ledger
    assert ledger.money == {Month(2027, 1): MonthMoney(spent=3450)}
    assert ledger.parts["hose-new"].state is PartState.ON_THE_WAY


def test_a_damaged_logbook_is_not_passed_over(garage: Path) -> None:
    (garage / FILE).write_bytes(b"no logbook")
    for ask in (usecases.against, usecases.lessons):
        with pytest.raises(DamagedLogbook):
            ask(garage, today=TODAY)


def test_a_plan_carried_out_to_the_letter_differs_in_nothing(garage: Path) -> None:
    plan = keep(garage)
    for job in plan.jobs:
        enter(
            garage,
            f"{plan.start.plus(job.ordered)}-01 ordered {job.option}",
            f"{plan.start.plus(job.ordered)}-02 arrived {job.option}",
            f"{plan.start.plus(job.fitted)}-15 fitted {job.option}",
        )
    _, found = usecases.against(garage, today=TODAY)
    assert len(found.jobs) == len(plan.jobs) > 0
    for one in found.jobs:
        assert (one.late, one.more_money) == (0, 0)
        assert one.more_hours == 0
    assert [month.more_money for month in found.months] == [0] * len(plan.ledger)
    assert found.unplanned == ()


def test_a_calendar_knows_what_was_entered(garage: Path) -> None:
    enter(garage, "2027-01-05 ordered hose-new")
    answer = usecases.calendar(garage)
    assert isinstance(answer.plan, Plan)
    assert list(answer.ledger.parts) == ["hose-new"]


def test_nothing_is_against_a_plan_that_was_not_kept(garage: Path) -> None:
    with pytest.raises(NoKeptPlan, match="plan --keep"):
        usecases.against(garage, today=TODAY)
