"""Which sums a curve tries."""

from pathlib import Path

import pytest

from partsplan.errors import InvalidRequest
from partsplan.usecases import CurveAnswer, curve, steady
from partsplan.usecases.many import InTurn
from tests.cli.running import write_garage

BUDGET = 'budget = "100.00"'


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A small garage with 100.00 a month."""
    return write_garage(tmp_path / "garage")


def ask(folder: Path, **words: object) -> CurveAnswer:
    return curve(folder, executor=InTurn(), **words)  # type: ignore[arg-type]


def sums(answer: CurveAnswer) -> list[int]:
    return [point.budget for point in answer.curve.points]


def test_from_half_to_twice_the_budget_in_whole_sums(folder: Path) -> None:
    answer = ask(folder)
    assert answer.usual == 10000
    assert answer.curve.resolution == 100
    tried = sums(answer)
    assert (tried[0], tried[-1]) == (5000, 20000)
    assert 10000 in tried
    assert all(one % 100 == 0 for one in tried)


def test_a_number_of_sums_evenly_apart_and_the_garages_own(folder: Path) -> None:
    answer = ask(folder, lowest="0", highest="300", steps=4)
    assert sums(answer) == [0, 10000, 20000, 30000]
    answer = ask(folder, lowest="10.01", highest="20.02", steps=3)
    assert sums(answer) == [1001, 1502, 2002]
    answer = ask(folder, lowest="90", highest="130", steps=2)
    assert sums(answer) == [9000, 10000, 13000]


def test_a_budget_by_month_has_no_usual_sum(folder: Path) -> None:
    text = (folder / "garage.toml").read_text()
    listed = text.replace(BUDGET, 'budget = ["100.00", "50.00"]')
    (folder / "garage.toml").write_text(listed)
    assert ask(folder, steps=2).usual is None


def test_a_garage_without_money_can_be_asked_about_sums(folder: Path) -> None:
    text = (folder / "garage.toml").read_text()
    poor = text.replace(BUDGET, 'budget = "0"\nmoney_per_point = "0.50"')
    (folder / "garage.toml").write_text(poor)
    assert sums(ask(folder, highest="50", steps=2)) == [0, 5000]
    with pytest.raises(InvalidRequest, match=r"larger sum .* got 0\.00 to 0\.00"):
        ask(folder)
    assert steady(folder, executor=InTurn()).sensitivity is not None


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ({"lowest": "much"}, "from: expected an amount"),
        ({"highest": "1.234"}, "to: expected at most 2 decimals"),
        ({"lowest": "-1"}, "from: expected 0 or more"),
        ({"lowest": "50", "highest": "40"}, r"larger sum .* got 50\.00 to 40\.00"),
    ],
)
def test_sums_that_make_no_sense_are_refused(
    folder: Path, words: dict[str, str], said: str
) -> None:
    with pytest.raises(InvalidRequest, match=said):
        ask(folder, **words)
