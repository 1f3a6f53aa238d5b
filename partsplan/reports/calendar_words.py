"""What a calendar says about each of its days."""

from collections.abc import Iterable, Iterator

from partsplan import catalogue
from partsplan.domain import (
    DeadlineDay,
    FittingDay,
    Garage,
    Inspection,
    Job,
    MilestoneDay,
    Occasion,
    Option,
    OrderDay,
    Plan,
    QuoteDay,
    ReturnDay,
    ToolDay,
)
from partsplan.pricing import flagged, price
from partsplan.reports import figures
from partsplan.reports.figures import listed, number
from partsplan.reports.names import fault_name

LICENSED = "Work for a licensed person, or to be checked by one."


def occasion_title(garage: Garage, occasion: Occasion) -> str:
    """The one line that a calendar shows."""
    match occasion:
        case OrderDay(supplier=supplier, options=options):
            where = f" from {garage.supplier[supplier].name}" if supplier else ""
            return f"Order{where}: {listed(options)}"
        case ToolDay(tool=tool):
            return f"Buy a tool: {garage.tool[tool].name}"
        case FittingDay(option=option):
            return f"Fit {option}{_colon(_target(garage, option))}"
        case ReturnDay(option=option, deposit=deposit):
            stake = figures.price(garage.currency, deposit)
            return f"Send the old unit of {option} back: {stake} at stake"
        case QuoteDay(option=option):
            return f"The quote of {option} ends"
        case DeadlineDay(fault=name):
            fault = garage.fault[name]
            inspected = fault.inspection is not Inspection.NONE
            what = "For the inspection" if inspected else "Deadline"
            vehicle = garage.vehicle[fault.vehicle].name
            return f"{what}: {fault.title}, {vehicle}"
        case MilestoneDay(milestone=milestone):
            return f"Milestone: {_milestone(garage, milestone)}"
    raise TypeError(f"no words for {occasion!r}")


def occasion_text(garage: Garage, plan: Plan, occasion: Occasion) -> str:
    """All else that there is to say, a line for each thing."""
    return "\n".join(_lines(garage, plan, occasion))


def _lines(garage: Garage, plan: Plan, occasion: Occasion) -> Iterator[str]:
    jobs = {job.option: job for job in plan.jobs}
    match occasion:
        case OrderDay(options=options):
            yield from (_to_order(garage, jobs[name]) for name in options)
            yield from _cautions(garage, options)
        case ToolDay(tool=tool, price=amount):
            yield f"{figures.price(garage.currency, amount)}."
            users = (job.option for job in plan.jobs if _needs(garage, job, tool))
            yield f"Needed for {listed(users)}."
        case FittingDay(option=name):
            yield "In hand by the middle of the month."
            yield from _work(garage, garage.option.get(name))
            yield from _cautions(garage, (name,), all_of_them=True)
        case ReturnDay(option=name, certain=certain):
            yield from _return(garage, garage.option.get(name), certain=certain)
        case QuoteDay(option=name):
            job = jobs[name]
            yield f"Planned to be ordered in {garage.month(job.ordered)}:"
            yield _to_order(garage, job)
        case DeadlineDay(fault=fault):
            yield "To be cured by the end of this day."
            yield _planned(garage, plan, fault)
        case MilestoneDay(faults=faults):
            yield "To be cured by the end of this day:"
            for fault in faults:
                yield f"{_title(garage, fault)} {_planned(garage, plan, fault)}"


def _to_order(garage: Garage, job: Job) -> str:
    """One part of an order, with its price and its deposit."""
    option = garage.option[job.option]
    pieces = "" if option.quantity == 1 else f"{number(option.quantity)} x "
    part = f", part {option.part_no}" if option.part_no else ""
    target = _colon(_target(garage, job.option))
    sums = figures.price(garage.currency, job.landed)
    if job.deposit:
        sums += f", deposit {figures.price(garage.currency, job.deposit)}"
    return f"{pieces}{job.option}{part}{target}. {sums}."


def _work(garage: Garage, option: Option | None) -> Iterator[str]:
    """What the job takes, as far as anything is known of it."""
    if option is None:
        return
    if option.hours:
        yield f"Own hours: {number(option.hours)}."
    for access in option.access:
        group = garage.access_group[access]
        title = f" ({group.title})" if group.title else ""
        yield f"Open up {access}{title}: {number(group.hours)} own hours."
    if option.tools:
        yield f"Tools: {listed(garage.tool[tool].name for tool in option.tools)}."
    priced = price(garage, option)
    if fitting := priced.coding + priced.consumables:
        yield f"Coding and consumables: {figures.price(garage.currency, fitting)}."


def _return(garage: Garage, option: Option | None, *, certain: bool) -> Iterator[str]:
    yield (
        "Last day to send it back."
        if certain
        else ("Last day to send it back if the part is fitted as planned.")
    )
    if option is None:
        return
    if option.supplier:
        yield f"To {garage.supplier[option.supplier].name}."
    if freight := price(garage, option).core_return:
        yield f"Sending costs {figures.price(garage.currency, freight)}."


def _cautions(
    garage: Garage, options: Iterable[str], *, all_of_them: bool = False
) -> Iterator[str]:
    """That work is for a licensed person; beside the work itself every caution."""
    known = [garage.option[name] for name in options if name in garage.option]
    if licensed := [one.id for one in known if flagged(garage, one)]:
        whose = "" if len(known) == 1 else f"{listed(licensed)}: "
        yield f"{whose}{LICENSED}"
    if all_of_them:
        faults = (garage.fault[cure.fault] for one in known for cure in one.fixes)
        yield from catalogue.cautions({fault.system for fault in faults})


def _planned(garage: Garage, plan: Plan, fault: str) -> str:
    """What the plan does about a fault."""
    cures = [
        f"{job.option}, fitted in {garage.month(job.fitted)}"
        for job in plan.jobs
        if fault in job.faults
    ]
    return f"Planned: {listed(cures)}." if cures else "Nothing is planned for it."


def _target(garage: Garage, option: str) -> str:
    """The faults of an option and their vehicle; nothing if it is no more there."""
    if option not in garage.option:
        return ""
    faults = [garage.fault[cure.fault] for cure in garage.option[option].fixes]
    vehicle = garage.vehicle[faults[0].vehicle].name
    return f"{'; '.join(fault.title for fault in faults)}, {vehicle}"


def _title(garage: Garage, fault: str) -> str:
    return f"{fault_name(garage.fault[fault])}."


def _milestone(garage: Garage, name: str) -> str:
    found = next(one for one in garage.milestones if one.id == name)
    return found.title or name


def _needs(garage: Garage, job: Job, tool: str) -> bool:
    return tool in garage.option[job.option].tools


def _colon(text: str) -> str:
    return f": {text}" if text else ""
