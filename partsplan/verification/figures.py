"""Every figure that a plan tells, against the same worked out anew."""

from collections import Counter, defaultdict
from collections.abc import Callable, Iterator

from partsplan.domain import (
    Fault,
    Inspection,
    LedgerLine,
    Likelihood,
    Option,
    Order,
    Plan,
    Stage,
    Stages,
    ToolBuy,
)
from partsplan.verification.facts import Facts
from partsplan.verification.violation import Violation

HIGH = {(1, "A"), (1, "B"), (1, "C"), (2, "A"), (2, "B")}
"""The High cells of MIL-STD-882E, table III: severity and likelihood."""


def figures(facts: Facts, plan: Plan) -> Iterator[Violation]:
    """Wrong jobs, orders, tools, money, hours, stages, bounds."""
    for name, told, found in (
        ("start", plan.start, facts.garage.start),
        ("orders", plan.orders, _orders(facts)),
        ("tools", plan.tools, _tools(facts)),
        ("ledger", plan.ledger, _ledger(facts)),
        ("jobs", _told_jobs(plan), _jobs(facts)),
        ("stages", plan.stages, stages(facts)),
    ):
        if told != found:
            yield Violation(f"figures: {name}", f"told {told}, found {found}")
    worth = plan.stages.net_worth
    gap = (plan.bound - worth) / max(1, abs(worth))
    if plan.bound < worth or plan.stage_bounds.net_worth != plan.bound:
        yield Violation("figures: bound", f"{plan.bound} for a worth of {worth}")
    for stage in (Stage.DEADLINES, Stage.SAFETY, Stage.MOBILITY):
        if not 0 <= plan.stage_bounds.of(stage) <= plan.stages.of(stage):
            yield Violation("figures: bound", f"no bound for {stage}")
    if abs(plan.gap - gap) > 1e-12:
        yield Violation("figures: gap", f"told {plan.gap}, found {gap}")


def stages(facts: Facts) -> Stages:
    """What the stages optimise."""
    return Stages(
        missed_deadlines=_missed_deadlines(facts) + _missed_milestones(facts),
        unsafe_vehicle_months=_bad_months(facts, _forbids_driving),
        undrivable_vehicle_months=_bad_months(facts, lambda f: f.drivability == 4),
        net_worth=facts.net_worth(),
    )


def _forbids_driving(fault: Fault) -> bool:
    if fault.inspection is Inspection.DANGEROUS:
        return True
    likelihood: Likelihood = fault.likelihood
    return (fault.severity, likelihood.value) in HIGH


def _asked_in(facts: Facts, fault: str, month: int) -> bool:
    garage = facts.garage
    keep = garage.vehicle[garage.fault[fault].vehicle].keep_months
    return month < min(garage.months, keep)


def _missed_deadlines(facts: Facts) -> int:
    missed = 0
    for fault in facts.garage.faults:
        if fault.fix_by is not None:
            month = max(0, facts.garage.index(fault.fix_by))
            asked = _asked_in(facts, fault.id, month)
            missed += asked and not facts.cured(fault.id, month)
    return missed


def _missed_milestones(facts: Facts) -> int:
    missed = 0
    for milestone in facts.garage.milestones:
        month = max(0, facts.garage.index(milestone.month))
        missed += any(
            _asked_in(facts, fault, month) and not facts.cured(fault, month)
            for fault in milestone.faults
        )
    return missed


def _bad_months(facts: Facts, bad: Callable[[Fault], bool]) -> int:
    garage = facts.garage
    bad_on: dict[str, list[str]] = defaultdict(list)
    for fault in garage.faults:
        if bad(fault):
            bad_on[fault.vehicle].append(fault.id)
    return sum(
        garage.driven(vehicle, month)
        and any(not facts.cured(fault, month) for fault in bad_on[vehicle.id])
        for vehicle in garage.vehicles
        for month in range(garage.months)
    )


def _orders(facts: Facts) -> tuple[Order, ...]:
    return tuple(
        Order(
            supplier=supplier,
            month=month,
            goods=goods,
            shipping=facts.shipping(supplier, goods),
        )
        for (month, supplier), goods in facts.goods().items()
    )


def _tools(facts: Facts) -> tuple[ToolBuy, ...]:
    bought = [
        ToolBuy(tool=tool, month=month, price=facts.garage.tool[tool].price)
        for tool, month in facts.choices.tools.items()
    ]
    return tuple(sorted(bought, key=lambda one: (one.month, one.tool)))


def _ledger(facts: Facts) -> tuple[LedgerLine, ...]:
    columns = (
        facts.garage.monthly_budget,
        *facts.money(),
        facts.balances(),
        facts.hours(),
    )
    return tuple(
        LedgerLine(
            month=month, budget=budget, out=out, back=back, balance=balance, hours=hours
        )
        for month, (budget, out, back, balance, hours) in enumerate(
            zip(*columns, strict=True)
        )
    )


def _jobs(facts: Facts) -> Counter[tuple[object, ...]]:
    return Counter(
        (
            option.id,
            tuple(cure.fault for cure in option.fixes),
            option.route,
            option.bought.supplier if option.bought else option.supplier,
            _ordered(facts, option),
            facts.fitted(option),
            facts.prices[option.id].landed,
            facts.prices[option.id].deposit,
            facts.charge(option),
            option.hours,
            option.bought is not None,
        )
        for option in facts.chosen
    )


def _ordered(facts: Facts, option: Option) -> int:
    """The ordering month, before the start of what was bought then."""
    if option.bought:
        return facts.garage.index(option.bought.month)
    return facts.ordered(option)


def _told_jobs(plan: Plan) -> Counter[tuple[object, ...]]:
    return Counter(
        (
            job.option,
            job.faults,
            job.route,
            job.supplier,
            job.ordered,
            job.fitted,
            job.landed,
            job.deposit,
            job.charge,
            job.hours,
            job.bought,
        )
        for job in plan.jobs
    )
