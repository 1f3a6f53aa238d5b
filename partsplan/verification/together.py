"""Rules that chosen options keep together."""

from collections import Counter, defaultdict
from collections.abc import Iterator

from partsplan.domain import FaultStatus
from partsplan.domain.numbers import CURED
from partsplan.verification.facts import Facts
from partsplan.verification.violation import Violation


def one_lasting(facts: Facts) -> Iterator[Violation]:
    """For each fault at most one lasting option that cures it alone."""
    alone = Counter(
        option.fixes[0].fault
        for option in facts.chosen
        if option.lasting and len(option.fixes) == 1
    )
    for fault, number in alone.items():
        if number > 1:
            yield Violation("one lasting", f"{fault} has {number}")


def in_order(facts: Facts) -> Iterator[Violation]:
    """What comes after a fault waits until that is cured."""
    for option in facts.chosen:
        for cure in option.fixes:
            for before in facts.garage.fault[cure.fault].after:
                if not _cured_by(facts, before, facts.fitted(option)):
                    yield Violation("in order", f"{option.id} before {before}")


def in_pairs(facts: Facts) -> Iterator[Violation]:
    """As many lasting options for both of a pair, in all and by each shared route."""
    garage = facts.garage
    for fault in garage.faults:
        for name in fault.pair_with:
            other = garage.fault[name]
            if {fault.status, other.status} != {FaultStatus.OPEN}:
                continue
            mine, theirs = (_fitted(facts, one.id) for one in (fault, other))
            if Counter(month for month, _ in mine) != Counter(m for m, _ in theirs):
                yield Violation("in pairs", f"{fault.id} and {name}: months differ")
            shared = set.intersection(
                *(
                    {o.route for o in garage.options_for[one] if o.lasting}
                    for one in (fault.id, name)
                )
            )
            by_route = [
                Counter(one for one in jobs if one[1] in shared)
                for jobs in (mine, theirs)
            ]
            if by_route[0] != by_route[1]:
                yield Violation("in pairs", f"{fault.id} and {name}: routes differ")


def followed_up(facts: Facts) -> Iterator[Violation]:
    """A stand-in that runs out within the horizon is replaced in time."""
    for option in facts.chosen:
        if option.lasting:
            continue
        fitted = facts.fitted(option)
        last = fitted + (option.followup_within or 0)
        if last >= facts.garage.months:
            continue
        for cure in option.fixes:
            later = [month for month, _ in _fitted(facts, cure.fault)]
            if not any(fitted < month <= last for month in later):
                yield Violation("followed up", f"{option.id} for {cure.fault}")


def with_tools(facts: Facts) -> Iterator[Violation]:
    """Every tool is there in time, and none is bought for nothing."""
    fitted_with: dict[str, list[int]] = defaultdict(list)
    for option in facts.chosen:
        for name in option.tools:
            fitted_with[name].append(facts.fitted(option))
    for tool in facts.garage.tools:
        fitted = fitted_with[tool.id]
        bought = facts.choices.tools.get(tool.id)
        needed = bool(fitted) and not tool.owned
        if not needed and bought is not None:
            yield Violation("with tools", f"{tool.id} is not needed")
        if needed and (bought is None or bought > min(fitted)):
            yield Violation("with tools", f"{tool.id} is missing in {min(fitted)}")


def within_money(facts: Facts) -> Iterator[Violation]:
    """No month ends below the reserve."""
    for month, balance in enumerate(facts.balances()):
        if balance < facts.garage.reserve:
            yield Violation("within money", f"month {month} ends with {balance}")


def within_hours(facts: Facts) -> Iterator[Violation]:
    """No month takes more own hours than it has."""
    for month, (taken, have) in enumerate(
        zip(facts.hours(), facts.garage.monthly_hours, strict=True)
    ):
        if taken > have:
            yield Violation("within hours", f"month {month} takes {float(taken)}")


def _cured_by(facts: Facts, fault: str, month: int) -> bool:
    fact = facts.garage.fault[fault]
    if fact.status is not FaultStatus.OPEN:
        return fact.status is FaultStatus.FIXED
    if any(one.relief >= CURED for one in fact.fitted):
        return True
    return any(
        option.relief(fault) >= CURED and facts.fitted(option) <= month
        for option in facts.naming.get(fault, ())
    )


def _fitted(facts: Facts, fault: str) -> list[tuple[int, str]]:
    """Fitting month and route of every lasting option that names a fault."""
    return [
        (facts.fitted(option), option.route.value)
        for option in facts.naming.get(fault, ())
        if option.lasting
    ]
