"""What people wrote, as a message may show it."""

LONGEST_SHOWN = 40
"""[characters]"""


def one_line(text: str) -> str:
    """Text without anything that could break a line or garble a terminal."""
    if text.isprintable():
        return text
    return text.encode("unicode_escape").decode("ascii")


def plain(text: str) -> str:
    """Text as a message may show it: short, and on one line."""
    if len(text) > LONGEST_SHOWN:
        text = text[: LONGEST_SHOWN - 3] + "..."
    return one_line(text)


def shown(text: str) -> str:
    """Text as a message quotes it."""
    return f'"{plain(text)}"'


def wrong(expected: str, text: str) -> ValueError:
    """The error for a cell that holds something else."""
    return ValueError(f"expected {expected}, got {shown(text)}")
