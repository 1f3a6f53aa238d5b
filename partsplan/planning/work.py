"""Own hours in the model, with the access that jobs share."""

from collections import defaultdict

from partsplan.planning.draft import Draft


def hold_hours(draft: Draft, extra: dict[int, int] | None = None) -> None:
    """No month takes more own hours than it has.

    ``extra`` names the columns of extra hours by month.
    """
    garage = draft.garage
    for column, offer in zip(draft.take, draft.offers, strict=True):
        if offer.option.hours:
            draft.efforts.append((column, offer.fitted, offer.option.hours))
    for (group, month), bundles in _behind(draft).items():
        opened = draft.program.binary(f"open {group} in {month}")
        draft.opened[group, month] = opened
        draft.efforts.append((opened, month, garage.access_group[group].hours))
        for places in bundles:
            draft.at_most(f"access {group} in {month}", places, (opened,))
    rows: list[list[tuple[int, float]]] = [[] for _ in range(garage.months)]
    for column, month, hours in draft.efforts:
        rows[month].append((column, float(hours)))
    for month, terms in enumerate(rows):
        if not terms:
            continue
        if extra and month in extra:
            terms.append((extra[month], -1.0))
        draft.program.row(
            f"hours of {month}",
            terms,
            high=float(garage.monthly_hours[month]),
            common=True,
        )


def _behind(draft: Draft) -> dict[tuple[str, int], list[tuple[int, ...]]]:
    """By access group and fitting month, the places of each bundle behind it."""
    found: dict[tuple[str, int], list[tuple[int, ...]]] = defaultdict(list)
    for bundle in draft.bundles:
        here: dict[tuple[str, int], list[int]] = defaultdict(list)
        for place in bundle:
            offer = draft.offers[place]
            for group in set(offer.option.access):
                if draft.garage.access_group[group].hours:
                    here[group, offer.fitted].append(place)
        for key, places in here.items():
            found[key].append(tuple(places))
    return dict(sorted(found.items()))
