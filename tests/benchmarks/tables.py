"""Plain tables of what was measured: medians over the seeds of a size."""

from collections.abc import Mapping, Sequence
from statistics import median

from tabulate import tabulate

from tests.benchmarks.commands import Command
from tests.benchmarks.generator import EURO
from tests.benchmarks.measuring import PHASES, Measured

Groups = Mapping[str, Sequence[Measured]]
NOTHING = "-"


def by_size(found: Sequence[Measured]) -> Groups:
    """The garages of each size, in the order in which the sizes first come."""
    groups: dict[str, list[Measured]] = {}
    for one in found:
        groups.setdefault(one.size, []).append(one)
    return groups


def times(groups: Groups) -> str:
    """Seconds of every phase, and the peak of memory."""
    header = ["garage", "seeds", *(f"{one} [s]" for one in PHASES), "peak [MB]"]
    rows = [
        [
            size,
            len(group),
            *(_shown(_phase(group, one)) for one in PHASES),
            f"{_peak(group):.0f}",
        ]
        for size, group in groups.items()
    ]
    return table(header, rows)


def models(groups: Groups) -> str:
    """Size of the models."""
    figures = ("offers", "reachable", "columns", "rows")
    rows = [
        [size, *(f"{median(getattr(o, one) for o in group):,.0f}" for one in figures)]
        for size, group in groups.items()
    ]
    return table(["garage", *figures], rows)


def plans(found: Sequence[Measured]) -> str:
    """How good each plan is."""
    header = ["garage", "seed", "status", "gap [%]", "net worth", "bound", "broken"]
    rows = [
        [
            one.size,
            one.seed,
            one.status,
            f"{100 * one.gap:.3f}",
            EURO.format(one.net_worth),
            EURO.format(one.bound),
            one.violations,
        ]
        for one in found
        if one.gap is not None and one.net_worth is not None and one.bound is not None
    ]
    return table(header, rows)


def whole_commands(found: Sequence[Command]) -> str:
    """Time and memory of commands as a whole."""
    rows = [
        [one.name, _shown(one.seconds), f"{one.peak:.0f}", one.exit_code]
        for one in found
    ]
    return table(["command", "time [s]", "peak [MB]", "exit code"], rows)


def ratios(new: Sequence[Measured], old: Sequence[Measured]) -> str:
    """New medians over old ones, of the garages that both have."""
    shared = {(one.size, one.seed) for one in new}
    shared &= {(one.size, one.seed) for one in old}
    before, after = (
        by_size([one for one in found if (one.size, one.seed) in shared])
        for found in (old, new)
    )
    rows = [
        [
            size,
            len(group),
            *(_ratio(_phase(group, one), _phase(before[size], one)) for one in PHASES),
            _ratio(_peak(group), _peak(before[size])),
        ]
        for size, group in after.items()
    ]
    return table(["new / old", "seeds", *PHASES, "peak"], rows)


def _phase(group: Sequence[Measured], phase: str) -> float | None:
    """[s]; None where nobody went through that phase."""
    seconds = [one.phases[phase] for one in group if phase in one.phases]
    return median(seconds) if seconds else None


def _peak(group: Sequence[Measured]) -> float:
    return median(one.peak for one in group)


def _shown(seconds: float | None) -> str:
    return NOTHING if seconds is None else f"{seconds:.3f}"


def _ratio(new: float | None, old: float | None) -> str:
    return f"{new / old:.2f}" if new is not None and old else NOTHING


def table(
    header: Sequence[str], rows: Sequence[Sequence[object]], style: str = "simple"
) -> str:
    """Plain, or in any style that tabulate knows; all but the first column right."""
    right = ["left", *["right"] * (len(header) - 1)]
    return tabulate(rows, header, style, colalign=right, disable_numparse=True)
