"""The defence of a plan as sentences."""

from collections.abc import Iterator, Sequence

from partsplan.domain import (
    FaultStatus,
    Garage,
    Instead,
    Job,
    Loss,
    Plan,
    Threshold,
    Turn,
    WhyChosen,
    WhyNot,
)
from partsplan.reports.figures import count, listed, month_name, number, price
from partsplan.reports.names import (
    fault_name,
    job_target,
    relieved_now,
    supplier_name,
)
from partsplan.reports.page import Page
from partsplan.reports.plan_tables import certainty
from partsplan.reports.words import option_name, sentence

Defence = tuple[WhyChosen | WhyNot, ...]


def why_text(
    garage: Garage,
    plan: Plan,
    answers: Sequence[tuple[str, Defence]],
    *,
    stopped: bool = False,
    width: int = 100,
    colour: bool = False,
) -> str:
    """Why each subject is in the plan, or waits; all of them, unless it was stopped."""
    page = Page(width, colour)
    last = month_name(garage.month(garage.months - 1))
    page.title(
        f"Why, in the plan for {garage.name}, {month_name(garage.start)} to {last}"
    )
    page.paragraph(" ".join(certainty(garage, plan)))
    if stopped:
        page.paragraph("The search was stopped: this is what was known by then.")
    elif not answers:
        page.paragraph("Nothing is left alone.")
    for subject, defence in answers:
        page.heading(_heading(garage, subject))
        for one in defence:
            lines = (
                _chosen(garage, plan, one)
                if isinstance(one, WhyChosen)
                else _waits(garage, one)
            )
            page.bullets(lines)
    return str(page)


def _heading(garage: Garage, subject: str) -> str:
    if subject in garage.fault:
        fault = garage.fault[subject]
        return f"{garage.vehicle[fault.vehicle].name}: {fault_name(fault)}"
    return option_name(garage, subject)


def _chosen(garage: Garage, plan: Plan, why: WhyChosen) -> Iterator[str]:
    job = next(one for one in plan.jobs if one.option == why.option)
    yield _done(garage, job)
    for reason in why.forced_by:
        yield sentence(garage, reason)
    if why.runner_up is None:
        yield "No plan does without it."
    elif why.by is not None:
        costs = lost(garage, why.runner_up.loss)
        along = _along(why.runner_up, why.by)
        yield f"Next best is {option_name(garage, why.by)}: {costs}{along}."
    else:
        yield "No other option would take its place."
    if why.without is not None:
        left = listed(garage.fault[one].title for one in job.faults)
        yield f"To leave it alone ({left}): {lost(garage, why.without.loss)}."


def _done(garage: Garage, job: Job) -> str:
    done = "bought" if job.bought else "ordered"
    when = f"{done} in {month_name(garage.month(job.ordered))}"
    if job.fitted != job.ordered:
        when += f", fitted in {month_name(garage.month(job.fitted))}"
    source = supplier_name(garage, job.supplier)
    cost = "paid for" if job.bought else price(garage.currency, job.landed)
    return (
        f"{option_name(garage, job.option)} for {job_target(garage, job)}: "
        f"{cost}{f' from {source}' if source else ''}, {when}."
    )


def _waits(garage: Garage, why: WhyNot) -> Iterator[str]:
    fault = garage.fault.get(why.subject)
    if fault is not None and fault.status is not FaultStatus.OPEN:
        state = "fixed" if fault.status is FaultStatus.FIXED else "watched"
        yield f"It is {state}, so nothing is planned for it."
        return
    if fault is not None and (relieved := relieved_now(garage, fault)):
        yield f"It is {relieved}, by what was fitted before."
    for reason in why.ruled_out:
        yield sentence(garage, reason)
    if why.instead is None:
        yield "No plan can hold it as things stand."
        return
    yield _forced_in(garage, why.instead, why.subject)
    for threshold in why.thresholds:
        yield turned(garage, threshold)
    if why.cut_short:
        yield "The search for what would turn it ran out of time; raise --search."
    if why.later is not None:
        later = month_name(garage.month(why.later))
        yield f"A plan that looks twice as far ahead fits it in {later}."


