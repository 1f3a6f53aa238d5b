"""How a plan treats the one that was kept before it, in words."""

from collections.abc import Iterator
from typing import Any

from partsplan.domain import (
    CostsMore,
    Departure,
    Faithfulness,
    Garage,
    LeavesParts,
    NothingLeft,
    NotThatMonth,
    NotWorkedOut,
    Overdue,
    RuledOut,
    Stage,
)
from partsplan.reports.figures import count, listed, month_name, price
from partsplan.reports.paper import Paper
from partsplan.reports.plain_data import plain, reason_data
from partsplan.reports.words import sentence

COUNTED = {
    Stage.DEADLINES: ("more missed deadline", "more missed deadlines"),
    Stage.SAFETY: (
        "more month with a vehicle that must not be driven",
        "more months with a vehicle that must not be driven",
    ),
    Stage.MOBILITY: (
        "more month with a vehicle that cannot be driven",
        "more months with a vehicle that cannot be driven",
    ),
}


def since_kept(page: Paper, garage: Garage, faith: Faithfulness | None) -> None:
    """What moved since the plan that was kept, and why; nothing if none was kept."""
    if faith is None:
        return
    meant = faith.intentions
    page.heading(f"Since plan {meant.number}, kept for {month_name(meant.start)}")
    if faith.kept:
        page.paragraph(f"As intended: {listed(faith.kept)}.")
    if faith.departures:
        page.bullets(_moved(garage, one) for one in faith.departures)
    else:
        page.paragraph("Nothing that was still to be ordered has moved.")
    if faith.given_up:
        given = price(garage.currency, faith.given_up)
        page.paragraph(f"Staying with it gives up {given} of net worth.")


def faith_data(garage: Garage, faith: Faithfulness) -> dict[str, Any]:
    """The same for other programs."""
    return {
        "kept_plan": faith.intentions.number,
        "start": str(faith.intentions.start),
        "as_intended": list(faith.kept),
        "given_up": faith.given_up,
        "moved": [
            {
                "option": one.option,
                "planned": str(one.planned),
                "now": None if one.now is None else str(one.now),
                "reason": _reason_data(one),
            }
            for one in faith.departures
        ],
    }


def _reason_data(one: Departure) -> dict[str, Any]:
    match one.reason:
        case RuledOut(reason=reason):
            return {"code": one.reason.code, "reason": reason_data(reason)}
        case LeavesParts(parts=parts):
            return {"code": one.reason.code, "parts": list(parts)}
        case CostsMore(stage=stage, by=by):
            return {"code": one.reason.code, "stage": plain(stage), "by": by}
        case _:
            return {"code": one.reason.code}


def _moved(garage: Garage, one: Departure) -> str:
    went = "left out" if one.now is None else f"ordered in {month_name(one.now)}"
    why = " ".join(_why(garage, one))
    return f"{one.option}: meant for {month_name(one.planned)}, now {went}. {why}"


def _why(garage: Garage, one: Departure) -> Iterator[str]:
    match one.reason:
        case Overdue():
            yield "It was not ordered in time."
        case NothingLeft():
            yield "There is nothing left for it to cure."
        case RuledOut(reason=reason):
            yield sentence(garage, reason)
        case NotThatMonth():
            yield "No plan can order it then any more."
        case CostsMore(stage=Stage.WORTH, by=0):
            yield "A plan as good would keep it, but move others that were meant."
        case CostsMore(stage=Stage.WORTH, by=by):
            lost = price(garage.currency, by)
            yield f"To keep it would cost {lost} of net worth."
        case CostsMore(stage=stage, by=by):
            one_more, more = COUNTED[stage]
            yield f"To keep it would mean {count(by, one_more, more)}."
        case LeavesParts(parts=parts):
            verb = "is" if len(parts) == 1 else "are"
            yield f"To keep it would leave out {listed(parts)}, which {verb} bought."
        case NotWorkedOut():
            yield "What keeping it would cost was not worked out in the time."
