"""Lamps, silent units and groups of signs name what exists."""

import re
from collections.abc import Mapping
from itertools import chain

import pytest

from partsplan.catalogue import (
    CodeOwner,
    LampSign,
    UnitSign,
    code_range,
    fault_kinds,
    lamp_signs,
    scale,
    sign_groups,
    trouble_codes,
    unit_signs,
)
from partsplan.domain import System

CODE = re.compile(r"[PBCU][0-3][0-9A-F]{3}")


def test_every_lamp_has_names_and_kinds_that_exist() -> None:
    assert set(lamp_signs()) == {word.value for word in scale("lamp")}
    for one in lamp_signs().values():
        assert one.words
        assert set(one.kinds) <= set(fault_kinds())


def test_a_lamp_is_of_the_system_of_its_first_kind() -> None:
    for one in lamp_signs().values():
        systems = [fault_kinds()[kind].system for kind in one.kinds]
        assert (systems or [System.ENGINE])[0] is one.system


def test_a_lamp_points_to_some_kind_that_lights_it() -> None:
    """But the engine lamp, behind which anything can be."""
    for one in lamp_signs().values():
        lit = [kind for kind in one.kinds if one.lamp in fault_kinds()[kind].lamps]
        assert lit or one.lamp == "engine", one.lamp


def test_every_unit_has_a_code_for_its_silence() -> None:
    codes = [one.code for one in unit_signs().values()]
    assert len(set(codes)) == len(codes)
    for one in unit_signs().values():
        assert "does not answer" in trouble_codes()[one.code].meaning
        assert one.words


@pytest.mark.parametrize("signs", [lamp_signs(), unit_signs()], ids=["lamp", "unit"])
def test_no_name_means_two_things(signs: Mapping[str, LampSign | UnitSign]) -> None:
    words = list(chain.from_iterable(one.words for one in signs.values()))
    assert len(set(words)) == len(words)
    assert all(re.fullmatch(r"[a-z]+([ -][a-z]+)*", word) for word in words)


def test_groups_name_signs_that_exist() -> None:
    for group in sign_groups():
        for sign in (*group.all_of, *group.some_of):
            if sign == "unit:unnamed":
                continue
            if sign.startswith("lamp:"):
                assert sign.removeprefix("lamp:") in lamp_signs(), group.key
                continue
            ends = sign.split("-")
            assert ends == sorted(ends), group.key
            for code in ends:
                assert CODE.fullmatch(code), group.key
                assert code_range(code).owner is CodeOwner.GENERIC, group.key


def test_groups_hold_together() -> None:
    groups = sign_groups()
    assert len(groups) >= 20
    assert len({group.key for group in groups}) == len(groups)
    for group in groups:
        assert group.kind is None or group.kind in fault_kinds()
        assert group.all_of or group.some_of
        assert (group.least == 0) == (not group.some_of), group.key


def test_groups_say_what_to_check_in_words_of_their_own() -> None:
    texts = [group.says for group in sign_groups()]
    assert len(set(texts)) == len(texts)
    assert all(text.endswith(".") and 40 < len(text) <= 250 for text in texts)