def _forced_in(garage: Garage, other: Instead, subject: str) -> str:
    asked = [
        one
        for one in other.enters
        if one == subject or garage.option[one].relief(subject) > 0
    ]
    also = [one for one in other.enters if one not in asked]
    effects = []
    if other.leaves:
        effects.append(f"pushes out {listed(other.leaves)}")
    if also:
        effects.append(f"brings in {listed(also)}")
    if other.moved:
        moved = (
            (one.option, garage.month(one.before), garage.month(one.after))
            for one in other.moved
        )
        shown = listed(
            f"{option} from {month_name(before)} to {month_name(after)}"
            for option, before, after in moved
        )
        effects.append(f"moves {shown}")
    names = listed(_at_price(garage, one) for one in asked) or "it"
    done = f", {'; '.join(effects)}" if effects else " pushes nothing out"
    return f"Forced in, {names}{done}: {lost(garage, other.loss)}."


def _at_price(garage: Garage, option: str) -> str:
    from partsplan.pricing import price as priced

    if garage.option[option].bought:
        return f"{option_name(garage, option)}, which is bought"
    landed = priced(garage, garage.option[option]).landed
    return f"{option_name(garage, option)} at {price(garage.currency, landed)}"


def _along(other: Instead, by: str) -> str:
    along = [one for one in other.enters if one != by]
    return f" (with {listed(along)} beside it)" if along else ""


def lost(garage: Garage, loss: Loss) -> str:
    """What a plan loses, in a row; that nothing can be told where so."""
    if not loss.certain:
        return "the difference is smaller than what the plans leave unproven"
    parts = []
    for more, one, state in (
        (loss.missed_deadlines, "deadline", "missed"),
        (loss.unsafe_vehicle_months, "month", "unsafe"),
        (loss.undrivable_vehicle_months, "month", "not drivable"),
    ):
        if more:
            word = "more" if more > 0 else "fewer"
            parts.append(
                f"{count(abs(more), f'{word} {one}', f'{word} {one}s')} {state}"
            )
    if loss.net_worth and loss.worth_certain:
        word = "lost" if loss.net_worth > 0 else "gained"
        sum_ = price(garage.currency, abs(loss.net_worth))
        parts.append(f"{sum_} of net worth {word}")
    if points := round(loss.point_months, 1):
        word = "more" if points > 0 else "fewer"
        parts.append(f"{number(abs(points), 1)} {word} point-months borne")
    return listed(parts) if parts else "it costs nothing"


def turned(garage: Garage, threshold: Threshold) -> str:
    """At what value something would be chosen."""
    if threshold.turn is Turn.PRICE:
        return _price_turned(garage, threshold)
    if threshold.turn is Turn.BUDGET:
        now, tried = (
            price(garage.currency, one) for one in (threshold.now, threshold.not_at)
        )
        if threshold.at is None:
            return f"No budget that was tried brings it in, up to {tried} a month."
        at = price(garage.currency, threshold.at)
        return (
            f"With {at} a month instead of {now} it would be chosen, at {tried} not "
            "yet; a larger budget may drop it again."
        )
    what = "an enjoyment of" if threshold.turn is Turn.ENJOYMENT else "points of"
    now, tried = number(threshold.now), number(threshold.not_at)
    if threshold.at is None:
        return f"Not even {what} {tried} would bring it in (now {now})."
    return (
        f"With {what} {number(threshold.at)} instead of {now} it would be chosen, with "
        f"{tried} not yet."
    )


def _price_turned(garage: Garage, threshold: Threshold) -> str:
    option = threshold.option or ""
    code = garage.option[option].currency
    rate = garage.rate(code)
    name = option_name(garage, option)
    if threshold.at is None:
        free = price(garage.currency, 0)
        return f"Not even at {free} would {name} be chosen."
    at, tried, now = (
        price(garage.currency, one * rate)
        for one in (threshold.at, threshold.not_at, threshold.now)
    )
    return (
        f"At {at} a piece instead of {now}, {name} would be chosen; at {tried} not yet."
    )
