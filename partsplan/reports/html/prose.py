"""Sentences as HTML: escaped, and broken only where that reads well."""

import re
from typing import TYPE_CHECKING

from partsplan.reports.html.safe import safe
from partsplan.reports.locales import Locale, current

if TYPE_CHECKING:
    from markupsafe import Markup

PAGE_LANGUAGE = "en"
_WHOLE = r"\b[0-9]{4}-[0-9]{2}(?:-[0-9]{2})?\b|[0-9.,]+ %"


def prose(text: str) -> "Markup":
    """The text with its months, days and percentages held together.

    Names of months say their language where it is not that of the page.
    """
    from markupsafe import Markup, escape

    locale = current()
    held = re.sub(_WHOLE, r'<span class="whole">\g<0></span>', str(escape(safe(text))))
    if locale.months:
        language = f' lang="{locale.code}"' * (locale.code != PAGE_LANGUAGE)
        held = re.sub(
            _named(locale), rf'<span class="whole"{language}>\g<0></span>', held
        )
    return Markup(held)


def _named(locale: Locale) -> str:
    return rf"\b(?:{'|'.join(locale.months)}) [0-9]{{4}}\b"
