import json

from partsplan.catalogue import fault_kinds, scales
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


def test_both_are_json_too() -> None:
    found = json.loads(kinds_json(KINDS[:1]))
    assert found["schema"] == 1
    assert found["kinds"][0]["key"] == KINDS[0].key
    words = json.loads(words_json(scales()))["words"]
    assert words["likelihood"][0]["value"] == "A"
