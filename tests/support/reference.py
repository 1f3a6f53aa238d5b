"""A second program for the same rules: slow, plain, exact, and for tests only.

It shares nothing with the program but the types of a garage. ``best`` tries every
choice, so it is for garages of a handful of options and months.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import product

from partsplan.domain import Garage, Stage, Stages
from tests.support.reference_prices import Priced, offers, refusals
from tests.support.reference_rules import (
    balances,
    broken_links,
    cash,
    demanded,
    figures,
    own_hours,
    promised,
    supplier_orders,
    too_many_alone,
    tools_needed,
)

__all__ = ["Best", "Judgement", "Priced", "best", "judge", "offers", "refusals"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Judgement:
    """What a choice of orders and tools breaks, and what it comes to.

    Attributes
    ----------
    broken
        Rules that it breaks, one sentence each; empty if it is legal.
    out, back, balances
        By month. [minor units]
    hours
        By month. [h]
    orders
        Goods and shipping by supplier and month. [minor units]
    """

    broken: tuple[str, ...]
    stages: Stages
    out: tuple[int, ...]
    back: tuple[int, ...]
    balances: tuple[int, ...]
    hours: tuple[Fraction, ...]
    orders: Mapping[tuple[str, int], tuple[int, int]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Best:
    """An optimal choice; ``figures`` stand in the garage's order of priority."""

    figures: tuple[int, ...]
    orders: Mapping[str, int]
    tools: Mapping[str, int]


def judge(
    garage: Garage,
    orders: Mapping[str, int],
    tools: Mapping[str, int],
    known: Mapping[tuple[str, int], Priced] | None = None,
) -> Judgement:
    """Every rule and figure of ordering those options and buying those tools.

    An order that is no offer breaks a rule and is left out of the figures. ``known``
    are the garage's offers, where they are at hand already.
    """
    known = offers(garage) if known is None else known
    chosen = [known[order] for order in orders.items() if order in known]
    bought = {
        tool: month
        for tool, month in tools.items()
        if tool in garage.tool and 0 <= month < garage.months
    }
    out, back, balance = cash(garage, chosen, bought)
    hours = [own_hours(garage, chosen, month) for month in range(garage.months)]
    return Judgement(
        broken=(
            *(f"{order}: no offer" for order in orders.items() if order not in known),
            *too_many_alone(chosen),
            *broken_links(garage, chosen),
            *_broken_tools(garage, chosen, tools),
            *_over_hours(garage, hours),
            *_below_reserve(garage, balance),
        ),
        stages=figures(demanded(garage), garage, chosen),
        out=tuple(out),
        back=tuple(back),
        balances=tuple(balance),
        hours=tuple(hours),
        orders=supplier_orders(garage, chosen),
    )


def best(garage: Garage) -> Best | None:
    """The best of all choices, stage by stage; None if none is legal.

    Of those that fit as many of the parts that are bought as any legal choice does.
    """
    demands = demanded(garage)
    known = offers(garage)
    by_option = [
        [
            known[option.id, month]
            for month in range(garage.months)
            if (option.id, month) in known
        ]
        for option in garage.options
    ]
    found: Best | None = None
    record: tuple[int, ...] = ()
    for chosen in _combinations(garage, by_option):
        stages = figures(demands, garage, chosen)
        fitted = sum(offer.option.bought is not None for offer in chosen)
        losses = (-fitted, *(_loss(stages, stage) for stage in garage.priority))
        if found and losses >= record:
            continue
        tools = _legal_tools(garage, chosen)
        if tools is None:
            continue
        record = losses
        found = Best(
            figures=tuple(stages.of(stage) for stage in garage.priority),
            orders={offer.option.id: offer.ordered for offer in chosen},
            tools=tools,
        )
    return found


def _loss(stages: Stages, stage: Stage) -> int:
    """The figure of a stage, so that less is better."""
    return -stages.net_worth if stage is Stage.WORTH else stages.of(stage)


def _combinations(
    garage: Garage,
    by_option: Sequence[Sequence[Priced]],
    chosen: tuple[Priced, ...] = (),
) -> Iterator[tuple[Priced, ...]]:
    """All ways to take one offer or none of each option, hopeless ones left out."""
    if not by_option:
        yield chosen
        return
    offers_here, later = by_option[0], by_option[1:]
    yield from _combinations(garage, later, chosen)
    hope = [
        sum(max((offer.back[month] for offer in offers), default=0) for offers in later)
        for month in range(garage.months)
    ]
    for offer in offers_here:
        if not _hopeless(garage, (*chosen, offer), hope):
            yield from _combinations(garage, later, (*chosen, offer))


def _hopeless(garage: Garage, chosen: Sequence[Priced], hope: Sequence[int]) -> bool:
    """Whether nothing that may be added can make these offers legal.

    Hours only grow, so the month of the last offer tells. Money only shrinks but for
    what comes back: ``hope`` is the most that further offers could bring back by
    month. Shipping and tools are not asked, as a further offer may make shipping
    free.
    """
    out, back = promised(garage)
    for month in range(garage.months):
        out[month] += sum(offer.out[month] for offer in chosen)
        back[month] += hope[month] + sum(offer.back[month] for offer in chosen)
    fitted = chosen[-1].fitted
    return (
        any(too_many_alone(chosen))
        or any(_below_reserve(garage, balances(garage, out, back)))
        or own_hours(garage, chosen, fitted) > garage.monthly_hours[fitted]
    )


def _legal_tools(garage: Garage, chosen: Sequence[Priced]) -> dict[str, int] | None:
    """Months in which to buy the tools so that all is legal; None if there are none.

    No figure depends on these months, so that the first ones found will do.
    """
    if any(broken_links(garage, chosen)):
        return None
    first = tools_needed(garage, chosen)
    for months in product(*(range(month + 1) for month in first.values())):
        tools = dict(zip(first, months, strict=True))
        _, _, balance = cash(garage, chosen, tools)
        if not any(_below_reserve(garage, balance)):
            return tools
    return None


def _broken_tools(
    garage: Garage, chosen: Sequence[Priced], tools: Mapping[str, int]
) -> Iterator[str]:
    first = tools_needed(garage, chosen)
    for tool, month in first.items():
        if tool not in tools:
            yield f"{tool}: needed in month {month}, never bought"
        elif not 0 <= tools[tool] <= month:
            yield f"{tool}: needed in month {month}, bought in month {tools[tool]}"
    for tool in tools:
        if tool not in first:
            yield f"{tool}: bought, but no job needs it"


def _over_hours(garage: Garage, hours: Sequence[Fraction]) -> Iterator[str]:
    for month, (needed, given) in enumerate(
        zip(hours, garage.monthly_hours, strict=True)
    ):
        if needed > given:
            yield f"month {month}: {needed} hours of {given}"


def _below_reserve(garage: Garage, balance: Sequence[int]) -> Iterator[str]:
    for month, left in enumerate(balance):
        if left < garage.reserve:
            yield f"month {month}: {left} left, reserve {garage.reserve}"
