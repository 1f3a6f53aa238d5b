"""Lamps and silent units in words."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from partsplan.catalogue import lamp_signs, unit_signs
from partsplan.signs.told_lamps import find_lamps
from partsplan.signs.told_units import find_units

LAMPS = tuple(lamp_signs().values())
UNITS = tuple(unit_signs().values())


def lamps(text: str) -> list[str]:
    return list(find_lamps(text, LAMPS))


def units(text: str) -> list[str]:
    return list(find_units(text, UNITS))


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("ABS lamp", ["abs"]),
        ("the brake lamp is on", ["brake-fluid"]),
        ("Engine lamp lit", ["engine"]),
        ("check engine light", ["engine"]),
        ("airbag warning lamp stays on", ["airbag"]),
        ("Charge lamp glows at idle", ["charge"]),
        ("the oil-pressure lamp flickers", ["oil-pressure"]),
        ("ABS, brake and airbag lamps", ["abs", "brake-fluid", "airbag"]),
        ("lamps lit: ABS, brake", ["abs", "brake-fluid"]),
        ("Lights on = steering + tyre pressure", ["steering", "tyre-pressure"]),
        ("brake pad wear lamp", ["brake-wear"]),
        ("parking brake lamp", ["electric-parking-brake"]),
        ("anti-lock brake lamp", ["abs"]),
        ("ABS lamp\nABS lamp\nbrake lamp", ["abs", "brake-fluid"]),
        ("ABS lamp is lit and airbag lamp is off", ["abs"]),
        ("glow plug light blinks, engine light too", ["glow-plug", "engine"]),
    ],
)
def test_lamps_are_found_in_words(text: str, expected: list[str]) -> None:
    assert lamps(text) == expected


@pytest.mark.parametrize(
    "text",
    [
        "ABS lamp off",
        "airbag lamp: off",
        "the engine lamp is not lit",
        "the engine lamp goes out after the start",
        "no ABS lamp",
        "no lit ABS lamp",
        "brake lights out",
        "brake light switch",
        "charge lamp circuit",
        "oil change done",
        "the lamp of the garage",
        "headlamp aim",
        "absolute lamp",
        "engine oil: a lamp would be nice",
        "lamps: none",
    ],
)
def test_what_is_not_lit_is_no_lamp(text: str) -> None:
    assert lamps(text) == []


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("no reply from the ABS unit", ["abs"]),
        ("ABS unit: no reply", ["abs"]),
        ("ABS: no response", ["abs"]),
        ("The airbag control unit does not answer", ["airbag"]),
        ("no communication with engine control module", ["engine"]),
        ("Instrument cluster cannot be reached", ["cluster"]),
        ("power steering module is not responding", ["steering"]),
        ("no reply from a unit", ["unnamed"]),
        ("ABS and brake lamp on, no reply from the unit", ["unnamed"]),
        ("the unit does not reply", ["unnamed"]),
        ("ABS unit no reply\ngearbox unit no reply", ["abs", "gearbox"]),
        ("ABS unit does not reply\nno answer from ABS", ["abs"]),
    ],
)
def test_silent_units_are_found_in_words(text: str, expected: list[str]) -> None:
    assert units(text) == expected


@pytest.mark.parametrize(
    "text",
    [
        "ABS unit replies",
        "no reply from the seller",
        "no answer",
        "the dealer does not answer",
        "no pressure from the pump",
        "ABS unit, part number asked for",
    ],
)
def test_other_silence_is_no_unit(text: str) -> None:
    assert units(text) == []


@pytest.mark.parametrize("words", ["abs,", "abs and ", "no reply from ", "lamps: abs "])
def test_a_very_long_line_is_read_too(words: str) -> None:
    assert set(lamps(words * 20_000)) <= {"abs"}
    assert set(units(words * 20_000)) == set()


@given(st.text())
def test_any_text_is_read(text: str) -> None:
    assert set(lamps(text)) <= set(lamp_signs())
    assert set(units(text)) <= {*unit_signs(), "unnamed"}


WORDS = st.sampled_from(
    [
        *("abs", "brake", "engine", "lamp", "lamps", "lit", "unit", "reply", "answer"),
        *("no", "not", "does", "from", "the", "and", ":", ",", "-"),
    ]
)


@given(st.lists(WORDS, max_size=12).map(" ".join))
def test_any_row_of_these_words_is_read(text: str) -> None:
    assert len(set(lamps(text))) == len(lamps(text))
    assert len(set(units(text))) == len(units(text))
