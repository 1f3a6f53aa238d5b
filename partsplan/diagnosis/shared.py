"""Several faults that point at one cause, such as two lamps and one control unit."""

from collections.abc import Iterator, Sequence

from partsplan.diagnosis.present import present
from partsplan.domain import Cause, Fault, Garage, Option, SharedCause


def shared_causes(garage: Garage) -> tuple[SharedCause, ...]:
    """Causes that one check may settle for several faults of a vehicle.

    Faults share a cause if their causes name the same cure or are worded alike, or if
    both show by lamps or codes and the cure of one's cause cures the other as well.
    (Without such signs that cure may just be a kit for two worn parts.)
    """
    faults = present(garage)
    causes = [one for one in garage.causes if one.chance]
    by_cure = list(_by_cure(garage, faults, causes))
    told = {(one.faults, text) for one in by_cure for text in _folded(one.causes)}
    return (
        *by_cure,
        *(
            one
            for one in _by_wording(faults, causes)
            if (one.faults, _fold(one.causes[0])) not in told
        ),
    )


def _by_cure(
    garage: Garage, faults: Sequence[Fault], causes: Sequence[Cause]
) -> Iterator[SharedCause]:
    there = {fault.id for fault in faults}
    shown = {fault.id for fault in faults if fault.lamps or fault.codes}
    for option in garage.options:
        named = [one for one in causes if one.cure == option.id and one.fault in there]
        served = {one.fault for one in named}
        if served & shown:
            served |= _cured_by(option) & shown
        yield from _shared(
            [fault for fault in faults if fault.id in served], named, option.id
        )


def _by_wording(
    faults: Sequence[Fault], causes: Sequence[Cause]
) -> Iterator[SharedCause]:
    home = {fault.id: fault.vehicle for fault in faults}
    alike: dict[tuple[str, str], list[Cause]] = {}
    for one in causes:
        if one.fault in home:
            alike.setdefault((home[one.fault], _fold(one.cause)), []).append(one)
    for same in alike.values():
        served = {one.fault for one in same}
        cures = {one.cure for one in same}
        yield from _shared(
            [fault for fault in faults if fault.id in served],
            same,
            cures.pop() if len(cures) == 1 else None,
        )


def _shared(
    faults: Sequence[Fault], causes: Sequence[Cause], cure: str | None
) -> Iterator[SharedCause]:
    if len(faults) < 2:
        return
    wordings = {_fold(one.cause): one.cause for one in reversed(causes)}
    yield SharedCause(
        vehicle=faults[0].vehicle,
        faults=tuple(fault.id for fault in faults),
        causes=tuple(reversed(wordings.values())),
        cure=cure,
        lamps=tuple(dict.fromkeys(lamp for one in faults for lamp in one.lamps)),
        codes=tuple(dict.fromkeys(code for one in faults for code in one.codes)),
    )


def _cured_by(option: Option) -> set[str]:
    return {cure.fault for cure in option.fixes if cure.cures}


def _folded(texts: Sequence[str]) -> set[str]:
    return {_fold(text) for text in texts}


def _fold(text: str) -> str:
    """Without what capitals and blanks make different."""
    return " ".join(text.casefold().split())
