"""The Wilson interval against published ones."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from partsplan.ledger.wilson import wilson

# R. G. Newcombe, Two-sided confidence intervals for the single proportion, Statistics
# in Medicine 17 (1998), table I, method 3 (score, without correction), 95 %; from
# memory.
NEWCOMBE = {
    (81, 263): (0.2553, 0.3662),
    (15, 148): (0.0624, 0.1605),
    (0, 20): (0, 0.1611),
    (1, 29): (0.0061, 0.1718),
}


@pytest.mark.parametrize(("counts", "ends"), NEWCOMBE.items())
def test_published_intervals(
    counts: tuple[int, int], ends: tuple[float, float]
) -> None:
    assert wilson(*counts, confidence=0.95) == pytest.approx(ends, abs=5e-5)


@given(cases=st.integers(1, 1000), data=st.data())
def test_the_interval_holds_the_share(cases: int, data: st.DataObject) -> None:
    hits = data.draw(st.integers(0, cases))
    low, high = wilson(hits, cases, confidence=0.9)
    assert 0 <= low <= hits / cases <= high <= 1
    assert low < high
    wider = wilson(hits, cases, confidence=0.99)
    assert wider[0] <= low
    assert high <= wider[1]
    mirrored = wilson(cases - hits, cases, confidence=0.9)
    assert mirrored == pytest.approx((1 - high, 1 - low))
