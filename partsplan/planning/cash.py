"""Money in the model: shipping, tools, and what each month's end must hold."""

from collections import defaultdict

from partsplan.planning import reach
from partsplan.planning.draft import Draft

SPARSE_FROM = 300
"""Faults from which balances get columns of their own; dense rows cost presolve more
than they tighten from there on (measured: 10 s at 1,000 faults)."""


def pay_offers(draft: Draft) -> None:
    """Each offer's own money."""
    for column, offer in zip(draft.take, draft.offers, strict=True):
        for flow in offer.flows:
            draft.outlays.append((column, flow.month, flow.out - flow.back))


def pay_shipping(draft: Draft) -> None:
    """Shipping once per supplier and month, free where the order's goods reach it."""
    ordered = _ordered_from(draft)
    for supplier in draft.garage.suppliers:
        rate = draft.garage.rate(supplier.currency)
        shipping = round(supplier.shipping * rate)
        if not shipping:
            continue
        free_over = None if supplier.free_over is None else supplier.free_over * rate
        for month, bundles in sorted(ordered[supplier.id].items()):
            enough = None if free_over is None else round(free_over)
            _ship(draft, supplier.id, month, bundles, shipping, enough)


def pay_tools(draft: Draft) -> None:
    """Each tool once, in or before the first fitting month that needs it."""
    needing_by_tool = _needing(draft)
    for tool in draft.garage.tools:
        needing = needing_by_tool[tool.id]
        if tool.owned or not needing:
            continue
        fitted = {draft.offers[p].fitted for places in needing for p in places}
        bought: list[int] = []
        for month in range(max(fitted) + 1):
            column = draft.program.binary(f"buy {tool.id} in {month}", common=True)
            draft.buy[tool.id, month] = column
            draft.outlays.append((column, month, tool.price))
            draft.worth.append((column, -float(tool.price)))
            bought.append(column)
            for places in needing if month in fitted else ():
                by_now = [p for p in places if draft.offers[p].fitted <= month]
                if by_now:
                    draft.at_most(f"{tool.id} by {month}", by_now, bought)
        once = [(column, 1.0) for column in bought]
        draft.program.row(f"{tool.id} once", once, high=1.0)


def hold_reserve(draft: Draft, extra: dict[int, int] | None = None) -> None:
    """No month ends below the reserve.

    ``extra`` names the columns of extra money by the month in which it comes.
    """
    outlays = [*draft.outlays]
    outlays += [(column, month, -1) for month, column in (extra or {}).items()]
    if draft.garage.carry_over and len(draft.garage.faults) >= SPARSE_FROM:
        _balance_columns(draft, outlays, helped=bool(extra))
    else:
        _closed_months(draft, outlays)


def _needing(draft: Draft) -> dict[str, list[tuple[int, ...]]]:
    """By tool, the places of each bundle that need it."""
    found: dict[str, list[tuple[int, ...]]] = defaultdict(list)
    for bundle in draft.bundles:
        here: dict[str, list[int]] = defaultdict(list)
        for place in bundle:
            for tool in dict.fromkeys(draft.offers[place].option.tools):
                here[tool].append(place)
        for tool, places in here.items():
            found[tool].append(tuple(places))
    return found


def _ordered_from(draft: Draft) -> dict[str, dict[int, list[tuple[int, ...]]]]:
    """By supplier and ordering month, the places of each bundle that order there."""
    found: dict[str, dict[int, list[tuple[int, ...]]]] = defaultdict(
        lambda: defaultdict(list)
    )
    for bundle in draft.bundles:
        here: dict[tuple[str, int], list[int]] = defaultdict(list)
        for place in bundle:
            offer = draft.offers[place]
            if offer.option.supplier:
                here[offer.option.supplier, offer.ordered].append(place)
        for (supplier, month), places in here.items():
            found[supplier][month].append(tuple(places))
    return found


def _ship(
    draft: Draft,
    supplier: str,
    month: int,
    bundles: list[tuple[int, ...]],
    shipping: int,
    enough: int | None,
) -> None:
    goods = {
        place: draft.offers[place].price.goods for places in bundles for place in places
    }
    if enough is not None and enough <= 0:
        return
    paid = draft.program.binary(f"ship from {supplier} in {month}", common=True)
    draft.ship[supplier, month] = paid
    draft.outlays.append((paid, month, shipping))
    draft.worth.append((paid, -float(shipping)))
    either = [paid]
    most = sum(max(goods[place] for place in places) for places in bundles)
    if enough is not None and most >= enough:
        free = draft.program.binary(
            f"free shipping from {supplier} in {month}", common=True
        )
        draft.free[supplier, month] = free
        either.append(free)
        terms = [
            (draft.take[place], float(min(worth, enough)))
            for place, worth in goods.items()
        ]
        name = f"goods for free shipping from {supplier} in {month}"
        draft.free_rows[free] = len(draft.program.rows)
        draft.program.row(name, [*terms, (free, -float(enough))], low=0.0)
    for places in bundles:
        draft.at_most(f"shipping from {supplier} in {month}", places, either)


def _closed_months(draft: Draft, outlays: list[tuple[int, int, int]]) -> None:
    """One row a month: cumulative where money moves on, else of the month alone."""
    garage = draft.garage
    rows: list[dict[int, int]] = [defaultdict(int) for _ in range(garage.months)]
    for column, month, amount in outlays:
        last = garage.months if garage.carry_over else month + 1
        for later in range(month, last):
            rows[later][column] += amount
    for month, (terms, have) in enumerate(zip(rows, reach.money(garage), strict=True)):
        if terms:
            draft.program.row(
                f"reserve at the end of {month}",
                terms.items(),
                high=have,
                common=True,
            )


def _balance_columns(
    draft: Draft, outlays: list[tuple[int, int, int]], *, helped: bool
) -> None:
    """One column a month for the money above the reserve.

    Without help it is never more than the month can hold at the very most.
    """
    rows: list[list[tuple[int, float]]] = [[] for _ in range(draft.garage.months)]
    for column, month, amount in outlays:
        rows[month].append((column, float(amount)))
    have = reach.money(draft.garage)
    most_money = reach.most_money(draft.garage, draft.offers)
    before: int | None = None
    for month, terms in enumerate(rows):
        most = None if helped else float(max(most_money[month], 0))
        balance = draft.program.share(f"balance of {month}", most, common=True)
        income = have[month] - (have[month - 1] if month else 0)
        if before is not None:
            terms.append((before, -1.0))
        draft.program.row(
            f"money of {month}",
            [*terms, (balance, 1.0)],
            low=income,
            high=income,
            common=True,
        )
        before = balance
