"""Faults by urgency: three figures each, their points, and why."""

from collections.abc import Sequence

from partsplan.catalogue import trouble_codes
from partsplan.domain import (
    Fault,
    FaultScores,
    FaultStatus,
    Garage,
    Reason,
)
from partsplan.reports.figures import money, month_name, number
from partsplan.reports.names import fault_name, relieved_now
from partsplan.reports.page import Page
from partsplan.reports.tables import figure, text
from partsplan.reports.words import sentence


def fault_tables(
    garage: Garage,
    ranking: Sequence[FaultScores],
    *,
    why: bool = False,
    width: int = 100,
    colour: bool = False,
) -> str:
    """The faults in their order; ``why`` adds a sentence for each reason."""
    page = Page(width, colour)
    page.title(f"Faults of {garage.name} in {month_name(garage.start)}")
    if not ranking:
        page.paragraph("No fault is open or watched.")
        return str(page)
    page.paragraph(
        "Figures of 0 to 100. Safety: the harm it can do. Driving: how much it hampers "
        "driving. Waiting: what each month of waiting costs, as a share of the mean "
        "monthly budget. Points: the weighted sum, or the owner's own figure."
    )
    page.gap()
    columns = [
        text("Fault"),
        figure("Safety"),
        figure("Driving"),
        figure("Waiting"),
        figure("Points"),
        figure(f"{garage.currency.code} a month"),
    ]
    page.table("faults", columns, [_row(garage, one) for one in ranking])
    grave = [one for one in ranking if one.do_not_drive]
    if grave:
        page.heading("DO NOT DRIVE", alarm=True)
        page.bullets(
            f"{_vehicle(garage, one)}, until this is cured: "
            f"{fault_name(garage.fault[one.fault])}."
            for one in grave
        )
    if why:
        page.heading("Why")
        page.bullets(
            f"{fault_name(garage.fault[one.fault])}: " + " ".join(_why(garage, one))
            for one in ranking
        )
    return str(page)


def reasons(scores: FaultScores) -> tuple[Reason, ...]:
    """All reasons of a fault's figures and of its alarm, each once."""
    parts = (scores.safety, scores.drivability, scores.waiting, scores.enjoyment)
    found = [reason for part in (*parts, scores.points) for reason in part.reasons]
    return tuple(dict.fromkeys(found))


def _row(garage: Garage, one: FaultScores) -> tuple[str, ...]:
    fault = garage.fault[one.fault]
    aside = "watched" if fault.status is FaultStatus.WATCH else None
    aside = aside or relieved_now(garage, fault)
    figures = (one.safety, one.drivability, one.waiting, one.points)
    return (
        f"{fault.id}: {fault.title}{f' ({aside})' if aside else ''}, "
        f"{_vehicle(garage, one)}",
        *(number(part.points, 0) for part in figures),
        money(garage.currency, one.loss) if one.loss else "",
    )


def _vehicle(garage: Garage, one: FaultScores) -> str:
    return garage.vehicle[garage.fault[one.fault].vehicle].name


def _why(garage: Garage, one: FaultScores) -> list[str]:
    scored = [sentence(garage, reason) for reason in reasons(one)]
    return (scored or ["It scores nothing."]) + _code_meanings(garage.fault[one.fault])


def _code_meanings(fault: Fault) -> list[str]:
    """What its generic trouble codes say; no meaning is made up for others."""
    known = trouble_codes()
    return [
        f"Code {code}: {known[code].meaning}." for code in fault.codes if code in known
    ]
