"""What to check before anything is bought, and what that saves."""

from dataclasses import dataclass
from fractions import Fraction

from partsplan.domain.fault import Cause
from partsplan.domain.reasons import Reason


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckStep:
    """One suspected cause at its place in the order.

    Attributes
    ----------
    check
        Money and own hours of its check. [minor units]
    checked
        False for the one that is left when all others are ruled out.
    chance
        That it is this one, once those before it are ruled out. [0-1]
    cure_cost
        Expected cost of its cure; None without one. [minor units]
    sure_enough
        From this chance on, buying its cure without a check is right; None without
        a cure. [0-1]
    bars
        What rules its cure out.
    """

    cause: Cause
    check: Fraction
    checked: bool
    chance: Fraction
    cure_cost: int | None
    sure_enough: Fraction | None
    bars: tuple[Reason, ...] = ()

    @property
    def skips_check(self) -> bool:
        """Whether its cure is better bought at once when its turn comes."""
        return (
            self.checked
            and self.sure_enough is not None
            and self.chance >= self.sure_enough
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Trial:
    """What somebody tries who buys on suspicion.

    Attributes
    ----------
    causes
        The causes it settles.
    cure
        The option that is bought; None where there is none, so that only a check
        tells.
    cost
        Of the cure, or of that check. [minor units]
    checked
        False for a cause without a cure that is left when all others are ruled out.
    """

    causes: tuple[str, ...]
    cure: str | None
    cost: Fraction
    checked: bool = True


@dataclass(frozen=True, slots=True, kw_only=True)
class Diagnosis:
    """The suspected causes of one fault, of which at most one is at work.

    Attributes
    ----------
    steps
        In the best order to check.
    ruled_out
        Causes with a chance of 0, which are never checked.
    something_else
        Chance that it is none of them. [0-1]
    checks
        Expected cost of the checks alone. [minor units]
    expected
        The same with the cure of what is found. [minor units]
    at_once
        The same order, but cures bought without a check where that is right.
        [minor units]
    trials
        In the best order to buy on suspicion.
    on_suspicion
        Expected cost of that. [minor units]
    several
        The best order if several causes may be at work, up to the first find.
    first_find
        Expected cost of its checks. [minor units]
    """

    fault: str
    steps: tuple[CheckStep, ...]
    ruled_out: tuple[str, ...]
    something_else: Fraction
    checks: int
    expected: int
    at_once: int
    trials: tuple[Trial, ...]
    on_suspicion: int
    several: tuple[str, ...]
    first_find: int

    @property
    def saving(self) -> int:
        """What checking saves against buying on suspicion. [minor units]"""
        return self.on_suspicion - self.expected


@dataclass(frozen=True, slots=True, kw_only=True)
class SharedCause:
    """One cause that several faults of a vehicle point at.

    Attributes
    ----------
    causes
        How it is called, each wording once.
    cure
        The option that cures it; None if only the wording is the same.
    lamps, codes
        Of these faults.
    """

    vehicle: str
    faults: tuple[str, ...]
    causes: tuple[str, ...]
    cure: str | None
    lamps: tuple[str, ...]
    codes: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Lamp:
    """A warning lamp and the faults that keep it lit; it is out without any."""

    vehicle: str
    name: str
    lit_by: tuple[str, ...]
