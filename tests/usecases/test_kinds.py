from partsplan.catalogue import fault_kinds
from partsplan.usecases import kinds


def test_without_words_all_are_found() -> None:
    assert kinds() == tuple(fault_kinds().values())


def test_every_word_must_be_there() -> None:
    found = {kind.key for kind in kinds(["BRAKE", "hose"])}
    assert "brake-hose-bulging" in found
    assert "fuel-hose-perished" not in found


def test_a_key_stands_for_its_kind_alone() -> None:
    assert [kind.key for kind in kinds(["catalyst-missing"])] == ["catalyst-missing"]
    # the keys of others begin with it
    longer = [key for key in fault_kinds() if key.startswith("brake-caliper")]
    assert len(longer) > 1
    assert len(kinds(["brake-caliper"])) == len(longer)
