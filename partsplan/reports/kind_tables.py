"""One kind of fault in detail: its figures, what goes with it, what to check."""

from collections.abc import Iterator

from partsplan.catalogue import (
    FaultKind,
    KindCheck,
    Link,
    codes_for,
    fault_kinds,
    kind_checks,
    kind_links,
)
from partsplan.domain import Inspection
from partsplan.reports.figures import listed, number, percent
from partsplan.reports.page import Page
from partsplan.reports.tables import figure, text
from partsplan.scoring import forbids_driving

SOURCES = {
    "practice": "",
    "annex": "as printed in the directive",
    "british-manual": "as the British manual prints it",
    "part-memory": "the letter partly from memory",
    "memory": "from memory",
}


def kind_page(kind: FaultKind, page: Page) -> None:
    """All that the catalogue knows of a kind; money in EUR."""
    page.title(f"{kind.title} ({kind.key})")
    page.paragraph(" ".join(_sentences(kind)))
    page.gap()
    page.table("figures", [text("Usual figure"), figure("Value")], list(_figures(kind)))
    goes_with, before, behind = _pairs(kind), _after(kind), _waiting(kind)
    if goes_with or before or behind:
        page.heading("What goes with it")
        page.bullets((*goes_with, *before, *behind))
    if checks := kind_checks().get(kind.key, ()):
        page.heading("What to check before buying")
        page.table(
            "checks",
            [text("It may be"), figure("Chance"), text("Check"), figure("Own hours")],
            [_check(one) for one in checks],
        )
        if rest := 1 - sum(one.chance for one in checks):
            page.paragraph(f"With a chance of {percent(rest)} it is something else.")
    if codes := codes_for(kind.key):
        page.heading("Trouble codes that may stand for it")
        page.paragraph(", ".join(codes))


def _sentences(kind: FaultKind) -> Iterator[str]:
    yield f"System: {kind.system}."
    if forbids_driving(kind):
        yield "Do not drive with it."
    if kind.inspection is not Inspection.NONE:
        item = _item(kind)
        yield f"An inspection would call it a {kind.inspection} deficiency{item}."
    if kind.lamps:
        yield f"It lights the lamp {listed(kind.lamps)}."
    yield "The figures are rough: common practice from memory, no source."


def _item(kind: FaultKind) -> str:
    if not kind.inspection_ref:
        return ""
    noted = SOURCES[kind.source]
    return f" (item {kind.inspection_ref} of Annex I of Directive 2014/45/EU, {noted})"


def _figures(kind: FaultKind) -> Iterator[tuple[str, str]]:
    if kind.severity is not None:
        yield (
            "Severity and likelihood of harm",
            f"{int(kind.severity)}{kind.likelihood}",
        )
    yield "Hampers driving, 0 to 4", str(kind.drivability)
    if kind.loss_per_month:
        yield "Loss, EUR a month", number(kind.loss_per_month)
    if kind.damage_chance:
        yield "Chance of further damage a month", percent(kind.damage_chance)
        yield "What that would cost, EUR", number(kind.damage_cost)
    if kind.enjoyment:
        yield "Worth as a wish, 0 to 10", number(kind.enjoyment)
    if kind.growth:
        yield "Grows a month by", percent(kind.growth)
    hours = "for a workshop" if kind.hours is None else number(kind.hours)
    yield "Own hours to mend it", hours


def _pairs(kind: FaultKind) -> list[str]:
    found = []
    for one in kind_links():
        if one.link is Link.PAIR and kind.key in (one.kind, one.other):
            other = one.other if one.kind == kind.key else one.kind
            twice = "in twos" if other == kind.key else f"together with {_named(other)}"
            found.append(f"Mended {twice}: {one.why}.")
    return found


def _after(kind: FaultKind) -> list[str]:
    return [
        f"Mended after {_named(one.other)}: {one.why}."
        for one in kind_links()
        if one.link is Link.AFTER and one.kind == kind.key
    ]


def _waiting(kind: FaultKind) -> list[str]:
    return [
        f"Mended before {_named(one.kind)}: {one.why}."
        for one in kind_links()
        if one.link is Link.AFTER and one.other == kind.key
    ]


def _named(key: str) -> str:
    return f"{fault_kinds()[key].title} ({key})"


def _check(one: KindCheck) -> tuple[str, ...]:
    return one.cause, percent(one.chance), one.check, number(one.hours)
