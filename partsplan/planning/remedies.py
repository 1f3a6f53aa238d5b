"""What it would take: the least help from outside that would meet a demand."""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cached_property
from math import ceil

from partsplan.domain import Garage, Needs, Offer, PlanStatus, Stage, Stages
from partsplan.domain.numbers import CURED
from partsplan.errors import SolverFailed
from partsplan.planning import reach
from partsplan.planning.demands import Demand, demands
from partsplan.planning.model import Model, build
from partsplan.planning.solver import Solver, SolverRun, Tuning

HOURS_GRAIN = 100
"""Extra hours are told in hundredths."""

MOST_OFFERS = 50_000
"""With more, HiGHS keeps no time limit, and one sum takes longer than all may take."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Remedy:
    """Extra money in the first month, and extra own hours, that would do.

    Attributes
    ----------
    money
        None if no sum would do, or, where that is not exact, if none was found in
        the time. [minor units]
    hours
        [h]
    exact
        Whether no less would do.
    """

    money: int | None
    hours: Fraction | None
    exact: bool


NO_REMEDY = Remedy(money=None, hours=None, exact=True)
NOT_WORKED_OUT = Remedy(money=None, hours=None, exact=False)


def least_money(
    garage: Garage, offers: tuple[Offer, ...], idle: Needs, seconds: float
) -> Needs | None:
    """The least extra money with which some plan keeps the reserve, if it takes any.

    ``idle`` is what it takes if no job is done; money that moves on comes in its month.
    """
    first = garage.index(idle.month)
    months = range(first, first + 1) if garage.carry_over else range(garage.months)
    model = build(garage, offers, (), help_with_money=months)
    run = _least(Solver(model.program), model.extra_money.values(), seconds)
    if not run.values:
        raise SolverFailed("the time was up before the missing money was known")
    short = {
        month: ceil(run.values[column] - 1e-6)
        for month, column in model.extra_money.items()
    }
    month = next((month for month, money in short.items() if money), None)
    if month is None:
        return None
    return Needs(month=garage.month(month), money=sum(short.values()))


class Remedies:
    """What the demands that a plan does not meet would take; models are made once.

    ``offers`` are all offers, those that are out of reach too; ``figures`` are those
    of the plan.
    """

    def __init__(
        self, garage: Garage, offers: tuple[Offer, ...], figures: Stages
    ) -> None:
        self._garage = garage
        self._offers = offers
        self._figures = figures

    def least(self, asked: tuple[Demand, ...], *, seconds: float) -> Remedy:
        """The least help with which a plan meets these demands and loses no other.

        Net worth may be lost, unless it comes before the demands in the garage's order.
        Of more than ``MOST_OFFERS`` offers nothing is worked out.
        """
        if len(self._offers) > MOST_OFFERS:
            return NOT_WORKED_OUT
        unsure = False
        for hours_too in (False, True):
            model = self._with_hours if hours_too else self._with_money
            if not all(demand in model.unmet for demand in asked):
                continue
            found = _help(model, asked, self._figures, seconds)
            if found.money is not None:
                return replace(found, exact=found.exact and not unsure)
            unsure |= not found.exact
        return NOT_WORKED_OUT if unsure else NO_REMEDY

    @cached_property
    def _with_money(self) -> Model:
        within_hours = reach.within_hours(self._garage, self._offers)
        wanted = demands(self._garage)
        return build(
            self._garage, within_hours, wanted, help_with_money=self._paid_months
        )

    @cached_property
    def _with_hours(self) -> Model:
        return build(
            self._garage,
            self._offers,
            demands(self._garage),
            help_with_money=self._paid_months,
            help_with_hours=range(self._garage.months),
        )

    @property
    def _paid_months(self) -> range:
        """Money that moves on comes in the first month, other money in any."""
        return range(1 if self._garage.carry_over else self._garage.months)


def curing(offers: Iterable[Offer]) -> dict[str, list[Offer]]:
    """The offers that cure each fault."""
    found: dict[str, list[Offer]] = defaultdict(list)
    for offer in offers:
        for fault in offer.faults:
            if offer.option.relief(fault) >= CURED:
                found[fault].append(offer)
    return found


def meetable(cures: Mapping[str, Sequence[Offer]], demand: Demand) -> bool:
    """Whether money and hours without end could meet a demand."""
    return all(
        any(one.fitted <= demand.month < one.until for one in cures.get(fault, ()))
        for fault in demand.faults
    )


def _help(
    model: Model, asked: tuple[Demand, ...], figures: Stages, seconds: float
) -> Remedy:
    solver = Solver(model.program)
    solver.hold([(model.unmet[demand], 1.0) for demand in asked], high=0.0)
    for stage in Stage:
        counted = [(column, 1.0) for column in model.unmet_of(stage)]
        if counted:
            allowed = figures.of(stage) - model.hopeless_of(stage)
            if stage is asked[0].stage:  # no other is given up for those asked
                allowed -= len(asked)
            solver.hold(counted, high=max(0, allowed))
    order = model.garage.priority
    if order.index(Stage.WORTH) < order.index(asked[0].stage):
        solver.hold(model.worth, low=figures.net_worth - 0.5)
    hours, exact = Fraction(0), True
    if model.extra_hours:
        run = _least(solver, model.extra_hours.values(), seconds)
        if not run.values:
            return _none(run)
        exact = run.status is PlanStatus.PROVEN
        needed = sum(run.values[column] for column in model.extra_hours.values())
        hours = Fraction(ceil(needed * HOURS_GRAIN - 1e-6), HOURS_GRAIN)
        solver.hold(
            [(one, 1.0) for one in model.extra_hours.values()], high=float(hours)
        )
    run = _least(solver, model.extra_money.values(), seconds)
    if not run.values:
        return _none(run)
    money = sum(run.values[column] for column in model.extra_money.values())
    return Remedy(
        money=ceil(money - 1e-6),
        hours=hours,
        exact=exact and run.status is PlanStatus.PROVEN,
    )


def _none(run: SolverRun) -> Remedy:
    """That there is no remedy, or that the time was up before one was found."""
    return NO_REMEDY if run.status is PlanStatus.INFEASIBLE else NOT_WORKED_OUT


def _least(solver: Solver, columns: Iterable[int], seconds: float) -> SolverRun:
    """The least sum of some columns, in whole minor units or hundredths of hours.

    Raises
    ------
    KeyboardInterrupt
        If the search was stopped.
    """
    run = solver.maximise(
        [(one, -1.0) for one in columns], Tuning(seconds=seconds, gap=0.0)
    )
    if run.interrupted:
        raise KeyboardInterrupt
    return run
