"""Facts of the domain as plain data for JSON."""

import json
from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from datetime import date
from enum import Enum
from fractions import Fraction
from typing import Any

from partsplan.domain import Garage, Month, Reason

SCHEMA = 1


def dumped(data: dict[str, Any]) -> str:
    """JSON text."""
    return json.dumps(data, indent=2, ensure_ascii=False, allow_nan=False)


def plain(value: object) -> Any:
    """A value as JSON holds it: fractions as floats, months, days and words as text."""
    if isinstance(value, Month):
        return str(value)
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, Enum):
        return value.value
    if isinstance(value, Fraction):
        return float(value)
    if isinstance(value, Mapping):
        return {str(key): plain(one) for key, one in value.items()}
    if isinstance(value, tuple | list):
        return [plain(one) for one in value]
    if isinstance(value, Reason):
        return reason_data(value)
    if is_dataclass(value):
        return {one.name: plain(getattr(value, one.name)) for one in fields(value)}
    return value


def reason_data(reason: Reason) -> dict[str, Any]:
    """A reason: its code, then its fields."""
    own = {one.name: plain(getattr(reason, one.name)) for one in fields(reason)}
    return {"code": reason.code, **own}


def head(garage: Garage) -> dict[str, Any]:
    """The keys that every answer about a garage starts with."""
    return {
        "schema": SCHEMA,
        "garage": garage.name,
        "currency": garage.currency.code,
        "start": str(garage.start),
    }
