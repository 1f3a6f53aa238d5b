"""From a garage to the best plan for it."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from functools import cached_property
from math import inf

from partsplan.domain import (
    Choices,
    Garage,
    Needs,
    Offer,
    Plan,
    PlanStatus,
    Stage,
    Stages,
)
from partsplan.errors import SolverFailed
from partsplan.planning import decode, reach, remedies, stages, wide
from partsplan.planning.demands import Demand, demands
from partsplan.planning.force import Force, Held
from partsplan.planning.limits import Limits, Optimum, Progress
from partsplan.planning.model import Model, build
from partsplan.planning.solver import solver_name
from partsplan.planning.staying import nearest
from partsplan.planning.stopwatch import Now, Stopwatch
from partsplan.planning.waiting import Fitting, at_least, company, most_fitted, waiting
from partsplan.pricing import offers

NOTHING = Force()
FITTING_SHARE = 0.2
"""Most of the time to find how many of the parts that are bought can be fitted."""
NARROW = 2000
"""Programs with no more columns are solved at once, stage by stage."""


def plan(
    garage: Garage,
    *,
    seconds: float = 30.0,
    gap: float = 1e-4,
    threads: int = 1,
    progress: Progress | None = None,
    clock: Now | None = None,
) -> Plan | Needs:
    """The best plan within the time, or the money without which there is none.

    Parameters
    ----------
    seconds
        Longest search. [s]
    gap
        Relative gap at which a plan counts as proven. [fraction]
    clock
        Without one only the solver's own seconds count.

    Raises
    ------
    SolverFailed
        If the solver refused the model, or found nothing in time.
    """
    limits = Limits(seconds=seconds, gap=gap, threads=threads, clock=clock)
    return must_be(Planner(garage).best(limits, progress=progress))


def must_be(found: Plan | Needs | None) -> Plan | Needs:
    """What was found where nothing was forced, so that there must be something.

    Raises
    ------
    SolverFailed
    """
    if found is None:
        raise SolverFailed("the solver says that not even buying nothing is possible")
    return found


def replan(
    garage: Garage,
    *,
    force: Force = NOTHING,
    start: Choices | None = None,
    seconds: float = 30.0,
    gap: float = 1e-4,
    threads: int = 1,
    progress: Progress | None = None,
) -> Plan | Needs | None:
    """The best plan that does what is forced; None if no plan does.

    ``start`` are choices to begin the search from, those of an earlier plan, say; the
    rest is as for ``plan``.
    """
    limits = Limits(seconds=seconds, gap=gap, threads=threads)
    return Planner(garage).best(limits, force=force, start=start, progress=progress)


class Planner:
    """Plans one garage again and again; offers and model are made once."""

    def __init__(self, garage: Garage) -> None:
        self.garage = garage

    @cached_property
    def offers(self) -> tuple[Offer, ...]:
        """Every offer of the garage."""
        return offers(self.garage)

    @cached_property
    def demands(self) -> tuple[Demand, ...]:
        """What a plan should reach before money counts."""
        return demands(self.garage)

    @cached_property
    def model(self) -> Model:
        """The model of all offers in reach."""
        in_reach = reach.reachable(self.garage, self.offers)
        return build(self.garage, in_reach, self.demands)

    def best(
        self,
        limits: Limits,
        *,
        force: Force = NOTHING,
        start: Choices | None = None,
        progress: Progress | None = None,
    ) -> Plan | Needs | None:
        """The best plan that does what is forced; None if no plan does.

        It fits as many of the parts that are bought as any such plan can.
        """
        for fitting in self._fittings(force, limits):
            rows = (at_least(self.model, fitting.parts),)
            begin = start or fitting.choices
            found = self._best(limits, force, begin, progress, rows)
            if found is not None:
                return found
        return self._best(limits, force, start, progress)

    def _fittings(self, force: Force, limits: Limits) -> Iterator[Fitting]:
        """All parts that wait, if so many can be fitted; then as many as can be."""
        if not any(option.bought for option in self.garage.options):
            return
        if not (parts := waiting(self.model)):
            return
        if (known := self._fitted) is not None and known.parts == len(parts):
            yield known
        most = most_fitted(
            self.model,
            force.rows(self.model),
            seconds=limits.seconds * FITTING_SHARE,
            start=known.choices if known else None,
        )
        if most is not None and most.parts:
            yield most

    @cached_property
    def _fitted(self) -> Fitting | None:
        """As many of the parts that are bought as the jobs linked to them allow."""
        offers = company(self.garage, self.model.offers)
        return most_fitted(build(self.garage, offers, ()), seconds=inf)

    def _best(
        self,
        limits: Limits,
        force: Force,
        start: Choices | None,
        progress: Progress | None,
        fitted: tuple[Held, ...] = (),
    ) -> Plan | Needs | None:
        garage = self.garage
        needs = reach.needs(garage)
        if needs and reach.jobs_may_help(garage):
            needs = remedies.least_money(garage, self.offers, needs, limits.seconds)
            known = None
        else:
            known = None if force or fitted else ()
        if needs:
            return needs
        watch = Stopwatch(limits.seconds, limits.clock)
        rows = (*fitted, *force.rows(self.model))
        if any(low is not None and not terms for terms, low, _ in rows):
            return None  # no offer could do what is forced
        limits = replace(limits, seconds=watch.left)
        found = self._optimise()(
            self.model,
            self.demands,
            Optimum(ones=known),
            limits,
            rows=rows,
            hint=decode.encode(self.model, start) if start else None,
            progress=progress,
        )
        if found is None:
            return None
        return _plan(self.model, self.demands, found, limits.gap)

    def staying(
        self, plan: Plan, wishes: Mapping[str, int], spare: int, limits: Limits
    ) -> Plan:
        """The plan that keeps most of ``wishes``, at no more than ``spare`` less worth.

        ``wishes`` are ordering months by option. The counted stages stay as they are;
        so does the plan where nothing nearer was found, or where its program is too
        wide for this second search. [minor units]

        Raises
        ------
        SolverFailed
        """
        model = self.model
        if len(model.program.columns) > NARROW:
            return plan
        fitted = waiting(model) & plan.choices.orders.keys()
        rows = Force(use=fitted).rows(model)
        start = decode.encode(model, plan.choices)
        ones = nearest(model, plan.stages, start, wishes, spare, limits, rows)
        if ones is None or set(ones) == set(start):
            return plan
        found = Optimum(
            ones=ones,
            bounds={stage: plan.stage_bounds.of(stage) for stage in Stage},
            proven=all(
                plan.stages.of(stage) == plan.stage_bounds.of(stage)
                for stage in Stage
                if stage is not Stage.WORTH
            ),
            seconds=plan.seconds,
            interrupted=plan.interrupted,
        )
        return _plan(model, self.demands, found, limits.gap)

    def _optimise(self) -> Callable[..., Optimum | None]:
        """How this garage is best searched."""
        narrow = len(self.model.program.columns) <= NARROW
        worth_last = self.garage.priority[-1] is Stage.WORTH
        return stages.optimise if narrow or not worth_last else wide.optimise

    def answer(
        self, limits: Limits, *, force: Force = NOTHING, start: Choices | None = None
    ) -> Plan | Needs | None:
        """The same for a question beside the plan.

        Raises
        ------
        KeyboardInterrupt
            If the search was stopped: half a search is no answer.
        """
        found = self.best(limits, force=force, start=start)
        if isinstance(found, Plan) and found.interrupted:
            raise KeyboardInterrupt
        return found


def _plan(model: Model, wanted: tuple[Demand, ...], found: Optimum, gap: float) -> Plan:
    garage = model.garage
    chosen, choices = decode.decode(model, found.ones or ())
    figures = decode.stages(garage, chosen, choices, wanted)
    ordered = decode.orders(garage, chosen)
    bought = decode.tool_buys(garage, choices)
    bound = found.bounds[Stage.WORTH]
    reached = (bound - figures.net_worth) / max(1, abs(figures.net_worth))
    proven = found.proven and reached <= gap
    return Plan(
        status=PlanStatus.PROVEN if proven else PlanStatus.FEASIBLE,
        start=garage.start,
        choices=choices,
        stages=figures,
        stage_bounds=Stages(
            missed_deadlines=found.bounds[Stage.DEADLINES],
            unsafe_vehicle_months=found.bounds[Stage.SAFETY],
            undrivable_vehicle_months=found.bounds[Stage.MOBILITY],
            net_worth=bound,
        ),
        gap=reached,
        bound=bound,
        jobs=decode.jobs(garage.start, chosen),
        tools=bought,
        orders=ordered,
        ledger=decode.ledger(garage, chosen, ordered, bought),
        seconds=found.seconds,
        solver=solver_name(),
        interrupted=found.interrupted,
    )
