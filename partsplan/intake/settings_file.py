"""The settings of a garage, or what is wrong with them, key by key."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from partsplan.errors import Problem
from partsplan.intake.document import Document
from partsplan.intake.settings import (
    UNKNOWN,
    Settings,
    WeightSettings,
    WorkshopSettings,
    said,
)
from partsplan.intake.suggest import hint
from partsplan.sheets.quoting import plain


@dataclass(frozen=True, slots=True)
class SettingsFile:
    """Settings to go on with, and what is wrong with them.

    Attributes
    ----------
    document
        What they were read from.
    unsure
        Keys that are wrong or missing; stand-ins took their place.
    """

    document: Document
    settings: Settings
    problems: tuple[Problem, ...] = ()
    unsure: frozenset[str] = frozenset()


_STAND_INS = {
    "name": "?",
    "currency": UNKNOWN,
    "start": "2000-01",
    "budget": [0],
    "hours": [0],
}


def read_settings(document: Document) -> SettingsFile:
    """The settings of a garage; wrong ones are replaced, so that reading goes on."""
    if not document.whole:
        settings = Settings.model_validate(_STAND_INS)
        unsure = frozenset(Settings.model_fields)
        return SettingsFile(document, settings, document.problems, unsure)
    unsure = frozenset(one.field.partition(".")[0] for one in document.problems)
    problems = document.problems
    try:
        settings = Settings.model_validate(document.values)
        return SettingsFile(document, settings, problems, unsure)
    except ValidationError as error:
        problems += tuple(_problems(document, error.errors(include_url=False)))
        unsure |= {str(one["loc"][0]) for one in error.errors()}
    sure = Settings.model_fields.keys() - unsure
    kept = {key: value for key, value in document.values.items() if key in sure}
    settings = Settings.model_validate(_STAND_INS | kept)
    return SettingsFile(document, settings, problems, unsure)


def _problems(document: Document, errors: list[ErrorDetails]) -> Iterator[Problem]:
    """What the values mean; keys that could not even be read are told already."""
    told = {one.field for one in document.problems}
    for error in errors:
        path = [part for part in error["loc"] if part != "[key]"]
        names = [part for part in path if isinstance(part, str)]
        field = plain(".".join(names))
        if field in told:
            continue
        for place in path:
            if isinstance(place, int) and _is_list(document.values, names):
                field += f", value {place + 1}"
        message = _message(document, names, error)
        yield Problem(document.file, document.line(*names), field, message)


def _is_list(values: Mapping[str, Any], names: list[str]) -> bool:
    found: Any = values
    for name in names:
        found = found[name]
    return isinstance(found, list)


def _message(document: Document, names: list[str], error: ErrorDetails) -> str:
    if error["type"] == "missing":
        known = Settings.model_fields
        unknown = [name for name in document.values if name not in known]
        return f"needed key is missing{hint(names[-1], unknown, 'is it')}"
    misplaced = len(names) > 1 and names[-1] in Settings.model_fields
    if misplaced or error["type"] == "extra_forbidden":
        return f"no such key{_hint(names)}"
    if cause := error.get("ctx", {}).get("error"):
        return str(cause)
    return f"expected something else, got {said(error['input'])}"


_SECTIONS: Mapping[str, type[BaseModel]] = {
    "weights": WeightSettings,
    "workshop": WorkshopSettings,
}


def _hint(names: list[str]) -> str:
    """Where a key belongs, or which one was meant."""
    *outer, key = names
    if outer and key in Settings.model_fields:
        return "; it belongs above the first section"
    for name, section in _SECTIONS.items():
        if key in section.model_fields and outer != [name]:
            return f"; it belongs in [{name}]"
    model = _SECTIONS[outer[0]] if outer else Settings
    return hint(key, model.model_fields)
