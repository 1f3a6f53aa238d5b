"""Names of things in a text, however they are spaced."""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class Names:
    """Finds the names of signs; where one begins another, the longer one counts.

    Attributes
    ----------
    sign_of
        The sign of each name, which is in small letters, with single blanks.
    pattern
        Matches any of the names, to be put into longer patterns.
    """

    sign_of: Mapping[str, str]
    pattern: str = field(init=False)

    def __post_init__(self) -> None:
        longest_first = sorted(self.sign_of, key=len, reverse=True)
        words = (r"[\s-]+".join(re.split("[ -]", one)) for one in longest_first)
        object.__setattr__(self, "pattern", rf"(?:{'|'.join(words)})")

    def signs(self, text: str) -> Iterator[str]:
        """The signs that are named in a text, in its order."""
        spaced = {
            re.sub("[ -]", " ", name): sign for name, sign in self.sign_of.items()
        }
        for found in re.finditer(rf"\b{self.pattern}\b", text, re.IGNORECASE):
            yield spaced[re.sub(r"[\s-]+", " ", found[0]).lower()]
