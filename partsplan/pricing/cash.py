"""When an option's money goes out and comes back."""

from partsplan.domain import Flow, Garage, Option, Price


def flows(
    garage: Garage, option: Option, price: Price, ordered: int, fitted: int
) -> tuple[Flow, ...]:
    """Money by month within the horizon, in month order. [minor units]

    The deposit counts as coming back, whole, where its chance can be trusted.
    """
    out = dict.fromkeys(range(garage.months), 0)
    back = out.copy()
    beyond = garage.months

    def pay(month: int, amount: int) -> None:
        if month < beyond:
            out[month] += amount

    for month, amount in instalments(option, price.landed):
        pay(ordered + month, amount)
    pay(ordered, price.deposit)
    pay(fitted, price.coding + price.consumables)
    if option.core_deposit:
        credited = fitted + -(-option.core_days // 30)
        pay(credited, price.core_return)
        if credited < beyond and option.core_chance >= garage.core_trust:
            back[credited] += price.deposit
    return tuple(
        Flow(month=month, out=out[month], back=back[month])
        for month in out
        if out[month] or back[month]
    )


def instalments(option: Option, landed: int) -> tuple[tuple[int, int], ...]:
    """Months after ordering and the sum then due; the last takes the rounding."""
    ordered = sorted(option.instalments, key=lambda one: one.months)
    sums = [round(landed * one.share) for one in ordered[:-1]]
    sums.append(landed - sum(sums))
    return tuple((one.months, due) for one, due in zip(ordered, sums, strict=True))
