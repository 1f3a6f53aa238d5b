"""The keys of garage.toml, what each may hold, and what it means when left out."""

from fractions import Fraction
from typing import Annotated, Any

from pydantic import (
    AfterValidator,
    BaseModel,
    BeforeValidator,
    ConfigDict,
    PlainValidator,
    ValidationInfo,
    model_validator,
)

from partsplan.domain import CURED, ZERO, Currency, Month, Stage, Weights
from partsplan.intake.cells import (
    FINE_MONEY,
    MONEY,
    MONTH,
    TEXT,
    Kind,
    money,
    number,
    whole,
    words,
)
from partsplan.intake.currency import currency
from partsplan.intake.document import as_text
from partsplan.sheets.characters import check_characters
from partsplan.sheets.quoting import shown

FILE = "garage.toml"

LONGEST_PLAN = 36
"""[months]"""

FARTHEST_LOOK = 600
"""[months]"""

UNKNOWN = Currency("???", 4)
"""Stands in for a wrong currency; none of ISO 4217 has more minor digits."""


def said(value: object) -> str:
    """What stands in the file, as a message quotes it."""
    if isinstance(value, list):
        return "a list" if value else "an empty list"
    if isinstance(value, dict):
        return "a section"
    text = as_text(value)
    return shown(str(value).lower() if text is None else text)


def _leaf(kind: Kind) -> PlainValidator:
    """One value that a cell could hold too."""

    def read(value: object, info: ValidationInfo) -> Any:
        text = (as_text(value) or "").strip()
        if not text:
            raise ValueError(f"expected {kind.expects}, got {said(value)}")
        check_characters(text)
        return kind.read(text, info.data.get("currency", UNKNOWN))

    return PlainValidator(read)


def _flag(value: object) -> bool:
    if isinstance(value, bool):
        return value
    raise ValueError(f"expected true or false, got {said(value)}")


def _currency(value: object) -> Currency:
    if isinstance(value, Currency):
        return value
    if isinstance(value, str):
        return currency(value.strip())
    raise ValueError(f"expected an ISO 4217 code like EUR, got {said(value)}")


def _listed(value: object) -> list[object]:
    """One value is a list of one."""
    if isinstance(value, list) and not 1 <= len(value) <= LONGEST_PLAN:
        raise ValueError(f"expected 1-{LONGEST_PLAN} values, got {len(value)}")
    return value if isinstance(value, list) else [value]


def _section(value: object) -> object:
    if isinstance(value, (dict, BaseModel)):
        return value
    raise ValueError(f"expected a section in brackets, got {said(value)}")


def _twelve(values: tuple[Fraction, ...]) -> tuple[Fraction, ...]:
    if len(values) != 12:
        raise ValueError(f"expected 12 numbers, January first, got {len(values)}")
    return values


def _all_stages(stages: tuple[Stage, ...]) -> tuple[Stage, ...]:
    if sorted(stages) != sorted(Stage):
        expected, got = ", ".join(Stage), ", ".join(stages)
        raise ValueError(f"expected {expected} in any order, each once, got {got}")
    return stages


def _own_rate_is_one(
    rates: dict[str, Fraction], info: ValidationInfo
) -> dict[str, Fraction]:
    own = info.data.get("currency", UNKNOWN).code
    if rates.get(own, 1) != 1:
        raise ValueError(f"expected 1 for the garage's own currency {own}")
    return rates


Flag = Annotated[bool, PlainValidator(_flag)]
Money = Annotated[int, _leaf(MONEY)]
Share = Annotated[Fraction, _leaf(number(0, 1))]
Weight = Annotated[Fraction, _leaf(number())]
Rate = Annotated[Fraction, _leaf(number(above=True))]
Code = Annotated[str, PlainValidator(lambda code: currency(code).code)]


class _Section(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True, arbitrary_types_allowed=True)


class WeightSettings(_Section):
    """How much each score counts."""

    safety: Weight = Weights().safety
    drivability: Weight = Weights().drivability
    enjoyment: Weight = Weights().enjoyment

    @model_validator(mode="after")
    def not_all_zero(self) -> "WeightSettings":
        """Something must count."""
        if not self.safety + self.drivability + self.enjoyment:
            raise ValueError("expected a weight above 0, got 0 for all")
        return self


class WorkshopSettings(_Section):
    """Where the work is done."""

    heated: Flag | None = None
    mean_temperature: (
        Annotated[
            tuple[Annotated[Fraction, _leaf(number(-60, 60))], ...],
            BeforeValidator(_listed),
            AfterValidator(_twelve),
        ]
        | None
    ) = None
    coding_tool: Flag = False

    @model_validator(mode="after")
    def heated_or_not(self) -> "WorkshopSettings":
        """A heated workshop has no temperatures, a cold one needs them."""
        if self.heated and self.mean_temperature:
            raise ValueError("expected heated = true or mean_temperature, got both")
        if self.heated is False and not self.mean_temperature:
            raise ValueError("expected mean_temperature if it is not heated")
        return self


class Settings(_Section):
    """All keys of garage.toml; amounts in minor units."""

    name: Annotated[str, _leaf(TEXT)]
    currency: Annotated[Currency, PlainValidator(_currency)]
    start: Annotated[Month, _leaf(MONTH)]
    months: Annotated[int, _leaf(whole(1, LONGEST_PLAN))] = 6
    budget: Annotated[tuple[Money, ...], BeforeValidator(_listed)]
    hours: Annotated[
        tuple[Annotated[Fraction, _leaf(number())], ...], BeforeValidator(_listed)
    ]
    opening_cash: Annotated[int, _leaf(money(debt=True))] = 0
    carry_over: Flag = True
    reserve: Money = 0
    money_per_point: Annotated[Fraction, _leaf(FINE_MONEY)] | None = None
    hour_value: Money = 0
    tax_rate: Share = ZERO
    look_beyond: Annotated[int, _leaf(whole(0, FARTHEST_LOOK))] = 6
    core_trust: Share = CURED
    allow_risky_routes: Flag = False
    discount_rate: Share = ZERO
    decimal_comma: Flag = False
    priority: Annotated[
        tuple[Annotated[Stage, _leaf(words(Stage))], ...],
        BeforeValidator(_listed),
        AfterValidator(_all_stages),
    ] = tuple(Stage)
    weights: Annotated[WeightSettings, BeforeValidator(_section)] = WeightSettings()
    rates: Annotated[
        dict[Code, Rate], BeforeValidator(_section), AfterValidator(_own_rate_is_one)
    ] = {}
    workshop: Annotated[WorkshopSettings, BeforeValidator(_section)] = (
        WorkshopSettings()
    )

    @property
    def minor_rates(self) -> dict[str, Fraction]:
        """Minor units of the garage's currency for one minor unit of each known one."""
        own = self.currency
        return {
            code: rate * own.unit / currency(code).unit
            for code, rate in self.rates.items()
        } | {own.code: Fraction(1)}
