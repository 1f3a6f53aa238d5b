"""What to check before anything is bought, for a person in the garage."""

from collections.abc import Iterator, Sequence

from partsplan import catalogue
from partsplan.domain import (
    CURED,
    CheckStep,
    Diagnosis,
    FaultStatus,
    Garage,
    Lamp,
    SharedCause,
    Trial,
)
from partsplan.reports.check_steps import keep_steps, named_cure, step_lines
from partsplan.reports.figures import listed, money, percent, price
from partsplan.reports.names import LICENSED, LICENSED_NOTE, fault_name
from partsplan.reports.page import Page
from partsplan.reports.tables import Column, figure
from partsplan.reports.words import sentence
from partsplan.scoring import forbids_driving


def diagnosis_tables(
    garage: Garage,
    diagnoses: Sequence[Diagnosis],
    shared: Sequence[SharedCause],
    lamps: Sequence[Lamp],
    *,
    width: int = 100,
    colour: bool = False,
) -> str:
    """The checks of each fault in their best order, and what they save."""
    page = Page(width, colour)
    page.title(f"What to check before buying, {garage.name}")
    if not diagnoses:
        page.paragraph(
            "No suspected cause is written down yet, in the table of causes."
        )
        return str(page)
    page.paragraph(_how_it_counts(garage))
    _off_road(page, garage, diagnoses)
    for one in diagnoses:
        _one_fault(page, garage, one)
    _one_for_several(page, garage, shared)
    _lamps(page, garage, lamps)
    if any(LICENSED in named_cure(garage, step) for step in _all_steps(diagnoses)):
        page.gap()
        page.paragraph(LICENSED_NOTE)
    page.heading("Cautions")
    systems = {garage.fault[one.fault].system for one in diagnoses}
    page.bullets(catalogue.cautions(systems))
    return str(page)


def _how_it_counts(garage: Garage) -> str:
    hours = (
        f", own hours counted at {price(garage.currency, garage.hour_value)}"
        if garage.hour_value
        else ""
    )
    return (
        f"Sums in {garage.currency.code}{hours}; cures at their expected cost, without "
        "shipping and tools. Each fault is taken to have one cause, and a check to be "
        "sure of its answer. The chances are those you wrote down: the order is as "
        "good as they are. Buying unchecked is right only for somebody so sure that "
        "the check costs more than the wrong part would: from 1 - check / cure on."
    )


def _one_fault(page: Page, garage: Garage, one: Diagnosis) -> None:
    fault = garage.fault[one.fault]
    status = "" if fault.status is FaultStatus.OPEN else f" ({fault.status})"
    page.heading(f"{fault.id}, {garage.vehicle[fault.vehicle].name}")
    page.paragraph(f"{fault.title}{status}")
    if one.steps:
        page.numbered(step_lines(garage, one.steps))
        keep_steps(garage, one.fault, one.steps)
        page.gap()
        page.table(
            "costs",
            [Column("Expected cost"), figure(garage.currency.code)],
            [(label, money(garage.currency, amount)) for label, amount in _costs(one)],
            of=("Fault", one.fault),
        )
        page.gap()
        page.bullets(_notes(garage, one))
    else:
        page.paragraph(
            "No suspected cause is written down for it, in the table of causes."
        )
    if one.ruled_out:
        page.bullets([f"Never checked, as their chance is 0: {listed(one.ruled_out)}."])


def _costs(one: Diagnosis) -> Iterator[tuple[str, int]]:
    yield "Check in this order, then cure what is found", one.expected
    yield "of it the checks", one.checks
    if any(step.skips_check for step in one.steps):
        yield "The same, but bought at once where said", one.at_once
    if not any(step.cause.cure for step in one.steps):
        return
    yield "Buy on suspicion, before any check", one.on_suspicion
    if one.saving >= 0:
        yield "Saved by checking", one.saving
    else:
        yield "Saved by buying on suspicion", -one.saving


