"""What a plan is told to do or to leave, whatever it is worth."""

from collections.abc import Iterator
from dataclasses import dataclass

from partsplan.domain import Offer
from partsplan.planning.model import Model

Held = tuple[list[tuple[int, float]], float | None, float | None]
"""Terms, and the least and the most that they may be."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Force:
    """Demands on the choices themselves, by id.

    Attributes
    ----------
    take, leave
        Faults that some job must name, and faults that no job may name.
    use, avoid
        Options that must be chosen, and options that must not.
    order
        Options that must be ordered in a month, as pairs.
    """

    take: frozenset[str] = frozenset()
    leave: frozenset[str] = frozenset()
    use: frozenset[str] = frozenset()
    avoid: frozenset[str] = frozenset()
    order: frozenset[tuple[str, int]] = frozenset()

    def __bool__(self) -> bool:
        return bool(self.take | self.leave | self.use | self.avoid | self.order)

    def rows(self, model: Model) -> Iterator[Held]:
        """The rows that hold a model to this."""

        def named(offer: Offer) -> set[str]:
            return {cure.fault for cure in offer.option.fixes}

        columns = list(zip(model.take, model.offers, strict=True))
        for fault in sorted(self.take):
            terms = [(one, 1.0) for one, offer in columns if fault in named(offer)]
            yield terms, 1.0, None
        for option in sorted(self.use):
            terms = [(one, 1.0) for one, o in columns if o.option.id == option]
            yield terms, 1.0, None
        for held in sorted(self.order):
            terms = [
                (one, 1.0) for one, o in columns if (o.option.id, o.ordered) == held
            ]
            yield terms, 1.0, None
        barred = [
            (one, 1.0)
            for one, offer in columns
            if offer.option.id in self.avoid or named(offer) & self.leave
        ]
        if barred:
            yield barred, None, 0.0
