"""What happened becomes where things stand, what is owed and what is to be done."""

from partsplan.ledger.against import against
from partsplan.ledger.contradictions import contradictions
from partsplan.ledger.duties import duties
from partsplan.ledger.fold import fold
from partsplan.ledger.form import form_objections
from partsplan.ledger.lessons import lessons
from partsplan.ledger.money import deposits_back, money_now, owed
from partsplan.ledger.next_garage import next_garage
from partsplan.ledger.quoted import as_quoted
from partsplan.ledger.subjects import subjects
from partsplan.ledger.uncured import uncured
from partsplan.ledger.undoing import holding

__all__ = [
    "against",
    "as_quoted",
    "contradictions",
    "deposits_back",
    "duties",
    "fold",
    "form_objections",
    "holding",
    "lessons",
    "money_now",
    "next_garage",
    "owed",
    "subjects",
    "uncured",
]
