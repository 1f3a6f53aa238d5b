"""The text of a plan that was kept, read back."""

from datetime import date
from fractions import Fraction
from typing import Literal

from pydantic import BaseModel, ConfigDict, Field, FiniteFloat, ValidationError

from partsplan.domain import Month, PlannedJob, PlannedMonth, PlanOnPaper
from partsplan.errors import NoKeptPlan

_FINEST = 1_000_000
"""Hours are written as decimals; thirds and the like are found again."""


class _Shape(BaseModel):
    model_config = ConfigDict(extra="ignore", strict=True)


class _Job(_Shape):
    option: str
    faults: list[str]
    ordered: str
    fitted: str
    landed: int
    deposit: int
    hours: FiniteFloat

    def job(self) -> PlannedJob:
        return PlannedJob(
            option=self.option,
            faults=tuple(self.faults),
            ordered=Month.parse(self.ordered),
            fitted=Month.parse(self.fitted),
            landed=self.landed,
            deposit=self.deposit,
            hours=_hours(self.hours),
        )


class _Line(_Shape):
    month: str
    out: int
    back: int = Field(alias="in")
    hours: FiniteFloat

    def month_planned(self) -> PlannedMonth:
        return PlannedMonth(
            month=Month.parse(self.month),
            out=self.out,
            back=self.back,
            hours=_hours(self.hours),
        )


class _Plan(_Shape):
    schema_number: Literal[1] = Field(alias="schema")
    currency: str
    jobs: list[_Job]
    ledger: list[_Line] = Field(min_length=1)


def read_kept_plan(text: str, *, number: int, kept: date, currency: str) -> PlanOnPaper:
    """The plan that ``plan --json`` wrote, of a garage with that currency.

    Raises
    ------
    NoKeptPlan
        If the text is no such plan.
    """
    try:
        shape = _Plan.model_validate_json(text)
        if shape.currency != currency:
            raise ValueError(f"currency: expected {currency}, got {shape.currency}")
        return PlanOnPaper(
            number=number,
            kept=kept,
            jobs=tuple(one.job() for one in shape.jobs),
            months=tuple(one.month_planned() for one in shape.ledger),
        )
    except ValidationError as error:
        first = error.errors()[0]
        place = ".".join(map(str, first["loc"]))
        what = f"{place}: {first['msg']}" if place else first["msg"]
        raise _unreadable(number, what) from error
    except ValueError as error:
        raise _unreadable(number, str(error)) from error


def _unreadable(number: int, what: str) -> NoKeptPlan:
    return NoKeptPlan(f"kept plan {number} cannot be read: {what}")


def _hours(value: float) -> Fraction:
    return Fraction(value).limit_denominator(_FINEST)
