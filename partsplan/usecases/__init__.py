"""What somebody can ask for, one verb a file; nothing here prints.

A ``folder`` may be a workbook, too, where nothing else is said.
"""

from partsplan.usecases.against import against
from partsplan.usecases.beside import beside
from partsplan.usecases.bring_in import bring_in
from partsplan.usecases.calendar import CalendarAnswer, calendar
from partsplan.usecases.check import check
from partsplan.usecases.compare import compare, fault_ids, option_ids, vehicle_ids
from partsplan.usecases.curve import CurveAnswer, curve
from partsplan.usecases.diagnose import diagnose
from partsplan.usecases.enter import Told, enter, subjects
from partsplan.usecases.export import export
from partsplan.usecases.faults import faults
from partsplan.usecases.from_codes import CodesAnswer, from_codes
from partsplan.usecases.keep import keep
from partsplan.usecases.kinds import kinds
from partsplan.usecases.lessons import lessons
from partsplan.usecases.live import Progress
from partsplan.usecases.many import asker, executor
from partsplan.usecases.now import now
from partsplan.usecases.plan import PlanAnswer, plan
from partsplan.usecases.report import CURVE_STEPS, ReportAnswer, report
from partsplan.usecases.restore import restore
from partsplan.usecases.risk import RiskAnswer, risk
from partsplan.usecases.start import start
from partsplan.usecases.steady import SteadyAnswer, steady
from partsplan.usecases.whatif import WhatIfAnswer, whatif
from partsplan.usecases.where_it_stands import where_it_stands
from partsplan.usecases.why import WhyAnswer, why
from partsplan.usecases.words import words
from partsplan.usecases.workbook import as_folder, as_workbook, starter_workbook

__all__ = [
    "CURVE_STEPS",
    "CalendarAnswer",
    "CodesAnswer",
    "CurveAnswer",
    "PlanAnswer",
    "Progress",
    "ReportAnswer",
    "RiskAnswer",
    "SteadyAnswer",
    "Told",
    "WhatIfAnswer",
    "WhyAnswer",
    "against",
    "as_folder",
    "as_workbook",
    "asker",
    "beside",
    "bring_in",
    "calendar",
    "check",
    "compare",
    "curve",
    "diagnose",
    "enter",
    "executor",
    "export",
    "fault_ids",
    "faults",
    "from_codes",
    "keep",
    "kinds",
    "lessons",
    "now",
    "option_ids",
    "plan",
    "report",
    "restore",
    "risk",
    "start",
    "starter_workbook",
    "steady",
    "subjects",
    "vehicle_ids",
    "whatif",
    "where_it_stands",
    "why",
    "words",
]
