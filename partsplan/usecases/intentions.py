"""What the last plan that was kept still means to do."""

from pathlib import Path

from partsplan.domain import Intentions, Standing


def intentions(folder: Path, stands: Standing) -> Intentions | None:
    """The orders of the last kept plan that are not made yet; None if none was kept.

    Raises
    ------
    DamagedLogbook, LogbookUnavailable, NoKeptPlan
    """
    from partsplan.intake import read_kept_plan
    from partsplan.logbook import beside, kept_plans

    plans = kept_plans(beside(folder))
    if not plans:
        return None
    last = plans[-1]
    paper = read_kept_plan(
        last.text,
        number=last.number,
        kept=last.written.date(),
        currency=stands.garage.currency.code,
    )
    return Intentions(
        number=paper.number,
        start=paper.start,
        orders={
            job.option: job.ordered
            for job in paper.jobs
            if job.option not in stands.ledger.parts
        },
    )
