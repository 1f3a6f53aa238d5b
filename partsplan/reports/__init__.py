"""Answers as people and other programs read them: tables, JSON, plain lines."""

from partsplan.reports.against_json import against_json
from partsplan.reports.against_tables import against_tables
from partsplan.reports.answers_json import check_json, comparison_json, faults_json
from partsplan.reports.calendar import calendar_ics, calendar_json
from partsplan.reports.calendar_days import occasions
from partsplan.reports.catalogue_tables import (
    kinds_json,
    kinds_tables,
    words_json,
    words_tables,
)
from partsplan.reports.check_text import check_text
from partsplan.reports.codes_json import codes_json
from partsplan.reports.codes_notes import left_out_text
from partsplan.reports.codes_tables import codes_tables
from partsplan.reports.compare_tables import compare_tables
from partsplan.reports.csv_tables import csv_tables
from partsplan.reports.curve_json import curve_json
from partsplan.reports.curve_tables import curve_tables
from partsplan.reports.diagnosis_json import diagnosis_json
from partsplan.reports.diagnosis_tables import diagnosis_tables
from partsplan.reports.difference_json import beside_json, whatif_json
from partsplan.reports.difference_tables import beside_tables, whatif_tables
from partsplan.reports.entered_text import entered_text
from partsplan.reports.entries_tables import entries_plain, entries_tables
from partsplan.reports.fault_tables import fault_tables
from partsplan.reports.html import report_html
from partsplan.reports.lesson_json import lesson_json
from partsplan.reports.lesson_tables import lesson_tables
from partsplan.reports.locales import LOCALES, PLAIN, Locale, written_in
from partsplan.reports.logbook_json import (
    brought_in_json,
    entered_json,
    entries_json,
    now_json,
    restored_json,
)
from partsplan.reports.moved_text import brought_in_text, restored_text
from partsplan.reports.now_plain import now_plain
from partsplan.reports.now_tables import now_tables
from partsplan.reports.plan_json import needs_json, plan_json
from partsplan.reports.plan_plain import needs_plain, plan_plain
from partsplan.reports.plan_sheets import plan_csv, plan_workbook
from partsplan.reports.plan_tables import needs_tables, plan_tables
from partsplan.reports.report_json import report_json
from partsplan.reports.risk_tables import risk_json, risk_tables
from partsplan.reports.start_text import started_json, started_text
from partsplan.reports.steady_json import steady_json
from partsplan.reports.steady_tables import steady_tables
from partsplan.reports.why_json import why_json
from partsplan.reports.why_text import why_text
from partsplan.reports.words import sentence
from partsplan.reports.workbook_text import (
    as_folder_json,
    as_folder_text,
    as_workbook_json,
    as_workbook_text,
)

__all__ = [
    "LOCALES",
    "PLAIN",
    "Locale",
    "against_json",
    "against_tables",
    "as_folder_json",
    "as_folder_text",
    "as_workbook_json",
    "as_workbook_text",
    "beside_json",
    "beside_tables",
    "brought_in_json",
    "brought_in_text",
    "calendar_ics",
    "calendar_json",
    "check_json",
    "check_text",
    "codes_json",
    "codes_tables",
    "compare_tables",
    "comparison_json",
    "csv_tables",
    "curve_json",
    "curve_tables",
    "diagnosis_json",
    "diagnosis_tables",
    "entered_json",
    "entered_text",
    "entries_json",
    "entries_plain",
    "entries_tables",
    "fault_tables",
    "faults_json",
    "kinds_json",
    "kinds_tables",
    "left_out_text",
    "lesson_json",
    "lesson_tables",
    "needs_json",
    "needs_plain",
    "needs_tables",
    "now_json",
    "now_plain",
    "now_tables",
    "occasions",
    "plan_csv",
    "plan_json",
    "plan_plain",
    "plan_tables",
    "plan_workbook",
    "report_html",
    "report_json",
    "restored_json",
    "restored_text",
    "risk_json",
    "risk_tables",
    "sentence",
    "started_json",
    "started_text",
    "steady_json",
    "steady_tables",
    "whatif_json",
    "whatif_tables",
    "why_json",
    "why_text",
    "words_json",
    "words_tables",
    "written_in",
]
