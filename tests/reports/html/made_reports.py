"""Reports on garages and plans that were made by hand."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from typing import Any

from partsplan.domain import Choices, Entry, Garage, Plan, Report
from partsplan.explanation import points_borne
from partsplan.pricing import compare
from partsplan.usecases.now import on_day
from partsplan.usecases.where_it_stands import after
from tests.reports.made import GARAGE, PLAN, SHORTFALLS, SKIPS

TODAY = date(2027, 1, 5)


def made_report(
    garage: Garage = GARAGE,
    plan: Plan = PLAN,
    *,
    entries: Sequence[Entry] = (),
    today: date = TODAY,
    **changes: Any,
) -> Report:
    """What the use-case would gather for them."""
    nothing = Choices(orders={}, tools={})
    report = Report(
        garage=garage,
        plan=plan,
        skips=SKIPS,
        shortfalls=SHORTFALLS,
        faithfulness=None,
        now=on_day(after(garage, entries), today),
        comparisons=tuple(
            compare(garage, fault) for job in plan.jobs for fault in job.faults
        ),
        borne=points_borne(garage, plan.choices),
        borne_without=points_borne(garage, nothing),
    )
    return replace(report, **changes)
