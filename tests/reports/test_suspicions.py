from dataclasses import replace
from fractions import Fraction

import pytest

from partsplan.domain import Cause
from partsplan.reports.suspicions import unchecked
from tests.reports.made import GARAGE, PLAN

JOB = PLAN.jobs[0]
FAULT = JOB.faults[0]


def lines(*causes: Cause) -> list[str]:
    return list(unchecked(replace(GARAGE, causes=causes), PLAN))


def cause(name: str, chance: str, cure: str | None = None) -> Cause:
    return Cause(fault=FAULT, cause=name, chance=Fraction(chance), cure=cure)


def test_a_job_for_one_of_several_suspicions_is_told() -> None:
    (line,) = lines(cause("worn", "0.4", JOB.option), cause("loose", "0.6"))
    assert f"({FAULT}): 2 causes are suspected" in line
    assert f"{JOB.option} cures what is 40 % likely" in line
    assert "partsplan diagnose" in line


def test_a_job_that_no_suspicion_names_is_told() -> None:
    (line,) = lines(cause("loose", "0.5"))
    assert "1 cause is suspected" in line
    assert f"{JOB.option} is named as the cure of none" in line


@pytest.mark.parametrize("causes", [(), (cause("worn", "1", JOB.option),)])
def test_what_is_sure_needs_no_check(causes: tuple[Cause, ...]) -> None:
    assert lines(*causes) == []
