"""What is told while a plan is made."""

from pathlib import Path

from partsplan import usecases
from partsplan.domain import Currency, Stage
from partsplan.usecases.live import in_units

HOUSEHOLD = Path(__file__).parents[2] / "scenarios" / "household"
Told = tuple[str, float, float | None, float | None]


def test_net_worth_is_told_in_whole_units_and_counts_as_they_are() -> None:
    told: list[Told] = []

    def note(
        stage: str, seconds: float, best: float | None, bound: float | None
    ) -> None:
        told.append((stage, seconds, best, bound))

    listener = in_units(note, Currency("EUR", 2))
    assert listener is not None
    listener(Stage.WORTH.value, 1.0, 12_300.0, None)
    listener(Stage.SAFETY.value, 2.0, 3.0, 1.0)
    assert told == [("worth", 1.0, 123.0, None), ("safety", 2.0, 3.0, 1.0)]
    assert in_units(None, Currency("EUR", 2)) is None


def test_a_plan_is_never_told_better_than_its_bound() -> None:
    told: list[Told] = []

    def note(
        stage: str, seconds: float, best: float | None, bound: float | None
    ) -> None:
        told.append((stage, seconds, best, bound))

    answer = usecases.plan(HOUSEHOLD, progress=note)
    assert answer.garage.currency.unit == 100
    for stage, _, best, bound in told:
        if stage == "worth" and best is not None and bound is not None:
            assert best <= bound + 0.01
