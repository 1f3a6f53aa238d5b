"""What must hold between faults, and what is odd about them."""

from collections.abc import Iterator, Mapping
from fractions import Fraction
from graphlib import CycleError, TopologicalSorter

from partsplan.domain import FaultStatus
from partsplan.errors import Problem
from partsplan.intake.columns import CAUSES, FAULTS, MILESTONES
from partsplan.intake.draft import Draft
from partsplan.intake.option_columns import OPTIONS
from partsplan.sheets.decimals import decimal
from partsplan.sheets.quoting import plain, shown
from partsplan.signs import well_formed

_LONGEST_CYCLE_SHOWN = 8


def not_itself(draft: Draft) -> Iterator[Problem]:
    """No fault is its own pair, or comes after itself."""
    for column in ("pair_with", "after"):
        for row, (named,) in draft.having(FAULTS, column):
            if row.key[0] in named:
                yield draft.at(FAULTS, row, column, "names the fault itself")


def no_circles(draft: Draft) -> Iterator[Problem]:
    """No fault comes after itself by way of others."""
    after = draft.values(FAULTS, "after")
    row_of = {row.key[0]: row for row in reversed(draft.rows(FAULTS))}
    for circle in _circles(after):
        first = min(circle, key=lambda fault: row_of[fault].line)
        start = circle.index(first)
        faults = [plain(fault) for fault in (*circle[start:], *circle[:start])]
        if len(faults) > _LONGEST_CYCLE_SHOWN:
            faults[_LONGEST_CYCLE_SHOWN:] = ["..."]
        message = f"goes round in a circle: {' after '.join([*faults, plain(first)])}"
        yield draft.at(FAULTS, row_of[first], "after", message)


def _circles(after: Mapping[str, tuple[str, ...]]) -> Iterator[tuple[str, ...]]:
    """Circles of two faults or more; of a knot of circles at least one."""
    sorter = TopologicalSorter(
        {fault: set(named) - {fault} for fault, named in after.items()}
    )
    try:
        sorter.prepare()
        return
    except CycleError:
        pass
    free: set[str] = set()
    while ready := sorter.get_ready():
        free.update(ready)
        sorter.done(*ready)
    # Each fault that is left waits for another one that is left, so a walk must end in
    # a circle, or where an earlier walk has been.
    walked: set[str] = set()
    for start in after:
        path: list[str] = []
        fault = start
        while fault not in free and fault not in walked:
            walked.add(fault)
            path.append(fault)
            fault = next(n for n in after[fault] if n != fault and n not in free)
        if fault in path:
            yield tuple(path[path.index(fault) :])


def chances_of_causes(draft: Draft) -> Iterator[Problem]:
    """One fault has one cause, so the chances of its causes sum to 1 at most."""
    total: dict[str, Fraction] = {}
    for row, (fault, chance) in draft.having(CAUSES, "fault", "chance"):
        before = total.get(fault, Fraction(0))
        total[fault] = before + chance
        if before <= 1 < total[fault]:
            message = (
                f"expected chances that sum to at most 1 for fault {shown(fault)}, "
                f"got {decimal(total[fault])} up to here"
            )
            yield draft.at(CAUSES, row, "chance", message)


def cures_that_miss(draft: Draft) -> Iterator[Problem]:
    """A cause's cure should name the fault."""
    fixes = draft.values(OPTIONS, "fixes")
    for row, (fault, cure) in draft.having(CAUSES, "fault", "cure"):
        if cure in fixes and fault not in {one.fault for one in fixes[cure]}:
            message = f"option {shown(cure)} does not fix fault {shown(fault)}"
            yield draft.at(CAUSES, row, "cure", message)


def waits_for_watched(draft: Draft) -> Iterator[Problem]:
    """Nothing that waits for the cure of a watched fault can be planned."""
    status = draft.values(FAULTS, "status")
    watched = {fault for fault, one in status.items() if one is FaultStatus.WATCH}
    for row, _ in draft.having(FAULTS, "fix_by"):
        if row.key[0] in watched:
            message = "cannot be met while the fault is only watched"
            yield draft.at(FAULTS, row, "fix_by", message)
    for table, column, outcome in (
        (FAULTS, "after", "blocks every option for this one"),
        (MILESTONES, "faults", "keeps the milestone from being met"),
    ):
        for row, (named,) in draft.having(table, column):
            for fault in named:
                if fault in watched:
                    message = f"fault {shown(fault)} is only watched; that {outcome}"
                    yield draft.at(table, row, column, message)


def pairs_across_vehicles(draft: Draft) -> Iterator[Problem]:
    """A pair is usually on one vehicle."""
    vehicle = draft.values(FAULTS, "vehicle")
    for row, (own, named) in draft.having(FAULTS, "vehicle", "pair_with"):
        for fault in named:
            if vehicle.get(fault, own) != own:
                message = f"fault {shown(fault)} is on another vehicle"
                yield draft.at(FAULTS, row, "pair_with", message)


def odd_codes(draft: Draft) -> Iterator[Problem]:
    """Codes that are not of the form of SAE J2012, such as blink codes."""
    for row, (codes,) in draft.having(FAULTS, "codes"):
        for code in codes:
            if not well_formed(code):
                message = f"{shown(code)} is no code like P0171, so nothing looks it up"
                yield draft.at(FAULTS, row, "codes", message)
