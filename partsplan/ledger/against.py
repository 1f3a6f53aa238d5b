"""A plan that was kept, held against what happened since."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from datetime import date

from partsplan.domain import (
    ZERO,
    Garage,
    JobAgainst,
    JobDone,
    Ledger,
    Month,
    MonthAgainst,
    MonthMoney,
    Part,
    PlanAgainst,
    PlannedJob,
    PlannedMonth,
    PlanOnPaper,
)

_NOTHING = MonthMoney()


def against(
    garage: Garage, ledger: Ledger, plan: PlanOnPaper, today: date
) -> PlanAgainst:
    """Each job and each month of a plan beside what became of it.

    Orders count from the plan's first month on, or from the day on which it was kept if
    that was earlier; jobs that were not planned up to its last month. A part that was
    bought before the plan counts, but not what it cost.
    """
    since = min(date(*plan.start, 1), plan.kept)
    begun = {
        job.option: min(since, date(*job.ordered, 1))
        for job in plan.jobs
        if job.ordered < plan.start
    }
    done = {
        option: _done(garage, parts, since)
        for option, parts in _by_option(ledger, since, begun).items()
    }
    planned = {job.option for job in plan.jobs}
    unplanned = tuple(
        one
        for one in sorted(done.values(), key=lambda one: (one.ordered, one.option))
        if one.option not in planned and Month.of(one.ordered) <= plan.end
    )
    return PlanAgainst(
        plan=plan,
        today=today,
        jobs=tuple(_job(job, done, unplanned, today) for job in plan.jobs),
        unplanned=unplanned,
        months=tuple(_month(ledger, one, today) for one in plan.months),
    )


def _by_option(
    ledger: Ledger, since: date, begun: Mapping[str, date]
) -> Mapping[str, Sequence[Part]]:
    """All parts ordered from that day on, the last of each option at the end.

    Those of options that were ``begun`` from an earlier day on.
    """
    parts = defaultdict[str, list[Part]](list)
    for part in (*ledger.earlier, *ledger.parts.values()):
        if part.ordered >= begun.get(part.option, since):
            parts[part.option].append(part)
    return parts


def _done(garage: Garage, parts: Sequence[Part], since: date) -> JobDone:
    last = parts[-1]
    option = garage.option.get(last.option)
    return JobDone(
        option=last.option,
        faults=tuple(cure.fault for cure in option.fixes) if option else (),
        state=last.state,
        ordered=parts[0].ordered,
        fitted=last.fitted,
        billed=sum(part.price for part in parts if part.ordered >= since),
        deposit=last.deposit.amount if last.deposit else 0,
        hours=sum((part.hours for part in parts), ZERO),
        orders=len(parts),
    )


def _job(
    planned: PlannedJob,
    all_done: Mapping[str, JobDone],
    unplanned: Sequence[JobDone],
    today: date,
) -> JobAgainst:
    done = all_done.get(planned.option)
    others = (one for one in unplanned if {*one.faults} & {*planned.faults})
    return JobAgainst(
        planned=planned,
        done=done,
        late=_late(planned, done, Month.of(today)),
        instead=tuple(one.option for one in others),
    )


def _late(planned: PlannedJob, done: JobDone | None, now: Month) -> int:
    if done is None:
        return max(0, now.since(planned.ordered))
    if done.fitted is not None and done.on_the_car:
        return Month.of(done.fitted).since(planned.fitted)
    return max(0, now.since(planned.fitted))


def _month(ledger: Ledger, planned: PlannedMonth, today: date) -> MonthAgainst:
    real = ledger.money.get(planned.month, _NOTHING)
    return MonthAgainst(
        planned=planned,
        spent=real.spent,
        received=real.received,
        hours=real.hours,
        begun=planned.month <= Month.of(today),
    )
