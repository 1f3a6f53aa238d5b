"""What can go wrong, in words that name the place and what was expected."""

from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, order=True)
class Problem:
    """One thing wrong in a garage file; the header is line 1, 0 is the whole file.

    In a workbook ``file`` is a sheet, and ``column`` are the letters above the cell.
    """

    file: str
    line: int
    field: str
    message: str
    column: str = ""

    def __str__(self) -> str:
        place = f"{self.file}:{self.line}" if self.line else self.file
        if self.column:
            place = f"{self.file}!{self.column}{self.line}"
        return ": ".join(part for part in (place, self.field, self.message) if part)


class PartsplanError(Exception):
    """Anything this program says no to; the message is one clear line."""


class InvalidFile(PartsplanError):
    """Files that cannot be read; carries every problem, in file order."""

    def __init__(self, problems: Iterable[Problem]) -> None:
        self.problems: tuple[Problem, ...] = tuple(sorted(set(problems)))
        super().__init__("\n".join(map(str, self.problems)))


class InvalidGarage(InvalidFile):
    """A garage that cannot be read."""


class InvalidSpending(InvalidFile):
    """A table of past spending that cannot be read."""


class InvalidRequest(PartsplanError):
    """A request that the garage cannot answer, such as a fault it does not have."""


class RefusedEntry(PartsplanError):
    """An entry that contradicts what is known; carries all that speaks against it.

    ``liftable`` tells whether it may be entered anyway.
    """

    def __init__(self, objections: Iterable[str], *, liftable: bool) -> None:
        self.objections = tuple(objections)
        self.liftable = liftable
        super().__init__("\n".join(self.objections))


class SolverFailed(PartsplanError):
    """The solver ended without a plan and without proof that there is none."""


class UnsoundPlan(PartsplanError):
    """A plan that verification refused; it is never shown."""

    def __init__(self, violations: Iterable[object]) -> None:
        self.violations = tuple(violations)
        listed = "; ".join(map(str, self.violations))
        super().__init__(f"the plan failed its verification: {listed}")


class NoKeptPlan(PartsplanError):
    """A plan to compare with that was never kept, or whose text cannot be read."""


class DamagedLogbook(PartsplanError):
    """A logbook that does not hold what was written into it; it is left as it is."""


class LogbookUnavailable(PartsplanError):
    """A logbook that cannot be read or written as things are; nothing is lost."""
