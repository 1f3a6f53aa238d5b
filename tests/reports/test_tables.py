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


LONG = "alternator-regulator", "Brackenford Van and Bus Parts", "a b c " * 20
COLUMNS = [text("Job"), text("From"), text("For")]


def test_words_are_cut_only_where_nothing_else_helps() -> None:
    drawn = table(COLUMNS, [LONG], width=50)
    assert "alternator-  " in drawn
    assert "Brackenford" in drawn
    drawn = table(COLUMNS, [("x" * 70, *LONG[1:])], width=80)
    assert "x" * 70 not in drawn
    assert "Job " in drawn.splitlines()[0]


def test_where_there_is_no_room_a_row_becomes_lines() -> None:
    rows = [(*LONG, "12.50"), ("fuse", "", "lamp", "0.40")]
    drawn = table([*COLUMNS, figure("Price")], rows, width=32)
    assert drawn.splitlines() == [
        "alternator-regulator",
        "  From: Brackenford Van and Bus",
        "  Parts",
        *drawn.splitlines()[3:-4],
        "  Price: 12.50",
        "fuse",
        "  For: lamp",
        "  Price: 0.40",
    ]


def test_what_is_said_once_is_said_in_each_of_such_rows() -> None:
    columns = [Column("Month", once=True), Column("Do"), figure("Hours")]
    rows = [("2027-01", "order", "1"), ("2027-01", "fit", "2"), ("2027-02", "fit", "")]
    drawn = table(columns, rows, width=80).splitlines()
    assert [line.split()[0] for line in drawn[2:]] == ["2027-01", "fit", "2027-02"]
    assert table(columns, rows, width=12).splitlines() == [
        *("2027-01", "  Do: order", "  Hours: 1"),
        *("2027-01", "  Do: fit", "  Hours: 2"),
        *("2027-02", "  Do: fit"),
    ]


@given(st.lists(st.tuples(WORDS, *[st.text("0123456789.", max_size=12)] * 6)))
def test_not_even_many_figures_are_longer_than_a_narrow_page(
    rows: list[tuple[str, ...]],
) -> None:
    columns = [text("What"), *(figure(f"Figure {at}") for at in range(6))]
    drawn = table(columns, rows, width=40)
    assert not rows or all(len(line) <= 40 for line in drawn.splitlines())


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
