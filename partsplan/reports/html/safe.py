"""Text that can neither turn its neighbours round nor break a file."""

import re

_UNSAFE = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f"  # control characters
    "\u202a-\u202e\u2066-\u2069"  # what embeds, overrides or isolates a direction
    "\ud800-\udfff\ufdd0-\ufdef\ufffe\uffff]"  # what is no character
)


def safe(text: str) -> str:
    """The text without characters that act on what stands beside it.

    Letters that run from right to left, and marks among them, stay as they are.
    """
    return _UNSAFE.sub("", text)
