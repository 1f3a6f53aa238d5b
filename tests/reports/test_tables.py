from hypothesis import given
from hypothesis import strategies as st

from partsplan.reports.tables import Column, figure, table, text

WORDS = st.text("abc -", max_size=60)


def test_figures_keep_their_zeros_and_stand_flush_right() -> None:
    drawn = table(
        [text("Part"), figure("Price")], [("a", "12.50"), ("b", "9.00")], width=80
    )
    assert drawn.splitlines() == [
        "Part  Price",
        "----  -----",
        "a     12.50",
        "b      9.00",
    ]


def test_the_widest_column_that_may_wrap_gives_way() -> None:
    rows = [("o1", "a rather long sentence about a part", "12.50")]
    drawn = table([Column("Id"), text("What"), figure("Price")], rows, width=30)
    assert max(map(len, drawn.splitlines())) <= 30
    assert "12.50" in drawn
    assert " ".join(drawn.split()).count("sentence") == 1


def test_wider_room_is_used() -> None:
    rows = [("word " * 20, "x")]
    narrow = table([text("What"), Column("Y")], rows, width=60)
    wide = table([text("What"), Column("Y")], rows, width=120)
    assert len(wide.splitlines()) < len(narrow.splitlines())


def test_an_optional_column_without_content_goes() -> None:
    columns = [Column("A"), figure("Deposit", optional=True), Column("B")]
    assert "Deposit" not in table(columns, [("a", "", "b")], width=80)
    assert "Deposit" in table(columns, [("a", "8.00", "b")], width=80)


def test_words_are_cut_only_where_nothing_else_helps() -> None:
    rows = [("alternator-regulator", "Brackenford Van and Bus Parts", "a b c " * 20)]
    columns = [text("Job"), text("From"), text("For")]
    drawn = table(columns, rows, width=50)
    assert "alternator-  " in drawn
    assert "Brackenford" in drawn
    assert "Brackenford" not in table(columns, rows, width=26)


def test_a_number_stays_with_its_per_cent_sign() -> None:
    drawn = table([text("What")], [("relieved by 80 % of it",)], width=14)
    assert [line.strip() for line in drawn.splitlines()[2:]] == [
        "relieved by",
        "80 % of it",
    ]


@given(st.lists(st.tuples(WORDS, WORDS, WORDS), max_size=5), st.integers(40, 160))
def test_no_line_is_longer_than_the_width(
    rows: list[tuple[str, str, str]], width: int
) -> None:
    drawn = table([text("One"), text("Two"), text("Three")], rows, width=width)
    assert all(len(line) <= width for line in drawn.splitlines())
