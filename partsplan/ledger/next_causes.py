"""Suspected causes, less those that checks have ruled out."""

from dataclasses import replace

from partsplan.domain import Cause, Garage, Ledger
from partsplan.domain.numbers import ONE, ZERO


def next_causes(garage: Garage, ledger: Ledger) -> tuple[Cause, ...]:
    """The causes that are still suspected.

    One cause is at work: with one found the others are out, and with one ruled out the
    others, and that it is none of them, are as likely as they were beside each other
    (conditional probability).
    """
    latest = {(one.fault, one.cause): one.found for one in ledger.checked}
    found = {fault for (fault, _), yes in latest.items() if yes}
    kept: list[Cause] = []
    for cause in garage.causes:
        yes = latest.get((cause.fault, cause.cause))
        if yes:
            kept.append(replace(cause, chance=ONE))
        elif yes is None and cause.fault not in found:
            out = sum(
                (
                    other.chance
                    for other in garage.causes
                    if other.fault == cause.fault
                    and latest.get((other.fault, other.cause)) is False
                ),
                ZERO,
            )
            if out < ONE:
                kept.append(replace(cause, chance=cause.chance / (1 - out)))
    return tuple(kept)
