from partsplan.reports.page import PROSE, Page


def test_sections_stand_apart_and_the_first_line_is_no_gap() -> None:
    page = Page()
    page.heading("One")
    page.paragraph("Words.")
    page.heading("Two")
    page.bullets(["a", "b"])
    assert str(page) == "One\n===\nWords.\n\nTwo\n===\n- a\n- b"


def test_prose_keeps_to_a_width_that_can_be_read() -> None:
    page = Page(width=200)
    page.paragraph("word " * 100)
    assert max(map(len, str(page).splitlines())) <= PROSE


def test_ids_stay_whole_in_prose() -> None:
    page = Page(width=30)
    page.bullets(["the words before (estate-boost-hose) and after"])
    assert "(estate-boost-hose)" in str(page)
    assert all(line[:2] in ("- ", "  ") for line in str(page).splitlines())


def test_colour_is_put_on_and_taken_off() -> None:
    page = Page(colour=True)
    page.title("Plan")
    page.heading("Careful", alarm=True)
    assert str(page).splitlines() == [
        "\x1b[1mPlan\x1b[0m",
        "",
        "\x1b[1;31mCareful\x1b[0m",
        "=======",
    ]


def test_what_has_an_order_is_numbered() -> None:
    page = Page(width=20)
    page.numbered(["first check the belt", "then the earth"])
    assert str(page) == "1. first check the\n   belt\n2. then the earth"
