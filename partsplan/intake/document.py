"""The settings of a garage as plain values, before anybody looks at what they mean."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from partsplan.errors import Problem


class Number(str):
    """A number with a fraction or an exponent, as it was written.

    Decimal would take 2.5e2, and then hide that it had an exponent.
    """


@dataclass(frozen=True, slots=True)
class Document:
    """The values of the settings, and the line of each key (``section.key``).

    Attributes
    ----------
    file
        The file or sheet that they stand in.
    problems
        What is wrong apart from what the values mean; their ``field`` is the key.
    whole
        Whether it could be read at all.
    dotted
        Whether keys of a section are written ``section.key``, not below ``[section]``.
    """

    file: str
    values: Mapping[str, Any]
    lines: Mapping[str, int]
    problems: tuple[Problem, ...] = ()
    whole: bool = True
    dotted: bool = False

    def line(self, *path: str) -> int:
        """The line of a key, of its section, or 0."""
        inner, outer = ".".join(path[:2]), path[0] if path else ""
        return self.lines.get(inner) or self.lines.get(outer, 0)

    def section(self, name: str) -> str:
        """How a section is called."""
        return name if self.dotted else f"[{name}]"


def unreadable(problem: Problem) -> Document:
    """What is left of settings that cannot be read at all."""
    return Document(problem.file, {}, {}, (problem,), whole=False)


def as_text(value: object) -> str | None:
    """A number or a text as it was written; None for anything else."""
    if isinstance(value, bool):
        return None
    if isinstance(value, Number):
        return value.replace("_", "")
    return str(value) if isinstance(value, (int, str)) else None
