"""The page in a real browser: no scrolling sideways, axe, paper, hostile texts.

Needs the extra ``browser`` and a chromium on the path.
"""

import shutil
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from partsplan.reports import report_html
from tests.reports.html.hostile import TEXTS, hostile_report
from tests.reports.html.made_reports import made_report

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page

pytest.importorskip("playwright.sync_api", reason="the extra browser is not installed")
CHROMIUM = shutil.which("chromium")
if CHROMIUM is None:
    pytest.skip("there is no chromium", allow_module_level=True)

PHONE, DESKTOP = (360, 740), (1280, 900)
SIDEWAYS = "document.documentElement.scrollWidth - document.documentElement.clientWidth"
OPEN_ALL = "document.querySelectorAll('details').forEach(one => one.open = true)"

Opener = Callable[..., "Page"]


@pytest.fixture(scope="module")
def browser() -> Iterator["Browser"]:
    from playwright.sync_api import sync_playwright

    with sync_playwright() as playwright:
        started = playwright.chromium.launch(
            executable_path=CHROMIUM,
            args=["--headless", "--no-sandbox", "--disable-gpu"],
        )
        yield started
        started.close()


@pytest.fixture(scope="module")
def file(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("page") / "report.html"
    path.write_text(report_html(made_report()), encoding="utf-8")
    return path


@pytest.fixture
def show(browser: "Browser") -> Iterator[Opener]:
    """Opens a file; nothing may be asked for from elsewhere, nothing complained of."""
    complaints: list[str] = []
    contexts = []

    def opened(
        file: Path, size: tuple[int, int] = PHONE, scheme: str = "light"
    ) -> "Page":
        context = browser.new_context(
            viewport={"width": size[0], "height": size[1]},
            color_scheme="dark" if scheme == "dark" else "light",
        )
        contexts.append(context)
        page = context.new_page()
        page.on("console", lambda message: complaints.append(message.text))
        page.on("pageerror", lambda error: complaints.append(str(error)))
        page.on(
            "request",
            lambda request: (
                None if request.url == file.as_uri() else complaints.append(request.url)
            ),
        )
        page.goto(file.as_uri())
        return page

    yield opened
    for context in contexts:
        context.close()
    assert complaints == []


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("size", [PHONE, DESKTOP], ids=["phone", "desktop"])
def test_axe_finds_nothing(
    show: Opener, file: Path, size: tuple[int, int], scheme: str
) -> None:
    from axe_playwright_python.sync_playwright import Axe

    page = show(file, size, scheme)
    page.evaluate(OPEN_ALL)
    found = Axe().run(page).response
    assert [one["id"] for one in found["violations"]] == []
    assert len(found["passes"]) > 20


def test_a_phone_does_not_scroll_sideways(show: Opener, file: Path) -> None:
    page = show(file)
    assert page.evaluate(SIDEWAYS) == 0
    page.evaluate(OPEN_ALL)
    assert page.evaluate(SIDEWAYS) == 0


def test_the_first_view_shows_the_danger_and_what_to_buy(
    show: Opener, file: Path
) -> None:
    page = show(file)
    for name in ("DO NOT DRIVE", "To buy this month"):
        box = page.get_by_role("heading", name=name).bounding_box()
        assert box is not None
        assert box["y"] + box["height"] < PHONE[1]
    first = page.get_by_role("checkbox").first.bounding_box()
    assert first is not None
    assert first["y"] + first["height"] < PHONE[1]


def test_a_box_is_ticked_without_script(browser: "Browser", file: Path) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(file.as_uri())
    box = page.get_by_role("checkbox").first
    page.get_by_text("hose-new, part BH-1").click()
    assert box.is_checked()
    box.focus()
    page.keyboard.press("Space")
    assert not box.is_checked()
    context.close()


def test_what_is_touched_is_large_enough(show: Opener, file: Path) -> None:
    """WCAG 2.2, 2.5.8: 24 by 24 px at least."""
    page = show(file)
    for target in page.locator("input, summary, nav a").all():
        box = target.bounding_box()
        assert box is not None
        assert min(box["width"], box["height"]) >= 24


def test_focus_can_be_seen(show: Opener, file: Path) -> None:
    page = show(file)
    page.keyboard.press("Tab")
    outline = page.evaluate("getComputedStyle(document.activeElement).outlineWidth")
    assert outline == "3px"


def test_it_prints_dark_on_white(show: Opener, file: Path) -> None:
    page = show(file, DESKTOP, "dark")
    page.emulate_media(media="print", color_scheme="dark")
    style = "getComputedStyle(document.body)"
    assert page.evaluate(f"{style}.backgroundColor") == "rgba(0, 0, 0, 0)"
    assert page.evaluate(f"{style}.color") == "rgb(31, 38, 43)"
    assert page.pdf(prefer_css_page_size=True).startswith(b"%PDF")


def test_charts_change_their_inks_in_the_dark(show: Opener, file: Path) -> None:
    fills = [
        show(file, PHONE, scheme).evaluate(
            "getComputedStyle(document.querySelector('svg[role=img] text')).fill"
        )
        for scheme in ("light", "dark")
    ]
    assert fills == ["rgb(84, 93, 99)", "rgb(180, 185, 183)"]


@pytest.mark.parametrize("text", TEXTS.values(), ids=TEXTS)
def test_a_hostile_text_does_nothing(show: Opener, tmp_path: Path, text: str) -> None:
    path = tmp_path / "hostile.html"
    path.write_text(report_html(hostile_report(text)), encoding="utf-8")
    page = show(path)
    assert page.title().startswith("Plan for garage")
    assert page.evaluate("document.scripts.length") == 0
    assert page.locator("img, [onerror], [onmouseover]").count() == 0
    assert page.get_by_role("heading", level=1).count() == 1
    assert page.get_by_role("heading", name="Cautions").count() == 1
    page.evaluate(OPEN_ALL)
    assert page.evaluate(SIDEWAYS) == 0
