"""Turns offers into named rows and columns."""

from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from partsplan.domain import Garage, Offer, Stage
from partsplan.domain.numbers import CURED
from partsplan.planning import cash, gains, links, work
from partsplan.planning.demands import Demand
from partsplan.planning.draft import Draft
from partsplan.planning.program import Program


@dataclass(frozen=True, slots=True, kw_only=True)
class Model:
    """A program, and what its columns mean.

    Attributes
    ----------
    take, buy
        The column of each offer, and of each tool and buying month.
    ship, free
        The columns of each supplier and ordering month: shipping paid, and free.
    free_rows
        The row of each column of free shipping that asks for enough goods.
    opened
        The column of each access group and fitting month.
    bundles
        Columns of offers that exclude each other, see ``Draft``.
    worth
        Net worth as (column, minor units).
    outlays
        Money that leaves as (column, month, minor units).
    efforts
        Own hours as (column, month, hours).
    unmet
        For each demand that some offer could meet: its column, 1 if unmet.
    hopeless
        Demands that no offer can meet.
    extra_money, extra_hours
        Columns of help from outside, by month, where asked for.
    """

    garage: Garage
    offers: tuple[Offer, ...]
    program: Program
    take: tuple[int, ...]
    buy: dict[tuple[str, int], int]
    ship: dict[tuple[str, int], int]
    free: dict[tuple[str, int], int]
    free_rows: dict[int, int]
    opened: dict[tuple[str, int], int]
    bundles: tuple[tuple[int, ...], ...]
    worth: tuple[tuple[int, float], ...]
    outlays: tuple[tuple[int, int, int], ...]
    efforts: tuple[tuple[int, int, Fraction], ...]
    unmet: dict[Demand, int]
    hopeless: tuple[Demand, ...]
    extra_money: dict[int, int] = field(default_factory=dict)
    extra_hours: dict[int, int] = field(default_factory=dict)

    def at_one(self, values: Sequence[float]) -> tuple[int, ...]:
        """The whole columns at 1 where columns have these values."""
        return tuple(
            place
            for place, column in enumerate(self.program.columns)
            if column.integer and values[place] > 0.5
        )

    def unmet_of(self, stage: Stage) -> list[int]:
        """The columns that count for a stage."""
        return [one for demand, one in self.unmet.items() if demand.stage is stage]

    def hopeless_of(self, stage: Stage) -> int:
        """How many demands of a stage no plan can meet."""
        return sum(demand.stage is stage for demand in self.hopeless)


def build(
    garage: Garage,
    offers: tuple[Offer, ...],
    demands: tuple[Demand, ...],
    *,
    help_with_money: Iterable[int] = (),
    help_with_hours: Iterable[int] = (),
) -> Model:
    """The whole model; extra money or hours can be had in the months of help."""
    draft = Draft(garage, offers)
    draft.take = [
        draft.program.binary(f"order {offer.option.id} in {offer.ordered}")
        for offer in offers
    ]
    links.exclude(draft)
    links.follow(draft)
    links.pair(draft)
    links.follow_up(draft)
    gains.gain(draft)
    cash.pay_offers(draft)
    cash.pay_shipping(draft)
    cash.pay_tools(draft)
    money = _help(draft, "money", help_with_money)
    hours = _help(draft, "hours", help_with_hours)
    cash.hold_reserve(draft, money)
    work.hold_hours(draft, hours)
    unmet, hopeless = _count_unmet(draft, demands)
    return Model(
        garage=garage,
        offers=offers,
        program=draft.program,
        take=tuple(draft.take),
        buy=draft.buy,
        ship=draft.ship,
        free=draft.free,
        free_rows=draft.free_rows,
        opened=draft.opened,
        bundles=tuple(
            tuple(draft.take[place] for place in bundle) for bundle in draft.bundles
        ),
        worth=tuple(draft.worth),
        outlays=tuple(draft.outlays),
        efforts=tuple(draft.efforts),
        unmet=unmet,
        hopeless=hopeless,
        extra_money=money,
        extra_hours=hours,
    )


def _help(draft: Draft, what: str, months: Iterable[int]) -> dict[int, int]:
    return {
        month: draft.program.share(f"extra {what} in {month}", high=None, common=True)
        for month in months
    }


def _count_unmet(
    draft: Draft, demands: tuple[Demand, ...]
) -> tuple[dict[Demand, int], tuple[Demand, ...]]:
    """A column for each demand, at least 1 less the cures in force of each fault."""
    cures: dict[str, list[int]] = defaultdict(list)
    for place, offer in enumerate(draft.offers):
        for fault in offer.faults:
            if offer.option.relief(fault) >= CURED:
                cures[fault].append(place)
    unmet: dict[Demand, int] = {}
    hopeless: list[Demand] = []
    for demand in demands:
        in_force = [
            [
                draft.take[place]
                for place in cures[fault]
                if draft.offers[place].fitted
                <= demand.month
                < draft.offers[place].until
            ]
            for fault in demand.faults
        ]
        if not all(in_force):
            hopeless.append(demand)
            continue
        what = f"{demand.subject} {demand.stage} unmet in {demand.month}"
        column = unmet[demand] = draft.program.share(what)
        for fault, columns in zip(demand.faults, in_force, strict=True):
            terms = [(one, 1.0) for one in columns]
            name = f"{what} unless {fault} is cured"
            draft.program.row(name, [(column, 1.0), *terms], low=1.0)
    return unmet, tuple(hopeless)
