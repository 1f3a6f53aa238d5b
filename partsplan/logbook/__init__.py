"""The logbook: one file beside the garage, to which entries are only ever added."""

from partsplan.logbook.contents import Export
from partsplan.logbook.entries import FILE, Check, append, read
from partsplan.logbook.exporting import as_csv, as_json, restore, restored
from partsplan.logbook.importing import FIELDS, read_spending
from partsplan.logbook.place import beside
from partsplan.logbook.plans import KeptPlan, keep_plan, kept_plans

__all__ = [
    "FIELDS",
    "FILE",
    "Check",
    "Export",
    "KeptPlan",
    "append",
    "as_csv",
    "as_json",
    "beside",
    "keep_plan",
    "kept_plans",
    "read",
    "read_spending",
    "restore",
    "restored",
]
