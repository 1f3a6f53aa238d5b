"""How good estimates were, by supplier and by route."""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from fractions import Fraction

from partsplan.domain import (
    Delays,
    Duds,
    Garage,
    Grouping,
    Ledger,
    Lesson,
    Lessons,
    Option,
    Part,
    PartState,
    Quote,
    Ratio,
)
from partsplan.ledger.days import days_after
from partsplan.ledger.norms import FEWEST, norms
from partsplan.ledger.wilson import wilson

CONFIDENCE = 0.9


def lessons(
    garage: Garage, quotes: Mapping[str, Quote], ledger: Ledger, today: date
) -> Lessons:
    """What every part that was ever ordered says of the quotes as they are now.

    Parts of options that the garage has no more say nothing.
    """
    cases = [
        _Case(part, garage.option[part.option], quotes[part.option])
        for part in (*ledger.earlier, *ledger.parts.values())
        if part.option in garage.option
    ]
    found = tuple(
        _lesson(grouping, name, together, today)
        for grouping, name, together in _grouped(garage, cases)
    )
    return Lessons(
        today=today,
        lessons=found,
        norms=tuple(norm for one in found for norm in norms(one)),
        fewest=FEWEST,
    )


@dataclass(frozen=True, slots=True)
class _Case:
    part: Part
    option: Option
    quote: Quote


def _grouped(
    garage: Garage, cases: Iterable[_Case]
) -> Iterator[tuple[Grouping, str, Sequence[_Case]]]:
    """Suppliers in the order of the garage, then routes in theirs."""
    suppliers = defaultdict[str | None, list[_Case]](list)
    routes = defaultdict[str, list[_Case]](list)
    for case in cases:
        suppliers[case.option.supplier].append(case)
        routes[case.option.route].append(case)
    for supplier in garage.supplier:
        if supplier in suppliers:
            yield Grouping.SUPPLIER, supplier, suppliers[supplier]
    for route in sorted(routes):
        yield Grouping.ROUTE, route, routes[route]


def _lesson(
    grouping: Grouping, name: str, cases: Sequence[_Case], today: date
) -> Lesson:
    return Lesson(
        grouping=grouping,
        name=name,
        cases=sum(case.part.order_known for case in cases),
        overdue=sum(_overdue(case.part, today) for case in cases),
        delays=_delays(cases),
        duds=_duds(cases),
        prices=_prices(cases),
        hours=_hours(cases),
    )


def _overdue(part: Part, today: date) -> bool:
    return part.state is PartState.ON_THE_WAY and part.expected < today


def _delays(cases: Sequence[_Case]) -> Delays | None:
    """Without parts whose order is not known, or dated after their arrival."""
    there = [
        (case.option.lead_days, (arrived - _expected(case)).days)
        for case in cases
        if (arrived := case.part.arrived) is not None
        and case.part.order_known
        and case.part.ordered <= arrived
    ]
    if not there:
        return None
    said = [lead for lead, _ in there]
    late = [days for _, days in there]
    return Delays(
        cases=len(there),
        mean=_mean(late),
        worst=max(late),
        said=_mean(said),
        same=len(set(said)) == 1,
    )


def _expected(case: _Case) -> date:
    """When a part was to arrive; the ledger forgets it once it is there."""
    return days_after(case.part.ordered, case.option.lead_days)


def _duds(cases: Sequence[_Case]) -> Duds | None:
    seen = [case for case in cases if case.part.state is not PartState.ON_THE_WAY]
    if not seen:
        return None
    duds = sum(case.part.failed is not None for case in seen)
    low, high = wilson(duds, len(seen), confidence=CONFIDENCE)
    return Duds(
        cases=len(seen),
        duds=duds,
        low=low,
        high=high,
        said=_mean([case.option.dud_chance for case in seen]),
    )


def _prices(cases: Sequence[_Case]) -> Ratio | None:
    return _ratio(
        (Fraction(case.part.price), Fraction(case.quote.landed))
        for case in cases
        if case.part.order_known and not case.part.replaces
    )


def _hours(cases: Sequence[_Case]) -> Ratio | None:
    return _ratio(
        (case.part.hours, case.option.hours)
        for case in cases
        if case.part.fitted is not None
    )


def _ratio(pairs: Iterable[tuple[Fraction, Fraction]]) -> Ratio | None:
    """Mean of what was by what was said, where anything was said."""
    ratios = [was / said for was, said in pairs if said]
    return Ratio(cases=len(ratios), mean=_mean(ratios)) if ratios else None


def _mean(values: Sequence[int] | Sequence[Fraction]) -> Fraction:
    return Fraction(sum(values)) / len(values)
