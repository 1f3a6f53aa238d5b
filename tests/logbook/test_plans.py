"""Plans that are kept stay as they were."""

from pathlib import Path

import pytest

from partsplan.domain import Month
from partsplan.errors import InvalidRequest
from partsplan.logbook import FILE, append, keep_plan, kept_plans, read
from tests.logbook.appending import NOW, happening


def test_plans_are_kept_in_order_beside_the_entries(tmp_path: Path) -> None:
    path = tmp_path / FILE
    assert kept_plans(path) == ()
    first = keep_plan(path, '{"schema": 1}', start=Month(2027, 3), now=NOW)
    append(path, [happening("one")], now=NOW)
    second = keep_plan(path, '{"schema": 1, "ä": "ß"}', start=Month(2027, 4), now=NOW)
    assert kept_plans(path) == (first, second)
    assert (second.number, second.start) == (2, Month(2027, 4))
    assert second.text == '{"schema": 1, "ä": "ß"}'
    assert [entry.number for entry in read(path)] == [1]


def test_a_plan_that_cannot_be_stored_is_refused(tmp_path: Path) -> None:
    with pytest.raises(InvalidRequest, match="the plan cannot be kept"):
        keep_plan(tmp_path / FILE, "\udcff", start=Month(2027, 3), now=NOW)
    assert kept_plans(tmp_path / FILE) == ()
