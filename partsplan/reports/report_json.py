"""What a report tells as JSON, schema version 1: money in minor units."""

from partsplan.domain import Report
from partsplan.reports.answers_json import options_data
from partsplan.reports.curve_json import curve_data
from partsplan.reports.logbook_json import duty_data
from partsplan.reports.plain_data import dumped, plain
from partsplan.reports.plan_json import plan_data


def report_json(report: Report) -> str:
    """The plan as ``plan --json`` has it, and the figures that stand beside it."""
    garage = report.garage
    curve = report.curve
    return dumped(
        {
            **plan_data(
                garage,
                report.plan,
                report.skips,
                report.shortfalls,
                report.faithfulness,
            ),
            "today": plain(report.now.today),
            "duties": [duty_data(duty) for duty in report.now.duties],
            "points_borne": plain(report.borne),
            "points_borne_without": plain(report.borne_without),
            "comparisons": [options_data(garage, one) for one in report.comparisons],
            **({"curve": curve_data(garage, curve, report.usual)} if curve else {}),
        }
    )
