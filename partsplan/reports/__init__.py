"""Answers as people and other programs read them: tables, JSON, plain lines."""

from partsplan.reports.answers_json import check_json, comparison_json, faults_json
from partsplan.reports.catalogue_tables import (
    kinds_json,
    kinds_tables,
    words_json,
    words_tables,
)
from partsplan.reports.check_text import check_text
from partsplan.reports.compare_tables import compare_tables
from partsplan.reports.fault_tables import fault_tables
from partsplan.reports.plan_json import needs_json, plan_json
from partsplan.reports.plan_plain import needs_plain, plan_plain
from partsplan.reports.plan_tables import needs_tables, plan_tables
from partsplan.reports.start_text import started_json, started_text
from partsplan.reports.words import sentence

__all__ = [
    "check_json",
    "check_text",
    "compare_tables",
    "comparison_json",
    "fault_tables",
    "faults_json",
    "kinds_json",
    "kinds_tables",
    "needs_json",
    "needs_plain",
    "needs_tables",
    "plan_json",
    "plan_plain",
    "plan_tables",
    "sentence",
    "started_json",
    "started_text",
    "words_json",
    "words_tables",
]
