"""garage.toml as plain values, with numbers as they were written, and its lines."""

import re
import tomllib
from pathlib import Path

from partsplan.errors import Problem
from partsplan.intake.document import Document, Number, unreadable
from partsplan.sheets.files import read_text

_PLACE = re.compile(r" \(at line ([0-9]+), column [0-9]+\)$")
_SECTION = re.compile(r"\s*\[\s*([A-Za-z0-9_-]+)\s*\]")
_KEY = re.compile(r"\s*[\"']?([A-Za-z0-9_-]+)[\"']?\s*=")
_BARE_MONTH = re.compile(r"[^#\"']*=\s*[0-9]{4}-[0-9]{2}\s*(#.*)?$")


def read_toml(path: Path) -> Document:
    """The values of a TOML file, or the problem that keeps it from being read."""
    text = read_text(path)
    if isinstance(text, Problem):
        return unreadable(text)
    try:
        values = tomllib.loads(text, parse_float=Number)
    except tomllib.TOMLDecodeError as error:
        return unreadable(_syntax_problem(path.name, text, str(error)))
    except RecursionError:
        message = "expected fewer brackets inside brackets"
        return unreadable(Problem(path.name, 0, "", message))
    except ValueError:  # Python refuses to read whole numbers of 4,300 digits
        message = "expected numbers of fewer digits"
        return unreadable(Problem(path.name, 0, "", message))
    return Document(path.name, values, _lines(text))


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
