"""Why a plan is what it is."""

from partsplan.explanation.burden import points_borne
from partsplan.explanation.curve import curve
from partsplan.explanation.departures import departures, wishes
from partsplan.explanation.difference import compare_plans, same_jobs
from partsplan.explanation.inputs import differing_inputs
from partsplan.explanation.mixing import with_inputs
from partsplan.explanation.parking import parkings, spared
from partsplan.explanation.questions import AskAll, Question, Reply, reply
from partsplan.explanation.sensitivity import sensitivity
from partsplan.explanation.shortfalls import shortfalls
from partsplan.explanation.skips import skips
from partsplan.explanation.whatif import changed, disobeyed
from partsplan.explanation.why import subjects, why
from partsplan.explanation.why_different import Search, why_changed, why_different

__all__ = [
    "AskAll",
    "Question",
    "Reply",
    "Search",
    "changed",
    "compare_plans",
    "curve",
    "departures",
    "differing_inputs",
    "disobeyed",
    "parkings",
    "points_borne",
    "reply",
    "same_jobs",
    "sensitivity",
    "shortfalls",
    "skips",
    "spared",
    "subjects",
    "why",
    "why_changed",
    "why_different",
    "wishes",
    "with_inputs",
]
