"""Cautions come with the work they belong to."""

import pytest

from partsplan.catalogue import cautions
from partsplan.domain import System


@pytest.mark.parametrize(
    ("words", "systems"),
    [
        ("axle stands", ()),
        ("inspection and emission law", ()),
        ("hazardous waste", ()),
        ("licensed person", (System.BRAKES,)),
        ("licensed person", (System.STEERING,)),
        ("licensed person", (System.FUEL,)),
        ("licensed person", (System.RESTRAINT,)),
        ("battery disconnected", (System.RESTRAINT,)),
        ("no flame", (System.FUEL,)),
        ("hot cooling system", (System.COOLING,)),
        ("springs", (System.SUSPENSION,)),
        ("fumes", (System.INTERIOR,)),
        ("Exhaust gas kills", (System.EXHAUST,)),
    ],
)
def test_the_usual_caution_is_given(words: str, systems: tuple[System, ...]) -> None:
    assert any(words in text for text in cautions(systems))


def test_other_work_does_not_bring_it_up() -> None:
    assert not any("hot cooling system" in text for text in cautions([System.BODY]))


def test_all_work_brings_each_caution_once_and_the_general_ones_first() -> None:
    everything = cautions()
    assert len(set(everything)) == len(everything)
    assert everything[: len(cautions(()))] == cautions(())
    assert set(everything) == {text for system in System for text in cautions([system])}
