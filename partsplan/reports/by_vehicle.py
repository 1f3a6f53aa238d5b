"""Where the money goes: what each vehicle takes of each month."""

from typing import TYPE_CHECKING

from partsplan.domain import Garage, Plan
from partsplan.pricing import flows, price
from partsplan.reports.figures import money, month_name
from partsplan.reports.page import Page
from partsplan.reports.tables import figure, text

if TYPE_CHECKING:
    import pandas as pd

SHARED = "Shipping and tools"
PROMISED = "Bought before"
TOTAL = "Total"
NAME_ROOM, SUM_ROOM = 16, 10  # characters that a name and a sum take at least


def money_by_vehicle(page: Page, garage: Garage, plan: Plan) -> None:
    """A line a vehicle, a column a month; nothing for one vehicle.

    Nor for more months than a line holds.
    """
    room = NAME_ROOM + SUM_ROOM * (garage.months + 1)
    if len(garage.vehicles) < 2 or room > page.width or not plan.jobs:
        return
    spent = outlays(garage, plan)
    page.heading(f"Money out by vehicle [{garage.currency.code}]")
    months = [column for column in spent.columns if column != TOTAL]
    columns = [
        text("Vehicle"),
        *(figure(one, unit=garage.currency.code) for one in (*months, TOTAL)),
    ]
    page.table(
        "money-by-vehicle",
        columns,
        [
            (str(name), *(money(garage.currency, int(sum_)) for sum_ in sums))
            for name, *sums in spent.itertuples()
        ],
    )


def outlays(garage: Garage, plan: Plan) -> "pd.DataFrame":
    """Money out, a row a vehicle and a column a month, with totals. [minor units]

    What several jobs share, shipping and tools, has a row of its own. Deposits are in
    it, whether they come back or not.
    """
    import pandas as pd

    paid = [
        (garage.vehicle[garage.fault[job.faults[0]].vehicle].name, flow.month, flow.out)
        for job in plan.jobs
        for option in [garage.option[job.option]]
        for flow in flows(
            garage, option, price(garage, option), job.ordered, job.fitted
        )
    ]
    paid += [(SHARED, order.month, order.shipping) for order in plan.orders]
    paid += [(SHARED, tool.month, tool.price) for tool in plan.tools]
    paid += [(PROMISED, flow.month, flow.out) for flow in garage.promised_within]
    names = dict.fromkeys(vehicle.name for vehicle in garage.vehicles)
    table = (
        pd.DataFrame(paid, columns=["vehicle", "month", "out"])
        .pivot_table(index="vehicle", columns="month", values="out", aggfunc="sum")
        .reindex(index=[*names, SHARED, PROMISED], columns=range(garage.months))
        .fillna(0)
        .astype("int64")
    )
    table = table.loc[table.any(axis="columns")]
    table.columns = pd.Index(
        [month_name(garage.month(at)) for at in range(garage.months)]
    )
    table[TOTAL] = table.sum(axis="columns")
    table.loc[TOTAL] = table.sum()
    return table
