"""The colours of the page, by light and by dark; tests measure them."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Ink:
    """One colour, as #rrggbb."""

    light: str
    dark: str


PAPER = Ink("#f8f5ee", "#14181a")
CARD = Ink("#ffffff", "#1d2326")
TINT = Ink("#fbe9e4", "#3a1d1a")
"""What lies under text: the page, its cards, and the warning."""

TEXT = Ink("#1f262b", "#e9e5db")
SOFT = Ink("#545d63", "#b4b9b7")
LINK = Ink("#0b5563", "#8fd0d8")
ALARM = Ink("#9c1f17", "#ffa99c")
BOX = Ink("#6b6f70", "#8d9493")
"""Edges of what can be ticked."""
RULE = Ink("#d5cfc1", "#3b4447")
"""Thin lines that say nothing by themselves."""

DEEP = Ink("#14303f", "#f4ecd8")
MIDDLE = Ink("#286c68", "#6dbdb1")
WARM = Ink("#c8771f", "#bb6a22")
"""What charts are drawn with: apart by lightness, so in grey and to any eye."""

INKS = {
    "paper": PAPER,
    "card": CARD,
    "tint": TINT,
    "text": TEXT,
    "soft": SOFT,
    "link": LINK,
    "alarm": ALARM,
    "box": BOX,
    "rule": RULE,
    "deep": DEEP,
    "middle": MIDDLE,
    "warm": WARM,
}
