"""garage.toml as plain values, with numbers as they were written, and its lines."""

import re
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from partsplan.errors import Problem
from partsplan.sheets.files import read_text

_PLACE = re.compile(r" \(at line ([0-9]+), column [0-9]+\)$")
_SECTION = re.compile(r"\s*\[\s*([A-Za-z0-9_-]+)\s*\]")
_KEY = re.compile(r"\s*[\"']?([A-Za-z0-9_-]+)[\"']?\s*=")
_BARE_MONTH = re.compile(r"[^#\"']*=\s*[0-9]{4}-[0-9]{2}\s*(#.*)?$")


class Number(str):
    """A number with a fraction or an exponent, as it was written.

    Decimal would take 2.5e2, and then hide that it had an exponent.
    """


@dataclass(frozen=True, slots=True)
class Document:
    """The values of a TOML file, and the line of each key (``section.key``)."""

    file: str
    values: Mapping[str, Any]
    lines: Mapping[str, int]

    def line(self, *path: str) -> int:
        """The line of a key, of its section, or 0."""
        inner, outer = ".".join(path[:2]), path[0] if path else ""
        return self.lines.get(inner) or self.lines.get(outer, 0)


def read_toml(path: Path) -> Document | Problem:
    """The values of a TOML file, or why there are none."""
    text = read_text(path)
    if isinstance(text, Problem):
        return text
    try:
        values = tomllib.loads(text, parse_float=Number)
    except tomllib.TOMLDecodeError as error:
        return _syntax_problem(path.name, text, str(error))
    except RecursionError:
        return Problem(path.name, 0, "", "expected fewer brackets inside brackets")
    except ValueError:  # Python refuses to read whole numbers of 4,300 digits
        return Problem(path.name, 0, "", "expected numbers of fewer digits")
    return Document(path.name, values, _lines(text))


def as_text(value: object) -> str | None:
    """A number or a text as it was written; None for anything else."""
    if isinstance(value, bool):
        return None
    if isinstance(value, Number):
        return value.replace("_", "")
    return str(value) if isinstance(value, (int, str)) else None


def _syntax_problem(file: str, text: str, message: str) -> Problem:
    place = _PLACE.search(message)
    line = int(place[1]) if place else text.count("\n") + 1
    wrong = text.split("\n")[line - 1]
    if _BARE_MONTH.match(wrong):
        return Problem(file, line, "", 'expected quotes around a month: "2027-01"')
    hint = "; text needs quotes" if message.startswith("Invalid value") else ""
    return Problem(file, line, "", f"expected TOML: {_PLACE.sub('', message)}{hint}")


def _lines(text: str) -> dict[str, int]:
    """The line of each section and key; a second look at text that is known to be TOML.

    A key inside a text of many lines could be taken for one: that costs a message its
    right line, no more.
    """
    found: dict[str, int] = {}
    section = ""
    for line, content in enumerate(text.split("\n"), start=1):
        if head := _SECTION.match(content):
            found.setdefault(head[1], line)
            section = f"{head[1]}."
        elif key := _KEY.match(content):
            found.setdefault(section + key[1], line)
    return found
