"""Sentences for what is to be done by which day."""

from datetime import date

from partsplan.domain import (
    AskForCredit,
    AskForPart,
    ClaimWarranty,
    CureFault,
    DoNotDrive,
    Duty,
    FitPart,
    Garage,
    PayInstalment,
    QuoteEnds,
    ReturnMissed,
    SendBack,
)
from partsplan.reports.figures import day_name, listed, price
from partsplan.reports.names import LICENSED, fault_name, of_workshop, option_is_flagged

_SINCE = (AskForCredit, AskForPart, FitPart, ReturnMissed)
"""Duties whose day is the one on which they began."""


def duty_line(garage: Garage, duty: Duty, today: date) -> str:
    """A duty with its day."""
    if isinstance(duty, DoNotDrive):
        return duty_sentence(garage, duty)
    if isinstance(duty, _SINCE):
        when = f"Since {day_name(duty.day)}"
    elif duty.day < today:
        when = f"OVERDUE since {day_name(duty.day)}"
    else:
        when = f"By {day_name(duty.day)}"
    return f"{when}: {duty_sentence(garage, duty)}"


def duty_sentence(garage: Garage, duty: Duty) -> str:
    """What is to be done."""
    match duty:
        case DoNotDrive(vehicle=vehicle, faults=faults):
            names = listed(_fault(garage, fault) for fault in faults)
            return f"{garage.vehicle[vehicle].name}, until this is cured: {names}."
        case CureFault(fault=fault, milestone=None):
            return f"cure {_fault(garage, fault)}."
        case CureFault(fault=fault, milestone=milestone):
            return f"cure {_fault(garage, fault)}, for the milestone {milestone}."
        case SendBack(option=option, deposit=deposit):
            lost = price(garage.currency, deposit)
            return f"send the old unit of {option} back, or lose {lost}."
        case ReturnMissed(option=option, deposit=deposit):
            lost = price(garage.currency, deposit)
            return (
                f"the return of the old unit of {option} is missed; {lost} are lost "
                "unless the supplier relents."
            )
        case AskForCredit(option=option, deposit=deposit, sent=sent):
            awaited = price(garage.currency, deposit)
            return (
                f"ask for the credit of {awaited} for the old unit of {option}, sent "
                f"back on {day_name(sent)}."
            )
        case AskForPart(option=option):
            if of_workshop(garage, option):
                return f"{option} should have been done; ask the workshop."
            return f"{option} should have arrived; ask where it is."
        case FitPart(option=option):
            mark = LICENSED if option_is_flagged(garage, option) else ""
            return f"{option}{mark} is in hand; fit it."
        case ClaimWarranty(option=option):
            return f"claim {option} under its warranty."
        case PayInstalment(option=option, amount=amount):
            due = price(garage.currency, amount)
            return f"pay {due}, an instalment of {option}."
        case QuoteEnds(option=option, faults=faults):
            names = listed(_fault(garage, fault) for fault in faults)
            return f"order {option}, whose quote ends then; it is for {names}."
    raise TypeError(f"no sentence for {type(duty).__name__}")


def _fault(garage: Garage, fault: str) -> str:
    return fault_name(garage.fault[fault])
