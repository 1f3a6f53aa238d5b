"""Where a text says that codes are stored, pending or permanent."""

import re
from bisect import bisect
from collections.abc import Sequence
from dataclasses import dataclass

from partsplan.domain import CodeState
from partsplan.signs.code_form import FORM

LONGEST_HEADING = 6
"""A line of more words that does not end in a colon is no heading. [words]"""

_STATE = re.compile(
    r"(?<!\bno )\b(?:"
    r"(?P<pending>pending|unconfirmed|not confirmed)|"
    r"(?P<permanent>permanent)|"
    r"(?P<stored>stored|confirmed))\b",
    re.IGNORECASE,
)
_LIST = re.compile(rf"(?:[\s,;]*{FORM}(?:[-:][0-9A-F]{{2}})?)+[\s,;]*", re.IGNORECASE)
_NOTHING = re.compile(r"\b(?:no|none|nothing|0)\b", re.IGNORECASE)


@dataclass(slots=True)
class States:
    """Follows a text line by line.

    Attributes
    ----------
    heading
        What the last heading says; it holds until the next one.
    running
        What the line before said of its codes; lines of nothing but codes go on with
        it.
    """

    heading: CodeState | None = None
    running: CodeState | None = None

    def read(self, line: str, places: Sequence[int]) -> list[CodeState | None]:
        """The state of each code of a line, given where on it the codes begin.

        Words before the first code are taken as said of what follows them, words
        behind it as said of what stands before them.
        """
        said = [(found.start(), _state(found)) for found in _STATE.finditer(line)]
        running, self.running = self.running, None
        if not places:
            self._heading(line, {state for _, state in said})
            return []
        if not said:
            self.running = running if _LIST.fullmatch(line) else None
            return [self.running or self.heading] * len(places)
        starts = [at for at, _ in said]
        if starts[0] > places[0]:
            behind = [*(state for _, state in said), self.heading]
            return [behind[bisect(starts, place)] for place in places]
        states = [said[bisect(starts, place) - 1][1] for place in places]
        self.running = states[-1]
        return [*states]

    def _heading(self, line: str, states: set[CodeState]) -> None:
        text = line.strip()
        heads = text.endswith(":") or 0 < len(text.split()) <= LONGEST_HEADING
        if states and heads:
            nothing = len(states) > 1 or _NOTHING.search(text)
            self.heading = None if nothing else next(iter(states))
        elif text.endswith(":"):
            self.heading = None


def _state(found: re.Match[str]) -> CodeState:
    return CodeState(str(found.lastgroup))
