"""What a plan cannot do or leaves alone, and why; what it assumes."""

from collections import defaultdict
from collections.abc import Iterator, Sequence

from partsplan.domain import (
    CURED,
    FaultStatus,
    Garage,
    Plan,
    Shortfall,
    Skip,
    Stage,
)
from partsplan.reports.figures import listed, month_name, month_spans, number, price
from partsplan.reports.names import fault_name, relieved_now
from partsplan.reports.paper import Paper
from partsplan.reports.standing import Trouble, undrivable, unsafe
from partsplan.reports.words import sentence

_AIMS = {Stage.SAFETY: "To be safe", Stage.MOBILITY: "To be drivable"}


def do_not_drive(
    page: Paper, garage: Garage, plan: Plan, shortfalls: Sequence[Shortfall]
) -> None:
    """Vehicles that must not be driven, when, and what it would take."""
    if troubles := unsafe(garage, plan):
        page.heading("DO NOT DRIVE", alarm=True)
        page.bullets(_off_road(garage, troubles, shortfalls, Stage.SAFETY))
        if plan.stages.unsafe_vehicle_months and _deadlines_first(garage):
            page.paragraph(
                "Deadlines and milestones come before safety in this garage; "
                "its setting priority can put safety first."
            )


def _deadlines_first(garage: Garage) -> bool:
    """Whether money may go to a deadline while a vehicle must not be driven."""
    order = garage.priority
    asked = bool(garage.milestones) or any(one.fix_by for one in garage.faults)
    return asked and order.index(Stage.DEADLINES) < order.index(Stage.SAFETY)


def not_drivable(
    page: Paper, garage: Garage, plan: Plan, shortfalls: Sequence[Shortfall]
) -> None:
    """Vehicles that cannot be driven, when, and what it would take."""
    if troubles := undrivable(garage, plan):
        page.heading("Not drivable")
        page.bullets(_off_road(garage, troubles, shortfalls, Stage.MOBILITY))


def left_alone(page: Paper, garage: Garage, skips: Sequence[Skip]) -> None:
    """Open faults that no job touches, and those that are only watched."""
    watched = [one for one in garage.faults if one.status is FaultStatus.WATCH]
    if not skips and not watched:
        return
    page.heading("Left alone, and why")
    page.bullets(
        f"{_placed(garage, skip.fault)}{_relieved(garage, skip.fault)}: "
        + " ".join(sentence(garage, one) for one in (skip.reason, *skip.also))
        for skip in skips
    )
    page.bullets(
        f"{_placed(garage, fault.id)}: only watched, as you asked." for fault in watched
    )


def _relieved(garage: Garage, fault: str) -> str:
    relieved = relieved_now(garage, garage.fault[fault])
    return f", {relieved} by what was fitted before" if relieved else ""


def missed_deadlines(
    page: Paper, garage: Garage, plan: Plan, shortfalls: Sequence[Shortfall]
) -> None:
    """Deadlines and milestones that are not met, and what it would take."""
    missed = [one for one in shortfalls if one.stage is Stage.DEADLINES]
    if not plan.stages.missed_deadlines:
        return
    page.heading("Missed deadlines")
    if not missed:
        page.paragraph(
            f"{plan.stages.missed_deadlines}. The search was stopped, so what it would "
            "take was not worked out."
        )
    page.bullets(shortfall_line(garage, one) for one in missed)


def shortfall_line(garage: Garage, shortfall: Shortfall) -> str:
    """What a plan misses, in which months, and what it would take."""
    takes = what_it_takes(garage, shortfall)
    if shortfall.stage is Stage.DEADLINES:
        return f"{_demand(garage, shortfall)}: {takes}."
    driven = "must not" if shortfall.stage is Stage.SAFETY else "cannot"
    name = garage.vehicle[shortfall.subject].name
    months = month_spans(garage, shortfall.months)
    return f"{name} {driven} be driven in {months}: {takes}."


def what_it_takes(garage: Garage, shortfall: Shortfall) -> str:
    """The least extra hours and money that would do."""
    if shortfall.money is None and not shortfall.exact:
        return "what it would take was not worked out in the time"
    if shortfall.money is None:
        return "neither more money nor more own hours would do"
    least = (
        "the least that makes nothing else worse"
        if shortfall.exact
        else "less may do, that is not proven"
    )
    parts = []
    if shortfall.hours:
        parts.append(f"{number(shortfall.hours)} more own hours in all")
    if shortfall.money or not parts:
        extra = price(garage.currency, shortfall.money)
        parts.append(f"{extra} more in {month_name(garage.start)}")
    return f"it would take {listed(parts)} ({least})"


def _off_road(
    garage: Garage,
    troubles: dict[str, tuple[Trouble, ...]],
    shortfalls: Sequence[Shortfall],
    stage: Stage,
) -> Iterator[str]:
    of_vehicle: dict[str, list[Shortfall]] = defaultdict(list)
    for one in shortfalls:
        if one.stage is stage:
            of_vehicle[one.subject].append(one)
    for vehicle, found in troubles.items():
        lines = "; ".join(_lasts(garage, trouble) for trouble in found)
        takes = "".join(
            f" {_AIMS[stage]} in {month_spans(garage, one.months)}, "
            f"{what_it_takes(garage, one)}."
            for one in of_vehicle[vehicle]
        )
        yield f"{garage.vehicle[vehicle].name}: {lines}.{takes}"


def _lasts(garage: Garage, trouble: Trouble) -> str:
    name = fault_name(trouble.fault)
    cured = (
        "" if trouble.cured_in is None else month_name(garage.month(trouble.cured_in))
    )
    if not trouble.months:
        return f"{name}, until it is cured in {cured}"
    spans = f"{name}, {month_spans(garage, trouble.months)}"
    if garage.relieved(trouble.fault, trouble.months[0] - 1) >= CURED:
        spans += ", since what was fitted before lasts no longer"
    if trouble.cured_in is not None:
        if trouble.cured_in < trouble.months[0]:
            return f"{spans}, since what cures it from {cured} on lasts no longer"
        return f"{spans}, cured in {cured}"
    if not garage.options_for[trouble.fault.id]:
        return f"{spans}, nobody has quoted for it: ask for a quote"
    return f"{spans}, not cured in this plan"


def _placed(garage: Garage, fault: str) -> str:
    found = garage.fault[fault]
    return f"{garage.vehicle[found.vehicle].name}, {fault_name(found)}"


def _demand(garage: Garage, shortfall: Shortfall) -> str:
    fault = garage.fault.get(shortfall.subject)
    if fault is not None and fault.fix_by is not None:
        return f"{_placed(garage, fault.id)}, wanted by {month_name(fault.fix_by)}"
    found = next(one for one in garage.milestones if one.id == shortfall.subject)
    waits = listed(fault_name(garage.fault[one]) for one in shortfall.faults)
    name = found.title or found.id
    return f"Milestone {name}, wanted by {month_name(found.month)}, waits for {waits}"
