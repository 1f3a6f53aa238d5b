"""Sections as data."""

from partsplan.reports.html.leaf import Bullets, Leaf, Paragraph, Table
from partsplan.reports.tables import Column, figure, text


def test_what_is_written_stands_under_its_heading() -> None:
    leaf = Leaf()
    leaf.heading("One", alarm=True)
    leaf.paragraph("Said.")
    leaf.heading("Two")
    leaf.bullets(["a"])
    one, two = leaf.sections
    assert (one.heading, one.alarm, one.blocks) == ("One", True, [Paragraph("Said.")])
    assert (two.heading, two.alarm, two.blocks) == ("Two", False, [Bullets(["a"])])


def test_a_list_that_goes_on_is_one_list() -> None:
    leaf = Leaf()
    leaf.heading("One")
    leaf.bullets([])
    leaf.bullets(one for one in "ab")
    leaf.bullets(["c"])
    assert leaf.sections[0].blocks == [Bullets(["a", "b", "c"])]


def test_columns_that_say_nothing_go() -> None:
    table = Table.of([text("A"), figure("B", optional=True)], [("x", ""), ("y", "")])
    assert [column.title for column in table.columns] == ["A"]
    assert table.rows == [["x"], ["y"]]


def test_rows_of_many_words_read_better_as_lines() -> None:
    words, figures = [text("A"), *[Column("B")] * 3], [Column("A"), *[figure("B")] * 5]
    assert Table(words, []).wordy
    assert not Table(figures, []).wordy
    assert not Table(words[:3], []).wordy
