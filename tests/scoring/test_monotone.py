"""Whatever else is so, a worse fault is never worth less to be rid of."""

from dataclasses import replace
from fractions import Fraction
from itertools import pairwise
from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from partsplan.domain import Fault, Likelihood, Month, Severity, Use
from partsplan.scoring import worth
from tests.support.building import fault, garage, vehicle

SHARES = st.fractions(0, 1, max_denominator=100)
FAULTS = st.builds(
    fault,
    points=st.none() | st.fractions(0, 100, max_denominator=10),
    severity=st.none() | st.sampled_from(Severity),
    likelihood=st.sampled_from(Likelihood),
    drivability=st.integers(0, 4),
    loss_per_month=st.integers(0, 10**6),
    damage_chance=SHARES,
    damage_cost=st.integers(0, 10**6),
    enjoyment=st.fractions(0, 10, max_denominator=10),
    growth=SHARES,
)
VEHICLES = st.builds(
    vehicle,
    use=st.sampled_from(Use),
    keep_months=st.integers(1, 12),
    driven_from=st.sampled_from((None, Month(1900, 1), Month(2027, 3))),
)


def worths(car: Any, one: Fault) -> tuple[Fraction, ...]:
    return worth(garage(vehicles=(car,), faults=(one,), look_beyond=6), one)


def never_falls(car: Any, one: Fault, column: str, values: list[Any]) -> None:
    """From one value of the column to the next, no month is worth less."""
    rows = [worths(car, replace(one, **{column: value})) for value in values]
    for milder, worse in pairwise(rows):
        assert all(m <= w for m, w in zip(milder, worse, strict=True))


@given(VEHICLES, FAULTS)
def test_worse_severity(car: Any, one: Fault) -> None:
    never_falls(car, one, "severity", [None, *reversed(Severity)])


@given(VEHICLES, FAULTS)
def test_worse_likelihood(car: Any, one: Fault) -> None:
    never_falls(car, one, "likelihood", list(reversed(Likelihood)))


@given(VEHICLES, FAULTS)
def test_worse_drivability(car: Any, one: Fault) -> None:
    never_falls(car, one, "drivability", list(range(5)))


@given(VEHICLES, FAULTS, st.lists(SHARES, min_size=2, max_size=4).map(sorted))
def test_faster_growth(car: Any, one: Fault, growths: list[Fraction]) -> None:
    never_falls(car, one, "growth", growths)


@given(VEHICLES, FAULTS, st.lists(st.integers(0, 10**7), min_size=2).map(sorted))
def test_greater_loss(car: Any, one: Fault, losses: list[int]) -> None:
    never_falls(car, one, "loss_per_month", losses)


@given(VEHICLES, FAULTS)
def test_worth_never_falls_with_the_months(car: Any, one: Fault) -> None:
    rising = worths(car, one)
    assert list(rising) == sorted(rising)


@given(VEHICLES, FAULTS)
def test_points_stay_within_their_scale(car: Any, one: Fault) -> None:
    penniless = replace(one, loss_per_month=0, damage_cost=0)
    assert all(0 <= month <= 100 * 100 for month in worths(car, penniless))
