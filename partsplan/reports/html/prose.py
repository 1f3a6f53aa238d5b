"""Sentences as HTML: escaped, and broken only where that reads well."""

import re
from typing import TYPE_CHECKING

from partsplan.reports.html.safe import safe

if TYPE_CHECKING:
    from markupsafe import Markup

_WHOLE = r"\b[0-9]{4}-[0-9]{2}(?:-[0-9]{2})?\b|[0-9.,]+ %"


def prose(text: str) -> "Markup":
    """The text with its months, days and percentages held together."""
    from markupsafe import Markup, escape

    held = re.sub(_WHOLE, r'<span class="whole">\g<0></span>', str(escape(safe(text))))
    return Markup(held)
