"""Cuts on free shipping: every order of whole jobs keeps them, some shares do not."""

from itertools import product

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from partsplan.planning.goods_cuts import goods_cuts
from partsplan.planning.matrix import Floats, Matrix, Places
from partsplan.planning.program import Program

FREE = 0


def order(goods: list[int], enough: int) -> tuple[Matrix, dict[int, int]]:
    """Jobs from one supplier, and free shipping from so many goods on."""
    program = Program()
    free = program.binary("free shipping", common=True)
    jobs = [program.binary(f"job {place}") for place in range(len(goods))]
    terms = [
        (job, float(min(one, enough))) for job, one in zip(jobs, goods, strict=True)
    ]
    program.row("goods", [*terms, (free, -float(enough))], low=0.0)
    return Matrix.of(program), {free: 0}


def orders(goods: list[int], enough: int, bundle: Places) -> list[Floats]:
    """Every choice of at most one job a bundle, with free shipping where it is had."""
    found = []
    for jobs in product((0.0, 1.0), repeat=len(goods)):
        taken = bundle[1:][np.array(jobs) > 0]
        if len(set(taken)) < len(taken):
            continue
        found.append(np.array([0.0, *jobs]))
        if np.dot(jobs, goods) >= enough:
            found.append(np.array([1.0, *jobs]))
    return found


@given(
    goods=st.lists(st.integers(1, 60), min_size=2, max_size=6),
    enough=st.integers(20, 100),
    shares=st.lists(st.floats(0, 1), min_size=7, max_size=7),
    bundles=st.integers(1, 6),
)
def test_every_whole_order_keeps_every_cut(
    goods: list[int], enough: int, shares: list[float], bundles: int
) -> None:
    matrix, free_rows = order(goods, enough)
    bundle = np.array([-1, *(place % bundles for place in range(len(goods)))])
    values = np.array(shares[: len(goods) + 1])
    for cut in goods_cuts(matrix, free_rows, bundle, values):
        assert cut.figures @ values[cut.columns] > cut.high
        for whole in orders(goods, enough, bundle):
            assert cut.figures @ whole[cut.columns] <= cut.high + 1e-9


def test_one_job_alone_buys_no_share_of_free_shipping() -> None:
    # 60 of 100: the row of the model would let 0.6 of the shipping go
    matrix, free_rows = order([60, 60], 100)
    bundle = np.array([-1, 0, 1])
    cuts = list(goods_cuts(matrix, free_rows, bundle, np.array([0.6, 1.0, 0.0])))
    assert len(cuts) == 1
    assert dict(zip(cuts[0].columns, cuts[0].figures, strict=True)) == {
        2: pytest.approx(-1.0),
        FREE: 1.0,
    }
