"""What somebody sets once for all in a file of their own.

A flag goes before the environment (PARTSPLAN_SECONDS), that before garage.toml, that
before this file, and that before what is built in.
"""

import os
import tomllib
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

from partsplan.errors import InvalidGarage, Problem

BUILT_IN: Mapping[str, Any] = {
    "seconds": 30.0,
    "gap": 1e-4,
    "threads": 1,
    "color": True,
    "locale": "",
}


def setting(name: str) -> Callable[[], Any]:
    """A default that looks into the file only when it is asked for."""
    return lambda: _settings()[name]


def file() -> Path:
    """Where the file lies, whether it is there or not."""
    folder = os.environ.get("XDG_CONFIG_HOME") or Path.home() / ".config"
    return Path(folder) / "partsplan" / "config.toml"


def _settings() -> Mapping[str, Any]:
    path = file()
    try:
        found = tomllib.loads(path.read_text(encoding="utf-8"))
    except FileNotFoundError:
        return BUILT_IN
    except (OSError, UnicodeDecodeError, tomllib.TOMLDecodeError) as error:
        raise InvalidGarage([Problem(str(path), 0, "", str(error))]) from error
    problems = [
        Problem(str(path), 0, name, message)
        for name, value in found.items()
        if (message := _wrong(name, value))
    ]
    if problems:
        raise InvalidGarage(problems)
    return {**BUILT_IN, **found}


def _wrong(name: str, value: Any) -> str:
    """What is wrong with a setting; empty if nothing is."""
    if name not in BUILT_IN:
        return f"unknown setting; expected one of {', '.join(BUILT_IN)}"
    expected, good = _RULES[name]
    return "" if good(value) else f"expected {expected}, got {value!r}"


def _is_number(value: Any) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool)


_RULES: Mapping[str, tuple[str, Callable[[Any], bool]]] = {
    "seconds": ("a number above 0", lambda value: _is_number(value) and value > 0),
    "gap": ("a number, 0 or more", lambda value: _is_number(value) and value >= 0),
    "threads": (
        "a whole number above 0",
        lambda value: _is_number(value) and value >= 1 and value == int(value),
    ),
    "color": ("true or false", lambda value: isinstance(value, bool)),
    "locale": ("a code like en-GB", lambda value: isinstance(value, str)),
}
