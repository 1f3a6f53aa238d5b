"""Progress in whole units of a garage's currency, as people read money."""

from collections.abc import Callable

from partsplan.domain import Currency, Stage

Progress = Callable[[str, float, float | None, float | None], None]
"""Told the stage, seconds, best figure and bound while a plan is made."""


def in_units(progress: Progress | None, currency: Currency) -> Progress | None:
    """The same listener, told net worth in whole units instead of minor ones."""
    if progress is None:
        return None
    unit = currency.unit

    def told(
        stage: str, seconds: float, best: float | None, bound: float | None
    ) -> None:
        if stage == Stage.WORTH.value:
            best = None if best is None else best / unit
            bound = None if bound is None else bound / unit
        progress(stage, seconds, best, bound)

    return told
