"""How far settings may move before other parts are bought in the first month."""

from dataclasses import replace
from fractions import Fraction

from partsplan.domain import (
    Choices,
    End,
    Garage,
    Needs,
    Plan,
    PlanStatus,
    Sensitivity,
    Setting,
    SteadyRange,
)
from partsplan.explanation.questions import AskAll, Question
from partsplan.explanation.settings import (
    FINENESS,
    downwards,
    step_of,
    upwards,
    value_of,
    with_setting,
)
from partsplan.explanation.steps import middle, round_step
from partsplan.explanation.ties import as_good, fits_as_many
from partsplan.planning import Limits, must_be
from partsplan.verification import Facts, broken_rules
from partsplan.verification.figures import stages


def sensitivity(
    garage: Garage, ask: AskAll, *, limits: Limits
) -> tuple[Plan | Needs, Sensitivity | None]:
    """The best plan, and how far each setting may move for the same first orders.

    From the setting's own value outwards values are tried farther and farther away;
    the first that changes the orders is closed in on by halves. What happens between
    two values that were tried and keep the orders is not known.

    Raises
    ------
    KeyboardInterrupt
        If the search was stopped before there was a plan.
    SolverFailed
    """
    replies = ask([Question(garage=garage, limits=limits)])
    if not replies:
        raise KeyboardInterrupt
    plan = must_be(replies[0])
    if isinstance(plan, Needs):
        return plan, None
    probes = [
        probe
        for setting in Setting
        for probe in (
            _Probe(garage, setting, outwards=tuple(downwards(garage, setting))),
            _Probe(garage, setting, outwards=tuple(upwards(garage, setting))),
        )
    ]
    made, proven, stopped = 1, plan.status is PlanStatus.PROVEN, False
    while not stopped:
        wanted = [(one, value) for one in probes if (value := one.wanted) is not None]
        if not wanted:
            break
        asked = [with_setting(garage, one.setting, value) for one, value in wanted]
        replies = ask(
            [Question(garage=one, limits=limits, start=plan.choices) for one in asked]
        )
        for place, reply in replies.items():
            found = must_be(reply)
            probe, value = wanted[place]
            same = _same_orders(asked[place], plan.choices, found, limits.gap)
            probe.learn(value, plan.choices, None if same else found)
            proven &= isinstance(found, Needs) or found.status is PlanStatus.PROVEN
        made += len(replies)
        stopped = len(replies) < len(wanted)
    return plan, Sensitivity(
        purchases=_in_order(garage, bought_first(garage, plan.choices)),
        ranges=tuple(
            SteadyRange(
                setting=low.setting,
                now=value_of(garage, low.setting),
                step=low.step,
                low=low.end,
                high=high.end,
            )
            for low, high in zip(probes[::2], probes[1::2], strict=True)
        ),
        plans=made,
        proven=proven,
        interrupted=stopped,
    )


def bought_first(garage: Garage, choices: Choices) -> frozenset[str]:
    """The options ordered in the first month; what is bought already is not."""
    return frozenset(
        name
        for name, month in choices.orders.items()
        if month == 0 and not garage.option[name].bought
    )


class _Probe:
    """Looks for the end of a range on one side of a setting's own value."""

    def __init__(
        self, garage: Garage, setting: Setting, outwards: tuple[Fraction, ...]
    ) -> None:
        self.garage = garage
        self.setting = setting
        self.outwards = outwards
        self.step = step_of(garage, setting)
        self.end = End(holds=value_of(garage, setting))

    @property
    def wanted(self) -> Fraction | None:
        """The next value to try; None if there is nothing left to find."""
        end = self.end
        if end.breaks is None:
            return self.outwards[0] if self.outwards else None
        step = max(self.step, round_step(max(end.breaks, self.step) / FINENESS))
        if abs(end.breaks - end.holds) <= step:
            return None
        return middle(end.holds, end.breaks, step)

    def learn(self, value: Fraction, now: Choices, other: Plan | Needs | None) -> None:
        """Take in what a value gives: ``other`` is a plan that orders other parts."""
        self.outwards = tuple(one for one in self.outwards if one != value)
        if other is None:
            self.end = replace(self.end, holds=value)
            return
        first = bought_first(self.garage, now)
        then = first
        if isinstance(other, Plan):
            then = bought_first(self.garage, other.choices)
        self.end = End(
            holds=self.end.holds,
            breaks=value,
            adds=_in_order(self.garage, then - first),
            drops=_in_order(self.garage, first - then),
            possible=isinstance(other, Plan),
        )


def _same_orders(
    garage: Garage, choices: Choices, found: Plan | Needs, gap: float
) -> bool:
    """Whether the first orders of the choices are still those of a best plan.

    They are too where the choices themselves are as good as can be proven.
    """
    if isinstance(found, Needs):
        return False
    if bought_first(garage, found.choices) == bought_first(garage, choices):
        return True
    if broken_rules(garage, choices):
        return False
    figures = stages(Facts(garage, choices))
    kept = fits_as_many(garage, choices, found.choices)
    return kept and as_good(figures, found, gap)


def _in_order(garage: Garage, options: frozenset[str]) -> tuple[str, ...]:
    return tuple(one.id for one in garage.options if one.id in options)
