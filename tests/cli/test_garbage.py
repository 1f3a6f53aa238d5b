import gc
from collections.abc import Iterator

import pytest

from partsplan.cli.garbage import SELDOM, collect_seldom
from partsplan.pricing import offers
from partsplan.usecases import many
from tests.benchmarks.generator import made_up_garage


@pytest.fixture(autouse=True)
def _usual_thresholds() -> Iterator[None]:
    usual = gc.get_threshold()
    yield
    gc.set_threshold(*usual)


def test_facts_are_not_looked_through_while_more_are_made() -> None:
    garage = made_up_garage(300, 12, 1)
    gc.collect()
    collect_seldom()
    before = gc.get_stats()
    assert len(offers(garage)) > 5000
    assert gc.get_stats()[1:] == before[1:]


def test_further_processes_collect_as_seldom_as_this_one() -> None:
    collect_seldom()
    with many.executor(2) as there:
        assert there.submit(gc.get_threshold).result() == SELDOM