def _notes(garage: Garage, one: Diagnosis) -> Iterator[str]:
    if one.something_else:
        yield (
            f"With a chance of {percent(one.something_else)} it is something else. "
            "Then all of this is spent, in any order, and the cause is still to be "
            "found."
        )
    if one.saving < 0:
        yield "Here the checks cost more than the wrong parts they spare."
    cures = [bool(step.cause.cure) for step in one.steps]
    if any(cures):
        yield f"On suspicion: {', then '.join(_tried(trial) for trial in one.trials)}."
    for trial in one.trials:
        if len(trial.causes) > 1:
            yield (
                f"{listed(map(_quoted, trial.causes))} have the same cure, "
                f"{trial.cure}: it is enough to be sure that it is one of them."
            )
    if not all(cures):
        yield (
            "Where no cure is named it counts as 0. If there is something to buy, "
            "write it down as an option."
        )
    if len(one.several) > 1:
        yield _several(garage, one)
    barred = {bar: None for step in one.steps for bar in step.bars}
    for bar in barred:
        yield f"Not to be had as it stands: {sentence(garage, bar)}"


def _tried(trial: Trial) -> str:
    if trial.cure:
        return f"buy {trial.cure}"
    (cause,) = trial.causes
    return f"{'check' if trial.checked else 'see to'} {_quoted(cause)}"


def _several(garage: Garage, one: Diagnosis) -> str:
    """What changes if the fault has more than one cause."""
    in_order = tuple(step.cause.cause for step in one.steps)
    checks = (
        "all in the same order"
        if one.several == in_order
        else ", then ".join(map(_quoted, one.several))
    )
    return (
        "Should several causes be at work at once, none is found by ruling out the "
        f"others. Then check {checks}: {price(garage.currency, one.first_find)} of "
        "checks up to the first find."
    )


def _quoted(cause: str) -> str:
    return f'"{cause}"'


def _one_for_several(page: Page, garage: Garage, shared: Sequence[SharedCause]) -> None:
    if shared:
        page.heading("One cause for several faults")
        page.bullets(_shared(garage, one) for one in shared)


def _shared(garage: Garage, one: SharedCause) -> str:
    names = listed(fault_name(garage.fault[fault]) for fault in one.faults)
    causes = " or ".join(map(_quoted, one.causes))
    cure = f", cured by {one.cure}" if one.cure else ""
    signs = [f"lamp {lamp}" for lamp in one.lamps]
    signs += [f"code {code}" for code in one.codes]
    seen = f" Seen as {listed(signs)}." if signs else ""
    serves = "both" if len(one.faults) == 2 else f"all {len(one.faults)}"
    return (
        f"{names} may have one cause: {causes}{cure}.{seen} "
        f"One check of it serves {serves}; buy nothing for one of them before."
    )


def _lamps(page: Page, garage: Garage, lamps: Sequence[Lamp]) -> None:
    if lamps:
        page.heading("Lamps")
        page.bullets(_lamp(garage, one) for one in lamps)


def _lamp(garage: Garage, one: Lamp) -> str:
    lit = [
        fault + (" (watched)" if _watched(garage, fault) else "")
        for fault in one.lit_by
    ]
    until = "is cured" if len(lit) == 1 else "are all cured"
    vehicle = garage.vehicle[one.vehicle].name
    return f"{vehicle}, {one.name}: stays lit until {listed(lit)} {until}."


def _watched(garage: Garage, fault: str) -> bool:
    return garage.fault[fault].status is FaultStatus.WATCH


def _off_road(page: Page, garage: Garage, diagnoses: Sequence[Diagnosis]) -> None:
    """Vehicles that no check may take onto the road."""
    asked = {garage.fault[one.fault].vehicle for one in diagnoses}
    grave = [
        fault
        for fault in garage.faults
        if fault.vehicle in asked
        and fault.status is not FaultStatus.FIXED
        and garage.relieved(fault, 0) < CURED
        and forbids_driving(fault)
    ]
    if grave:
        page.heading("DO NOT DRIVE, not even to check", alarm=True)
        page.bullets(
            f"{garage.vehicle[fault.vehicle].name}, until this is cured: "
            f"{fault_name(fault)}."
            for fault in grave
        )


def _all_steps(diagnoses: Sequence[Diagnosis]) -> Iterator[CheckStep]:
    return (step for one in diagnoses for step in one.steps)
