"""One way to cure faults, and where it comes from."""

from dataclasses import dataclass
from fractions import Fraction

from partsplan.domain.months import Month
from partsplan.domain.numbers import CURED, ONE, ZERO
from partsplan.domain.scales import Coding, Route, Tax


@dataclass(frozen=True, slots=True, kw_only=True)
class Cure:
    """What an option does for one fault; relief is the share it takes away. [0-1]"""

    fault: str
    relief: Fraction = ONE

    @property
    def cures(self) -> bool:
        """Whether the fault counts as cured while the option is in force."""
        return self.relief >= CURED


@dataclass(frozen=True, slots=True, kw_only=True)
class Instalment:
    """A share of the landed price, due some months after ordering."""

    months: int
    share: Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class Purchase:
    """When and where a part was bought that is still to be fitted."""

    month: Month
    supplier: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Option:
    """One way to cure one or more faults of one vehicle.

    Attributes
    ----------
    price, price_low, price_high
        One piece, before shipping, duty and tax. [minor units of ``currency``]
    core_deposit
        Paid with an exchange part, a piece. [minor units of ``currency``]
    core_chance
        Chance that the old unit is accepted back. [0-1]
    core_days
        From fitting to the credit. [days]
    core_return_cost
        Sending the old units back, all of them. [minor units of the garage]
    coding_cost, consumables
        [minor units of the garage]
    life_months
        None if it lasts as long as the vehicle is kept. [months]
    dud_chance
        Chance that a part is bad out of the box. [0-1)
    lead_days
        From order to delivery. [days]
    hours
        Own hours for the job, without the access it shares. [h]
    min_temp
        Coldest workshop in which it can be done. [C]
    followup_within
        A stand-in's life. [months]
    not_before, not_after
        First and last fitting month.
    valid_until
        Last ordering month.
    bought
        Set if the part is paid for, or promised to be: only its fitting is planned.
    """

    id: str
    fixes: tuple[Cure, ...]
    route: Route
    price: int
    currency: str
    supplier: str | None = None
    part_no: str = ""
    price_low: int | None = None
    price_high: int | None = None
    quantity: Fraction = ONE
    core_deposit: int = 0
    core_chance: Fraction = ONE
    core_days: int = 30
    core_return_cost: int = 0
    coding: Coding = Coding.NONE
    coding_cost: int = 0
    consumables: int = 0
    life_months: int | None = None
    dud_chance: Fraction = ZERO
    warranty_months: int = 0
    lead_days: int = 0
    hours: Fraction = ZERO
    access: tuple[str, ...] = ()
    tools: tuple[str, ...] = ()
    min_temp: Fraction | None = None
    instalments: tuple[Instalment, ...] = (Instalment(months=0, share=ONE),)
    followup_within: int | None = None
    not_before: Month | None = None
    not_after: Month | None = None
    road_legal: bool = True
    quoted_on: str = ""
    valid_until: Month | None = None
    notes: str = ""
    bought: Purchase | None = None

    @property
    def lasting(self) -> bool:
        """Whether it stays on: any route but stand-in."""
        return self.route is not Route.STAND_IN

    @property
    def alone(self) -> str | None:
        """The fault it cures, if that is the only one it names."""
        return self.fixes[0].fault if len(self.fixes) == 1 else None

    @property
    def life(self) -> int | None:
        """Months in force once fitted; None without an end. [months]"""
        return self.life_months if self.lasting else self.followup_within

    @property
    def months_to_fitting(self) -> int:
        """From the month of its order to the first by whose middle it is in hand."""
        return (self.lead_days + 15) // 30

    @property
    def core_months(self) -> int:
        """From the month of its fitting to that of the credit."""
        return -(-self.core_days // 30)

    def relief(self, fault: str) -> Fraction:
        """The share of that fault's trouble it takes away. [0-1]"""
        return next((c.relief for c in self.fixes if c.fault == fault), ZERO)


def instalments(option: Option, landed: int) -> tuple[tuple[int, int], ...]:
    """Months after ordering and the sum then due; the last takes the rounding."""
    ordered = sorted(option.instalments, key=lambda one: one.months)
    sums = [round(landed * one.share) for one in ordered[:-1]]
    sums.append(landed - sum(sums))
    return tuple((one.months, due) for one, due in zip(ordered, sums, strict=True))


@dataclass(frozen=True, slots=True, kw_only=True)
class Supplier:
    """Where parts come from; shipping and free_over in ``currency``. [minor units]"""

    id: str
    name: str
    currency: str
    shipping: int = 0
    free_over: int | None = None
    tax: Tax = Tax.INCLUDED
    duty_rate: Fraction = ZERO
    notes: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Access:
    """Work shared by jobs behind the same panel. [h]"""

    id: str
    hours: Fraction
    title: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Tool:
    """A tool that jobs need. [minor units]"""

    id: str
    name: str
    price: int = 0
    owned: bool = False
