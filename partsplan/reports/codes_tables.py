"""Faults that signs suggest, by system, with what to check and to beware of."""

from partsplan.catalogue import FaultKind, fault_kinds
from partsplan.domain import Proposal, Reading
from partsplan.reports import codes_notes
from partsplan.reports.page import Page
from partsplan.reports.sign_words import found_words, seen_words
from partsplan.reports.tables import Column, text
from partsplan.scoring import forbids_driving

NO_DIAGNOSIS = (
    "Nothing here is diagnosed: a code tells what a control unit noticed, not which "
    "part is bad. High: the code stands for one kind of fault; medium: for several, or "
    "there is only a lamp or a silent unit; low: no more than its range is known."
)


def codes_tables(
    reading: Reading,
    *,
    lost: tuple[str, ...] = (),
    appended: bool = False,
    width: int = 100,
    colour: bool = False,
) -> str:
    """What was found and what it suggests; ``lost`` are columns the file lacks."""
    page = Page(width, colour)
    vehicle = reading.garage.vehicle[reading.vehicle]
    page.title(f"Signs of {vehicle.name} ({vehicle.id})")
    found = found_words(reading.signs)
    if not found:
        page.paragraph("No trouble code, lamp or silent unit was found in this text.")
        return str(page)
    page.paragraph(f"Found: {found}. {NO_DIAGNOSIS}")
    _dangers(page, reading)
    _proposals(page, reading)
    for heading, notes in (
        ("Seen together", codes_notes.together(reading)),
        ("In the garage already", codes_notes.known(reading)),
        ("What comes first", codes_notes.linked(reading)),
        ("What to check first", codes_notes.first_checks(reading.proposals)),
        ("Cautions", codes_notes.warned(reading.proposals)),
    ):
        if items := list(notes):
            page.heading(heading)
            page.bullets(items)
    page.gap()
    page.paragraph(" ".join(codes_notes.ending(reading, lost, appended=appended)))
    return str(page)


def forbidding(proposal: Proposal) -> list[FaultKind]:
    """The kinds it may be with which nobody should drive."""
    kinds = [fault_kinds()[key] for key in proposal.kinds]
    return [kind for kind in kinds if forbids_driving(kind)]


def _dangers(page: Page, reading: Reading) -> None:
    grave = [
        (one.fault, kinds) for one in reading.proposals if (kinds := forbidding(one))
    ]
    if grave:
        page.heading("DO NOT DRIVE until this is checked", alarm=True)
        page.bullets(
            f"{fault.title} ({fault.id}); it may be: "
            f"{'; '.join(kind.title for kind in kinds)}."
            for fault, kinds in grave
        )


def _proposals(page: Page, reading: Reading) -> None:
    columns = [
        Column("Proposed"),
        text("What the vehicle shows"),
        text("It may be"),
        Column("Sure"),
        text("Seen", optional=True),
    ]
    for system in dict.fromkeys(one.fault.system for one in reading.proposals):
        page.heading(system.capitalize())
        page.table(
            "proposed",
            columns,
            [_row(one) for one in reading.proposals if one.fault.system is system],
            of=("System", system.value),
        )


def _row(one: Proposal) -> tuple[str, ...]:
    titles = [fault_kinds()[key].title for key in one.kinds]
    return (
        one.fault.id,
        one.fault.title,
        "; or ".join(titles) or "not known here",
        one.confidence,
        seen_words(one.codes),
    )
