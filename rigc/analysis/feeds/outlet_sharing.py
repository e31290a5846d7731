"""Units -> which of them may stand together on one outlet when the compiler chooses, and which had better not."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.model.rig import Rig
from rigc.model.things import Unit


def sharers(rig: Rig) -> dict[str, frozenset[str]]:
    """For each unit those with which it may share an outlet.

    Two may share where the source says so, or where both are neighbours in the chain, analogue, not of high gain and
    known to have the negative pole as ground [common practice, no source]. A unit that stays alone, a positive-ground one,
    and one whose current is not known never do, nor do two of unlike voltage, kind of current or polarity.
    """
    found: dict[str, set[str]] = {}
    for one, other in _pairs(rig):
        found.setdefault(one, set()).add(other)
        found.setdefault(other, set()).add(one)
    return {name: frozenset(others) for name, others in found.items()}


def chain_neighbours(rig: Rig) -> frozenset[frozenset[str]]:
    """Pairs of things with an audio lead between them."""
    return frozenset(
        frozenset((lead.start.thing, lead.end.thing)) for lead in rig.connections if lead.signal == "audio"
    )


def mixes(units: tuple[Unit, ...]) -> bool:
    """Whether units on one return disturb each other: digital ones beside analogue ones, or one of high gain in any company
    [common practice, no source]."""
    if len(units) < 2:
        return False
    digital = [unit for unit in units if "digital" in unit.flags]
    analogue = any("analogue" in unit.flags for unit in units if "digital" not in unit.flags)
    return bool(digital and analogue) or any("high gain" in unit.flags for unit in units)


def positive(unit: Unit) -> bool:
    """Whether the unit's audio ground is known to be its positive pole."""
    return unit.ground is not None and unit.ground.value == "positive"


def _pairs(rig: Rig) -> Iterator[tuple[str, str]]:
    for group in rig.power.may_share:
        for at, one in enumerate(group):
            yield from ((one, other) for other in group[at + 1 :] if _may(rig, one, other))
    for lead in rig.connections:
        one, other = lead.start.thing, lead.end.thing
        if (
            lead.signal == "audio"
            and _may(rig, one, other)
            and _harmless(rig.units[one])
            and _harmless(rig.units[other])
        ):
            yield one, other


def _may(rig: Rig, one: str, other: str) -> bool:
    if one == other or {one, other} & set(rig.power.alone):
        return False
    units = (rig.units.get(one), rig.units.get(other))
    return all(unit is not None and _could(unit) for unit in units) and _alike(units[0]) == _alike(units[1])


def _could(unit: Unit) -> bool:
    return unit.draws_ma is not None and not positive(unit)


def _alike(unit: Unit | None) -> tuple[object, ...]:
    if unit is None:
        return ()
    return unit.volts and unit.volts.value, unit.current, unit.polarity and unit.polarity.value


def _harmless(unit: Unit) -> bool:
    return not unit.flags & {"digital", "high gain"} and unit.ground is not None and unit.ground.value == "negative"
