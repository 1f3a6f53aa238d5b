import json

import pytest

from partsplan.catalogue import FaultKind, fault_kinds, scales
from partsplan.reports import kinds_json, kinds_tables, words_json, words_tables

KINDS = tuple(fault_kinds().values())


def test_keys_are_never_broken_so_that_they_can_be_copied() -> None:
    text = kinds_tables(KINDS, width=80)
    starts = {line.split(" ")[0] for line in text.splitlines()}
    assert {kind.key for kind in KINDS} <= starts
    assert max(map(len, text.splitlines())) <= 80


def test_no_kind_found_says_so() -> None:
    assert kinds_tables(()) == "No kind of fault has all these words."


def test_every_word_has_its_meaning() -> None:
    text = words_tables(scales(), width=80)
    assert max(map(len, text.splitlines())) <= 80
    assert "exchange unit" in text
    assert all(f"\n{name}\n" in f"\n{text}" for name in scales())


def detail(key: str) -> str:
    """The page of one kind, its lines joined."""
    return " ".join(kinds_tables([fault_kinds()[key]], width=200).split())


def test_one_kind_is_shown_in_detail() -> None:
    text = detail("catalyst-worn-out")
    assert "major deficiency (item 8.2.1.2(h) of Annex I" in text
    assert "Mended after Spark plugs worn (spark-plugs-worn)" in text
    assert "converter no longer stores oxygen 50 %" in text
    assert "With a chance of 10 % it is something else." in text
    assert "P0420, P0421, P0430" in text
    assert "Own hours to mend it 2" in text


def test_a_pair_is_told_from_both_sides() -> None:
    assert "together with Brake pads worn out" in detail("brake-disc-worn")
    assert "together with Brake discs worn" in detail("brake-pads-worn-out")
    assert "Mended in twos" in detail("damper-leaking")


def test_what_waits_for_a_kind_is_told_as_well() -> None:
    assert "Mended before Catalytic converter worn out" in detail("spark-plugs-worn")


def test_a_kind_with_which_nobody_should_drive_says_so() -> None:
    assert "Do not drive with it." in detail("brake-pads-worn-out")
    assert "Do not drive" not in detail("spark-plugs-worn")


def test_work_for_a_workshop_has_no_own_hours() -> None:
    assert "Own hours to mend it for a workshop" in detail("windscreen-cracked")


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.key)
def test_every_kind_has_a_page_that_fits(kind: FaultKind) -> None:
    text = kinds_tables([kind], width=80)
    assert text.startswith(kind.title)
    assert max(map(len, text.splitlines())) <= 80


def test_both_are_json_too() -> None:
    found = json.loads(kinds_json([fault_kinds()["brake-disc-worn"]]))
    assert found["schema"] == 1
    kind = found["kinds"][0]
    assert kind["key"] == "brake-disc-worn"
    assert {link["other"] for link in kind["links"]} >= {"brake-pads-worn-out"}
    assert kind["hours"] == 1.5
    words = json.loads(words_json(scales()))["words"]
    assert words["likelihood"][0]["value"] == "A"
