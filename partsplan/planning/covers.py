"""Cuts for plans that a solver's tolerance lets through, though they overspend.

With sums of billions of minor units a column at 1 - 1e-10 hides a whole unit.
"""

from partsplan.planning.model import Model


def overspent_month(model: Model, balances: tuple[int, ...]) -> int | None:
    """The first month that ends below the reserve."""
    reserve = model.garage.reserve
    return next((m for m, money in enumerate(balances) if money < reserve), None)


def cover(
    model: Model, ones: tuple[int, ...], month: int
) -> tuple[list[tuple[int, float]], float]:
    """A row that forbids what overspends a month, as terms and their upper side.

    What is paid by then cannot all be bought again, unless something more brings
    money back: valid for every plan that keeps the reserve.
    """
    paid: dict[int, int] = {}
    for column, at, amount in model.outlays:
        counts = at <= month if model.garage.carry_over else at == month
        if counts:
            paid[column] = paid.get(column, 0) + amount
    at_one = set(ones)
    bought = [one for one, sum_ in paid.items() if sum_ > 0 and one in at_one]
    helping = [one for one, sum_ in paid.items() if sum_ < 0 and one not in at_one]
    terms = [(one, 1.0) for one in bought] + [(one, -1.0) for one in helping]
    return terms, len(bought) - 1.0
