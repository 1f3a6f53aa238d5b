"""What is to be said of proposed faults besides their table."""

from collections.abc import Iterable, Iterator
from fractions import Fraction

from partsplan.catalogue import KindCheck, Link, cautions, kind_checks, kind_links
from partsplan.domain import Fault, Proposal, Reading, System
from partsplan.reports.figures import listed, number, percent
from partsplan.reports.sign_words import sign_words

SAFETY = (System.BRAKES, System.STEERING, System.RESTRAINT, System.FUEL)
"""Systems whose cautions are told with every suspicion."""


def together(reading: Reading) -> Iterator[str]:
    """What signs say together, and which signs these are."""
    for one in reading.together:
        named = "; ".join(sign_words(sign, reading.signs) for sign in one.signs)
        yield f"{one.says} Seen: {named}."


def known(reading: Reading) -> Iterator[str]:
    """Signs that the garage has already, and faults it may have already."""
    faults = reading.garage.fault
    for sign, fault in reading.known:
        words = sign_words(sign, reading.signs)
        title = faults[fault].title
        yield f"{words[0].upper()}{words[1:]} is left out: {title} ({fault})."
    for one in reading.proposals:
        if one.akin:
            yield (
                f"{one.fault.id} may be the same as {listed(one.akin)}, of the same "
                "kind."
            )
        if one.came_back:
            yield (
                f"{one.fault.id}: a code has come back, though {listed(one.came_back)} "
                "is marked as fixed."
            )


def linked(reading: Reading) -> Iterator[str]:
    """What is mended together or before, and why."""
    faults = {
        **reading.garage.fault,
        **{p.fault.id: p.fault for p in reading.proposals},
    }
    for one in reading.proposals:
        fault = one.fault
        if fault.after:
            why = _why(fault, (faults[name] for name in fault.after), Link.AFTER)
            yield f"{fault.id} is mended after {listed(fault.after)}: {why}."
        if fault.pair_with:
            why = _why(fault, (faults[name] for name in fault.pair_with), Link.PAIR)
            yield f"{fault.id} is mended with {listed(fault.pair_with)}: {why}."


def first_checks(proposals: Iterable[Proposal]) -> Iterator[str]:
    """The check of each fault that most likely finds something in the least time."""
    for one in proposals:
        if checks := kind_checks().get(one.fault.kind, ()):
            best = max(checks, key=_chance_an_hour)
            yield (
                f"{one.fault.id}: {best.check} ({number(best.hours)} h; "
                f"{best.cause}, {percent(best.chance)})."
            )


def warned(proposals: Iterable[Proposal]) -> tuple[str, ...]:
    """The cautions for the systems in which a mistake can kill."""
    touched = {system for one in proposals for system in one.cautious}
    general = cautions(())
    found = cautions([system for system in SAFETY if system in touched])
    return tuple(text for text in found if text not in general)


def ending(reading: Reading, lost: tuple[str, ...], *, appended: bool) -> Iterator[str]:
    """What was written, or how to do so."""
    if not reading.proposals:
        yield "Nothing new to propose."
        return
    ids = [one.fault.id for one in reading.proposals]
    if appended:
        yield f"Added to faults.csv: {listed(ids)}. Look at them before you plan."
    else:
        yield (
            "Nothing was written. --append adds these faults to faults.csv, --csv "
            "prints them as rows of it."
        )
    if lost:
        yield _missing(lost)


def left_out_text(reading: Reading, lost: tuple[str, ...]) -> str:
    """What the bare rows do not tell, a sentence a line."""
    return "\n".join([*known(reading), *([_missing(lost)] if lost else [])])


def _missing(lost: tuple[str, ...]) -> str:
    columns = "column" if len(lost) == 1 else "columns"
    return f"faults.csv has no {columns} {listed(lost)}, so that stays out."


def _why(fault: Fault, others: Iterable[Fault], link: Link) -> str:
    kinds = {other.kind for other in others}
    reasons = [
        one.why
        for one in kind_links()
        if one.link is link
        and (
            (one.kind == fault.kind and one.other in kinds)
            or (link is Link.PAIR and one.other == fault.kind and one.kind in kinds)
        )
    ]
    return "; ".join(reasons)


def _chance_an_hour(one: KindCheck) -> Fraction:
    return one.chance / one.hours
