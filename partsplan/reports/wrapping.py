"""Text broken into lines."""

import textwrap

_TIED = "\N{NO-BREAK SPACE}%"


def prose(text: str, width: int, *, hanging: str = "") -> list[str]:
    """Lines of sentences; ids with hyphens stay whole, so that they can be copied.

    ``hanging`` opens the first line, the others are indented by its length.
    """
    indent = " " * len(hanging)
    return _lines(
        text,
        textwrap.TextWrapper(
            width,
            initial_indent=hanging,
            subsequent_indent=indent,
            break_on_hyphens=False,
        ),
    )


def cell(text: str, width: int) -> list[str]:
    """Lines of a narrow cell."""
    return _lines(text, textwrap.TextWrapper(width))


def _lines(text: str, wrapper: textwrap.TextWrapper) -> list[str]:
    """A number stays with its per cent sign."""
    lines = wrapper.wrap(text.replace(" %", _TIED))
    return [line.replace(_TIED, " %") for line in lines]
