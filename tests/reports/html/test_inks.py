"""The colours, measured as WCAG 2.2 and CIE 1976 measure them."""

from itertools import combinations, product

import pytest

from partsplan.reports.html.inks import (
    ALARM,
    BOX,
    CARD,
    DEEP,
    INKS,
    LINK,
    MIDDLE,
    PAPER,
    SOFT,
    TEXT,
    TINT,
    WARM,
    Ink,
)

READ = 4.5  # WCAG 2.2, 1.4.3: contrast of text
SEEN = 3.0  # WCAG 2.2, 1.4.11: contrast of what is drawn
APART = 15  # of 100 steps of lightness; our own mark
SCHEMES = ("light", "dark")


def luminance(colour: str) -> float:
    """Relative luminance. [0-1]

    WCAG 2.2, definition of "relative luminance".
    """
    parts = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    red, green, blue = (
        part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4
        for part in parts
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """WCAG 2.2, definition of "contrast ratio". [1-21]"""
    darker, lighter = sorted((luminance(one), luminance(other)))
    return (lighter + 0.05) / (darker + 0.05)


def lightness(colour: str) -> float:
    """CIE 1976 L*. [0-100]"""
    bright = luminance(colour)
    return 116 * bright ** (1 / 3) - 16 if bright > 0.008856 else 903.3 * bright


def of(ink: Ink, scheme: str) -> str:
    colour: str = getattr(ink, scheme)
    return colour


def test_the_measures_agree_with_known_values() -> None:
    """Black on white is 21 to 1; #777777 on white 4.48, just too little for text."""
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#ffffff", "#777777") == pytest.approx(4.48, abs=0.005)
    assert lightness("#ffffff") == pytest.approx(100)
    assert lightness("#777777") == pytest.approx(50.0, abs=0.1)


@pytest.mark.parametrize(
    ("ink", "under", "scheme"),
    list(product((TEXT, SOFT, LINK), (PAPER, CARD), SCHEMES)),
)
def test_text_can_be_read(ink: Ink, under: Ink, scheme: str) -> None:
    assert contrast(of(ink, scheme), of(under, scheme)) >= READ


@pytest.mark.parametrize(("ink", "scheme"), list(product((TEXT, ALARM), SCHEMES)))
def test_the_warning_can_be_read(ink: Ink, scheme: str) -> None:
    assert contrast(of(ink, scheme), of(TINT, scheme)) >= READ


@pytest.mark.parametrize(
    ("ink", "under", "scheme"),
    list(product((DEEP, MIDDLE, WARM, BOX), (PAPER, CARD), SCHEMES)),
)
def test_what_is_drawn_can_be_seen(ink: Ink, under: Ink, scheme: str) -> None:
    assert contrast(of(ink, scheme), of(under, scheme)) >= SEEN


@pytest.mark.parametrize(
    ("one", "other", "scheme"),
    [
        (*pair, scheme)
        for pair in combinations((DEEP, MIDDLE, WARM), 2)
        for scheme in SCHEMES
    ],
)
def test_charts_can_be_told_apart_in_grey(one: Ink, other: Ink, scheme: str) -> None:
    apart = abs(lightness(of(one, scheme)) - lightness(of(other, scheme)))
    assert apart >= APART


def test_paper_is_printed_on_in_dark_inks() -> None:
    for ink in (TEXT, SOFT, LINK, ALARM, DEEP, MIDDLE, WARM):
        assert contrast(ink.light, "#ffffff") >= SEEN


def test_no_two_inks_share_a_light_colour() -> None:
    """A chart's dark colour is found by its light one."""
    assert len({ink.light for ink in INKS.values()}) == len(INKS)
