"""One job of the plan in each future.

The rule of time. A delivery slips by one month, or does not; only what has lead days
can slip. A bad part is found when it is fitted, and costs the own hours of that month.
Its replacement is ordered in the month after, is paid in full then unless there is a
warranty, and takes its lead time again, which may slip again. Paid coding and
consumables fall due with the first fitting. The old unit goes back after the part that
works: its return is paid, and the deposit comes back, whole or not at all, in the month
that the plan would have counted from that fitting. A replacement takes no second
deposit, since the bad unit goes back for it.
"""

from dataclasses import dataclass

import numpy as np
from numpy.random import Generator

from partsplan.domain import Garage, Job, Option, RiskSettings
from partsplan.pricing import price
from partsplan.simulation.arrays import Counts, Flags, add
from partsplan.simulation.prices import drawn_price
from partsplan.simulation.streams import stream


@dataclass(frozen=True, slots=True)
class JobFutures:
    """A job, one row a future; months past the horizon are left out.

    Attributes
    ----------
    goods
        Before duty and tax, of the first order. [minor units]
    money
        Money back less money out, by month. [minor units]
    fittings
        Whether a part is fitted, good or bad, by month.
    good
        Month in which the part that works is fitted; past the horizon it may be any.
    """

    goods: Counts
    money: Counts
    fittings: Flags
    good: Counts


def job_futures(garage: Garage, job: Job, settings: RiskSettings) -> JobFutures:
    """What becomes of a job in each future."""
    option, futures = garage.option[job.option], settings.futures
    known = price(garage, option)
    drawn = drawn_price(garage, option, futures, settings.seed)
    money = np.zeros((futures, garage.months), np.int64)
    for months, due in () if job.bought else drawn.dues:
        add(money, job.ordered + months, -due)
    if not job.bought:
        add(money, job.ordered, -known.deposit)

    fittings = np.zeros((futures, garage.months), np.int64)
    duds = _duds(option, settings)
    slips = stream(settings.seed, "late", option.id)
    chance = settings.late_chance if option.lead_days else 0.0
    month = job.fitted + _slip(slips, chance, futures)
    add(money, month, -(known.coding + known.consumables))
    attempt = 0
    while True:
        add(fittings, month, (duds >= attempt).astype(np.int64))
        bad = (duds > attempt) & (month < garage.months)
        if not bad.any():
            break
        if not option.warranty_months:
            add(money, month + 1, np.where(bad, -drawn.landed, 0))
        lead = option.months_to_fitting + _slip(slips, chance, futures)
        month = np.where(bad, month + 1 + lead, month)
        attempt += 1

    if option.core_deposit:
        credited = month - (-option.core_days // 30)
        dice = stream(settings.seed, "core", option.id)
        accepted = dice.random(futures) < float(option.core_chance)
        back = np.where(accepted, known.deposit, 0) - known.core_return
        add(money, credited, back)
    return JobFutures(drawn.goods, money, fittings > 0, month)


def _duds(option: Option, settings: RiskSettings) -> Counts:
    """Bad parts before the good one: geometric."""
    if not option.dud_chance:
        return np.zeros(settings.futures, np.int64)
    dice = stream(settings.seed, "dud", option.id)
    return dice.geometric(float(1 - option.dud_chance), settings.futures) - 1


def _slip(dice: Generator, chance: float, futures: int) -> Counts:
    """Months by which one delivery comes late, 0 or 1."""
    return (dice.random(futures) < chance).astype(np.int64)
