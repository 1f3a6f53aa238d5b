"""Near-miss names."""

import pytest

from partsplan.intake import suggest
from partsplan.intake.suggest import Suggester, hint


@pytest.mark.parametrize(
    ("name", "near"),
    [
        ("exchnage", "exchange"),
        ("EXCHANGE", "exchange"),
        ("stand in", "stand-in"),
        ("zzz", None),
        ("exchange" * 9, None),
    ],
)
def test_the_nearest_name_is_found(name: str, near: str | None) -> None:
    assert Suggester(["exchange", "stand-in", "used"]).nearest(name) == near


def test_a_hint_asks_or_says_nothing() -> None:
    assert hint("usde", ["used"]) == '; did you mean "used"?'
    assert hint("usde", ["used"], "is it") == '; is it "used"?'
    assert hint("xyz", ["used"]) == ""


def test_looking_up_ends_when_enough_names_were_compared(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(suggest, "COMPARISONS", 3)
    names = Suggester(["first", "second"])
    found = [names.nearest(name) for name in ("firts", "secnod", "fisrt", "firts")]
    assert found == ["first", "second", None, "first"]
