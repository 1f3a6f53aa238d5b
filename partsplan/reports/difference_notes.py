"""What stands beside two plans: who is parked, what is left, why, and how sure."""

from collections.abc import Iterator, Sequence

from partsplan.domain import (
    Change,
    Found,
    Garage,
    Input,
    LeaveFault,
    Parking,
    ParkVehicle,
    Stage,
    TakeFault,
    TwoPlans,
    UseOption,
    Why,
)
from partsplan.pricing import bars
from partsplan.reports.change_words import change_words, input_words, option_name
from partsplan.reports.figures import count, listed, month_name, month_spans
from partsplan.reports.names import fault_name
from partsplan.reports.page import Page
from partsplan.reports.words import sentence


def off_the_road(page: Page, plans: TwoPlans, changes: Sequence[Change]) -> None:
    """Vehicles that had better be parked, and what parking those that are spares."""
    if plans.other_parking:
        page.heading("DO NOT DRIVE, in the second plan", alarm=True)
        page.bullets(
            _better_parked(plans.other_garage, one) for one in plans.other_parking
        )
    asked = [one.vehicle for one in changes if isinstance(one, ParkVehicle)]
    spares = {one.vehicle: one.months for one in plans.spared}
    parked = dict.fromkeys((*asked, *spares))
    if parked:
        page.heading("Parked")
        page.bullets(
            _spared(plans.other_garage, vehicle, spares.get(vehicle, ()))
            for vehicle in parked
        )


def _spared(garage: Garage, vehicle: str, months: tuple[int, ...]) -> str:
    name = garage.vehicle[vehicle].name
    if not months:
        return (
            f"{name}: with these jobs there is no month in which it must not be "
            "driven, so parking it makes nobody safer."
        )
    return (
        f"{name} must not be driven in {month_spans(garage, months)} with these jobs; "
        "parked, it is not, and that costs no money."
    )


def _better_parked(garage: Garage, one: Parking) -> str:
    name, months = garage.vehicle[one.vehicle].name, month_spans(garage, one.months)
    if one.until is None:
        return (
            f"{name} must not be driven in {months}, and nothing in this plan makes it "
            f'safe. Parked ("--park {one.vehicle}") nobody drives it.'
        )
    return (
        f"{name} must not be driven in {months}. Parked until {month_name(one.until)} "
        f'("--park {one.vehicle}={one.until}") nobody drives it meanwhile, and '
        "that costs no money."
    )


def left_alone(page: Page, plans: TwoPlans, changes: Sequence[Change]) -> None:
    """Faults that only one of the plans leaves alone."""
    difference = plans.difference
    if difference is None:
        return
    asked = {one.fault for one in changes if isinstance(one, LeaveFault)}
    if difference.left:
        page.heading("Left alone now, and why")
        garage = plans.other_garage
        page.bullets(
            f"{_placed(garage, skip.fault)}: as you asked."
            if skip.fault in asked
            else f"{_placed(garage, skip.fault)}: "
            + " ".join(sentence(garage, one) for one in (skip.reason, *skip.also))
            for skip in difference.left
        )
    if difference.taken_up:
        page.heading("No longer left alone")
        page.bullets(
            f"{_placed(plans.other_garage, skip.fault)}."
            for skip in difference.taken_up
        )


def worth_notes(page: Page, plans: TwoPlans) -> None:
    """What keeps the two net worths from being compared."""
    difference = plans.difference
    if difference is None:
        return
    if faults := difference.otherwise_worth:
        names = [_name(plans, fault) for fault in faults[:3]]
        if len(faults) > len(names):
            names.append(count(len(faults) - len(names), "other fault"))
        page.heading("Net worth")
        page.paragraph(
            "It is what a plan gains over leaving everything as it is, and that start "
            f"is not the same in both: a month without {listed(names)} is worth more "
            "in one than in the other. So the difference between the two sums is "
            "neither a gain nor a loss."
        )
    elif any(one.stage is Stage.WORTH and not one.certain for one in difference.stages):
        page.heading("Net worth")
        page.paragraph(
            "The difference is smaller than what may be missing in the two plans, or "
            "an earlier count is not proven: which of the two is worth more cannot be "
            "told."
        )


def what_it_is_due_to(page: Page, plans: TwoPlans) -> None:
    """The cheapest explanation, or that there is none."""
    if plans.why is None:
        return
    page.heading("What makes the difference")
    page.paragraph(_due(plans.why))
    page.bullets(f"{part}." for part in _parts(plans, plans.why))


def _due(why: Why) -> str:
    among = (
        f"{count(why.among, 'input')} that {'differs' if why.among == 1 else 'differ'}"
    )
    match why.found:
        case Found.ALIKE:
            return (
                "Nothing that was said: the second plan's jobs would be as good for "
                "the first, as far as the two plans are proven."
            )
        case Found.CUT_SHORT:
            return (
                f"No single change was found to explain it. Not all of the {among} "
                f"could be tried ({count(why.tries, 'plan')} made)."
            )
        case Found.UNEXPLAINED:
            return (
                f"No single change explains it: each of the {among} was tried alone, "
                f"and some together ({count(why.tries, 'plan')} made)."
            )
    if why.among == 1:
        return "There is one input that differs:"
    if len(why.parts) == 1:
        return f"One change alone already leads to these jobs, of the {among}:"
    return (
        f"No single change explains it. These {len(why.parts)} together lead to these "
        f"jobs, of the {among}:"
    )


def _parts(plans: TwoPlans, why: Why) -> Iterator[str]:
    for part in why.parts:
        if isinstance(part, Input):
            holder = plans.garage if part.before is not None else plans.other_garage
            yield input_words(holder, part)
        else:
            yield change_words(plans.garage, part)


def nothing_does_it(page: Page, plans: TwoPlans, changes: Sequence[Change]) -> None:
    """Why no plan does what is forced, as far as that can be seen from one demand."""
    if plans.other_plan is not None:
        return
    garage = plans.other_garage
    reasons: list[str] = []
    for change in changes:
        if isinstance(change, TakeFault):
            name = fault_name(garage.fault[change.fault])
            options = [one.id for one in garage.options_for[change.fault]]
            if not options:
                reasons.append(f"{name}: nobody has quoted for it.")
        elif isinstance(change, UseOption):
            name, options = option_name(garage, change.option), [change.option]
        else:
            continue
        ruled_out = [bar for one in options for bar in bars(garage, garage.option[one])]
        if len(ruled_out) == len(options):
            reasons += [sentence(garage, bar) for bar in ruled_out]
        else:
            reasons.append(
                f"{name}: money, own hours or links between jobs do not allow it, at "
                "least not with all the rest."
            )
    if reasons:
        page.heading("What stands in the way")
        page.bullets(dict.fromkeys(reasons))


def _name(plans: TwoPlans, fault: str) -> str:
    known = {**plans.garage.fault, **plans.other_garage.fault}
    return fault_name(known[fault])


def _placed(garage: Garage, fault: str) -> str:
    found = garage.fault[fault]
    return f"{garage.vehicle[found.vehicle].name}, {fault_name(found)}"
