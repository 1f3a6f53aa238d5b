"""The JSON of an export, checked by pydantic, which takes long to import."""

from datetime import UTC
from typing import Literal

from pydantic import AwareDatetime, BaseModel, ConfigDict, Field, ValidationError

from partsplan.domain import Entry, Happening, Month
from partsplan.errors import InvalidRequest
from partsplan.logbook.contents import Export
from partsplan.logbook.plans import KeptPlan


class _Shape(BaseModel):
    model_config = ConfigDict(extra="forbid", strict=True)


class _Entry(_Shape):
    number: int
    written: AwareDatetime
    what: Happening

    def entry(self) -> Entry:
        written = self.written.astimezone(UTC)
        return Entry(number=self.number, written=written, what=self.what)


class _Plan(_Shape):
    number: int
    written: AwareDatetime
    start: str
    text: str

    def plan(self) -> KeptPlan:
        return KeptPlan(
            number=self.number,
            written=self.written.astimezone(UTC),
            start=Month.parse(self.start),
            text=self.text,
        )


class _Export(_Shape):
    schema_number: Literal[1] = Field(alias="schema")
    currency: str
    entries: list[_Entry]
    plans: list[_Plan]


def shaped(export: Export) -> str:
    """An export as JSON."""
    shape = _Export(
        schema=1,
        currency=export.currency,
        entries=[
            _Entry(number=one.number, written=one.written, what=one.what)
            for one in export.entries
        ],
        plans=[
            _Plan(
                number=one.number,
                written=one.written,
                start=str(one.start),
                text=one.text,
            )
            for one in export.plans
        ],
    )
    return shape.model_dump_json(by_alias=True, indent=1)


def unshaped(text: str) -> Export:
    """The export that ``shaped`` was given.

    Raises
    ------
    InvalidRequest
        If the text is not an export.
    """
    try:
        shape = _Export.model_validate_json(text)
        return Export(
            currency=shape.currency,
            entries=tuple(one.entry() for one in shape.entries),
            plans=tuple(one.plan() for one in shape.plans),
        )
    except ValidationError as error:
        first, *others = error.errors()
        place = ".".join(map(str, first["loc"]))
        more = f" ({len(others)} more like it)" if others else ""
        said = ": ".join(part for part in (place, first["msg"]) if part)
        raise InvalidRequest(f"no logbook export: {said}{more}") from error
    except ValueError as error:
        raise InvalidRequest(f"no logbook export: plans: {error}") from error
