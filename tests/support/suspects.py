"""A garage with suspected causes, written in a few words."""

from collections.abc import Sequence
from fractions import Fraction
from typing import Any

from partsplan.domain import Cause, Garage
from tests.support import building


def cause(name: str, chance: str | Fraction, check: int = 0, **changes: Any) -> Cause:
    """A suspected cause of ``f1``, its check in minor units."""
    facts: dict[str, Any] = {
        "fault": "f1",
        "cause": name,
        "chance": Fraction(chance),
        "check_cost": check,
    }
    return Cause(**facts | changes)


def suspecting(*causes: Cause, **changes: Any) -> Garage:
    """One car with these suspected causes; ``o1`` costs 100.00."""
    return building.garage(**{"causes": causes} | changes)


def priced(prices: Sequence[int], causes: Sequence[Cause], **changes: Any) -> Garage:
    """The same with a cure for each cause, at these prices. [minor units]"""
    cures = [f"cure-{place}" for place in range(len(prices))]
    return suspecting(
        *(
            cause(
                one.cause,
                one.chance,
                one.check_cost,
                check_hours=one.check_hours,
                cure=cure,
            )
            for one, cure in zip(causes, cures, strict=True)
        ),
        options=tuple(
            building.option(cure, price=amount)
            for cure, amount in zip(cures, prices, strict=True)
        ),
        **changes,
    )
