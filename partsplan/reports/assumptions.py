"""What a plan takes for granted, and the cautions that go with it."""

from collections.abc import Iterable, Sequence

from partsplan import catalogue
from partsplan.domain import Assumed, Garage, Plan
from partsplan.reports.figures import count, number, percent, price, written
from partsplan.reports.paper import Paper

MOST_FILLED = 20
"""Most lines of filled blanks that a plan shows."""


def assumptions(page: Paper, garage: Garage) -> None:
    """The settings that decide most, and the blanks that were filled."""
    page.heading("What this assumes")
    page.bullets(settings(garage))
    lines = filled(garage.assumed)
    page.bullets(lines[:MOST_FILLED])
    if left := lines[MOST_FILLED:]:
        page.bullets([f"{len(left)} more, all listed by partsplan check."])


def settings(garage: Garage) -> tuple[str, ...]:
    """The settings that decide most, as sentences."""
    lines = [
        "One point borne for one month is worth "
        f"{price(garage.currency, garage.money_per_point)}.",
        "What is fitted still counts for "
        f"{count(garage.look_beyond, 'month')} after the plan's end.",
    ]
    if any(option.core_deposit for option in garage.options):
        lines.append(
            "A deposit counts as coming back where the chance that the old unit is "
            f"accepted is at least {percent(garage.core_trust)}, else not at all."
        )
    if garage.hour_value:
        worth = price(garage.currency, garage.hour_value)
        lines.append(f"An own hour is worth {worth}.")
    if garage.mean_temperature is None:
        lines.append("The workshop is warm enough all year.")
    else:
        coldest, warmest = min(garage.mean_temperature), max(garage.mean_temperature)
        lines.append(
            f"The workshop has {number(coldest)} C in its coldest month and "
            f"{number(warmest)} C in its warmest."
        )
    return tuple(lines)


def filled(assumed: Iterable[Assumed]) -> tuple[str, ...]:
    """Filled blanks as sentences, those of rows filled alike in one."""
    rows: dict[tuple[str, str, str], list[str]] = {}
    for one in assumed:
        values = rows.setdefault((one.table, one.source, one.row), [])
        values.append(f"{one.column} {written(one.value)}")
    alike: dict[tuple[str, str, str], list[str]] = {}
    for (table, source, row), values in rows.items():
        alike.setdefault((table, source, ", ".join(values)), []).append(row)
    return tuple(
        f"{table}, {', '.join(found)}: {values} ({source})."
        for (table, source, values), found in alike.items()
    )


def assumed_line(one: Assumed) -> str:
    """One filled blank in one line."""
    return f"{one.table}, {one.row}: {one.column} = {one.value} ({one.source})"


def warnings(page: Paper, lines: Sequence[str]) -> None:
    """Warnings; nothing if none."""
    if lines:
        page.heading("Warnings")
        page.bullets(lines)


def cautions(page: Paper, garage: Garage, plan: Plan) -> None:
    """The usual cautions for what the plan's jobs touch; nothing without jobs."""
    touched = {garage.fault[fault].system for job in plan.jobs for fault in job.faults}
    if touched:
        page.heading("Cautions")
        page.bullets(catalogue.cautions(touched))
