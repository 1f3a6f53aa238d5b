"""The contest in Markdown: medians, ratios, every garage, and the floor."""

from collections.abc import Callable, Sequence
from functools import partial
from math import inf, isinf

from tests.benchmarks.contest.cell import Cell
from tests.benchmarks.contest.running import OWN, RELAXATION
from tests.benchmarks.contest.summary import (
    MARKS,
    Heat,
    heats,
    middle,
    moments,
    ratios,
)
from tests.benchmarks.generator import EURO
from tests.benchmarks.tables import NOTHING, table

Figure = Callable[[Heat, Cell], float]
NEVER, NO_PLAN = "never", "no plan"
WHAT_IT_MEANS = """\
Seconds run from the call, with pricing and model in them. A plan counts from the last
stage on, and only if no early stage is worse than the best known. Marks are distances
from the lowest bound that any contestant proved; a gap is (bound - value) / value by
the contestant's own bound. Plain HiGHS and CP-SAT may stop counting at an absolute gap
of 0.99, begin each stage from nothing, and have the same threads as partsplan."""


def report(cells: Sequence[Cell]) -> str:
    """All tables, with what their words mean."""
    found = heats(cells)
    parts = [
        WHAT_IT_MEANS,
        "Medians over the seeds:",
        medians(found),
        "A rival's figure over partsplan's, smallest and median over the seeds:",
        ratio_table(found),
        "Every garage; after each time: value, bound, gap:",
        details(found),
        "The floor, with early stages held at the best figures known:",
        floors(found),
    ]
    parts += [
        f"Wrong: at {_name(heat)} a legal plan is above the bound of {one}."
        for heat in found
        for one in heat.refuted
    ]
    return "\n\n".join(parts)


def medians(found: Sequence[Heat]) -> str:
    """A row for each size and contestant."""
    every = _every_moment(found)
    header = ["garage", "contestant", "seeds", "first plan [s]"]
    header += [f"to {100 * mark:g} % [s]" for mark in MARKS]
    header += [f"gap after {one} s [%]" for one in every]
    header += ["last gap [%]", "peak [MB]", "stages worse or open", "broken rules"]
    rows = []
    for size, group in _by_size(found).items():
        for name in _names(group):
            pairs = [(h, c) for h in group for c in h.cells if c.contestant == name]
            cells = [cell for _, cell in pairs]
            rows.append(
                [
                    size,
                    name,
                    len(pairs),
                    _seconds(middle([heat.first(cell) for heat, cell in pairs])),
                    *(_seconds(_middle(_to(mark), pairs)) for mark in MARKS),
                    *(
                        _percent(_middle(_gap(one), pairs))
                        if one in moments(cells[0])
                        else NOTHING
                        for one in every
                    ),
                    _percent(_middle(_gap(inf), pairs)),
                    f"{middle([cell.peak for cell in cells]):.0f}",
                    sum(heat.behind(cell) for heat, cell in pairs) or NOTHING,
                    sum(cell.broken or 0 for cell in cells),
                ]
            )
    return table(header, rows, "pipe")


def ratio_table(found: Sequence[Heat]) -> str:
    """A row for each size and rival; above 1 partsplan is closer or sooner.

    Gaps below the one asked for count as that.
    """
    every = _every_moment(found)
    header = ["garage", "rival"]
    header += [f"gap after {one} s" for one in every]
    header += ["time to first plan", *(f"to {100 * mark:g} %" for mark in MARKS)]
    rows = []
    for size, group in _by_size(found).items():
        first = group[0].cells[0]
        for name in _names(group):
            if name == OWN:
                continue
            compare = partial(ratios, group, name, OWN)
            gaps = [
                compare(_gap(one), first.task.gap) if one in moments(first) else []
                for one in every
            ]
            times = [compare(Heat.first), *(compare(_to(mark)) for mark in MARKS)]
            rows.append(
                [
                    size,
                    name,
                    *(_least_and_middle(one, NO_PLAN) for one in gaps),
                    *(_least_and_middle(one, NEVER) for one in times),
                ]
            )
    return table(header, rows, "pipe")


def details(found: Sequence[Heat]) -> str:
    """A row for each garage and contestant."""
    every = _every_moment(found)
    header = ["garage", "contestant", "ended", "after [s]", "early stages", "broken"]
    header += [f"{one} s" for one in every]
    rows = [
        [
            _name(heat),
            cell.contestant,
            cell.ended,
            f"{cell.took:.1f}",
            _early(heat, cell),
            NOTHING if cell.broken is None else cell.broken,
            *(_state(cell, one) if one in moments(cell) else NOTHING for one in every),
        ]
        for heat in found
        for cell in heat.cells
        if cell.contestant != RELAXATION
    ]
    return table(header, rows, "pipe")


def floors(found: Sequence[Heat]) -> str:
    """What the relaxation says, beside the best bound of anybody."""
    rows = [
        [
            _name(heat),
            cell.ended,
            f"{cell.took:.1f}",
            f"{cell.peak:.0f}",
            _money(cell.after(inf).bound),
            _money(heat.bound),
        ]
        for heat in found
        for cell in heat.cells
        if cell.contestant == RELAXATION
    ]
    header = ["garage", "ended", "after [s]", "peak [MB]", "bound", "best bound known"]
    return table(header, rows, "pipe")


def _by_size(found: Sequence[Heat]) -> dict[str, list[Heat]]:
    groups: dict[str, list[Heat]] = {}
    for heat in found:
        groups.setdefault(heat.cells[0].task.size, []).append(heat)
    return groups


def _names(group: Sequence[Heat]) -> list[str]:
    names = dict.fromkeys(cell.contestant for heat in group for cell in heat.cells)
    return [one for one in names if one != RELAXATION]


def _every_moment(found: Sequence[Heat]) -> list[int]:
    return sorted({one for h in found for cell in h.cells for one in moments(cell)})


def _to(mark: float) -> Figure:
    return lambda heat, cell: heat.time_to(cell, mark)


def _gap(seconds: float) -> Figure:
    return lambda heat, cell: heat.gap(cell, seconds)


def _middle(figure: Figure, pairs: Sequence[tuple[Heat, Cell]]) -> float:
    return middle([figure(heat, cell) for heat, cell in pairs])


def _least_and_middle(told: Sequence[float], without: str) -> str:
    if not told:
        return NOTHING
    return f"{_ratio(min(told), without)} / {_ratio(middle(told), without)}"


def _ratio(told: float, without: str) -> str:
    if isinf(told):
        return without
    return f"{told:.3g}" if told else f"0 ({OWN} {without})"


def _early(heat: Heat, cell: Cell) -> str:
    told = "unknown" if cell.early is None else ", ".join(map(str, cell.early))
    return f"{told} (worse)" if heat.behind(cell) and cell.early else told


def _state(cell: Cell, seconds: float) -> str:
    known = cell.after(seconds)
    gap = NO_PLAN if isinf(known.gap) else f"{_percent(known.gap)} %"
    return f"{_money(known.value)}, {_money(known.bound)}, {gap}"


def _name(heat: Heat) -> str:
    task = heat.cells[0].task
    return f"{task.size} seed {task.seed}"


def _money(told: float) -> str:
    return NOTHING if isinf(told) else EURO.format(round(told))


def _seconds(told: float) -> str:
    return NEVER if isinf(told) else f"{told:.2f}"


def _percent(told: float) -> str:
    return NO_PLAN if isinf(told) else f"{100 * told:.3f}"
