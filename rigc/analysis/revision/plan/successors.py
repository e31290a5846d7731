"""Two designs -> which unit that comes takes the place of which that goes: as the source states, else a guess, told as one."""

from __future__ import annotations

from math import inf

from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import Thing
from rigc.record import Record


class Successors(Record):
    """By the name of the unit or supply that goes, the one that comes in its stead; and by jack, the jack that takes
    its part."""

    units: dict[str, str]
    ports: dict[Port, Port]

    def port(self, old: Port) -> Port:
        """Where a lead that was at an old jack belongs now: the successor's jack, or the same one."""
        return self.ports.get(old, old)


NONE = Successors({}, {})
"""Nothing is succeeded by anything."""


def successors(old: Rig, new: Rig, gone: tuple[str, ...], come: tuple[str, ...]) -> Successors:
    """Pairs each unit that goes with the one that is said to stand in for it, else with the one that shares most with it:
    neighbours in the chain and loops, outlets, ground on the deck. What shares nothing has no successor; among equals the order of the sources decides."""
    pairs = [
        (_rank(old, new, before, after), first, second, before, after)
        for first, before in enumerate(gone)
        for second, after in enumerate(come)
        if _kind(old, before) == _kind(new, after)
    ]
    units: dict[str, str] = {}
    for score, _, _, before, after in sorted(pairs):
        if score < 0 and before not in units and after not in units.values():
            units[before] = after
    ports = {port: then for before, after in units.items() for port, then in _jacks(old, new, before, after)}
    return Successors(units, ports)


def stated(new: Rig, before: str, after: str) -> bool:
    """Whether the source says that the later one stands in for the earlier one."""
    thing = new.things[after]
    return isinstance(thing, Thing) and thing.stands_in == before


def same_ground(old: Rig, new: Rig, before: str, after: str) -> bool:
    """Whether the later one stands over the middle of where the earlier one stood, on the same side of the same deck."""
    one, other = old.places.get(before), new.places.get(after)
    first, second = _size(old, before), _size(new, after)
    if one is None or other is None or first is None or second is None:
        return False
    if one.under != other.under or one.deck != other.deck:
        return False
    first = first if one.turned in (0, 180) else (first[1], first[0])
    second = second if other.turned in (0, 180) else (second[1], second[0])
    x_mm, y_mm = one.x_mm + first[0] / 2, one.y_mm + first[1] / 2
    return 0 <= x_mm - other.x_mm <= second[0] and 0 <= y_mm - other.y_mm <= second[1]


def _rank(old: Rig, new: Rig, before: str, after: str) -> float:
    """The lower, the sooner they are paired; 0 for no pair."""
    return -inf if stated(new, before, after) else -_shared(old, new, before, after)


def _kind(rig: Rig, name: str) -> str:
    return rig.things[name].kind


def _shared(old: Rig, new: Rig, before: str, after: str) -> int:
    neighbours = _neighbours(old, before) & _neighbours(new, after)
    loops = _loops(old, before) & _loops(new, after)
    outlets = _outlets(old, before) & _outlets(new, after)
    return 4 * len(loops) + 2 * len(neighbours) + len(outlets) + 3 * same_ground(old, new, before, after)


def _neighbours(rig: Rig, name: str) -> set[Port]:
    found = {each.end for each in rig.connections if each.start.thing == name}
    return found | {each.start for each in rig.connections if each.end.thing == name}


def _loops(rig: Rig, name: str) -> set[tuple[str, int]]:
    return {(use.switcher, use.number) for use in rig.loops if any(stop.thing == name for stop in use.stops)}


def _outlets(rig: Rig, name: str) -> set[Port] | set[str]:
    """Where a unit is fed from; of a supply, whom it feeds."""
    if name in rig.supplies:
        return {u for feed in rig.power.feeds for u in feed.units if any(port.thing == name for port in feed.outlets)}
    return {port for feed in rig.power.feeds if name in feed.units for port in feed.outlets}


def _size(rig: Rig, name: str) -> tuple[float, float] | None:
    thing = rig.units.get(name) or rig.supplies.get(name)
    if thing is None or thing.width_mm is None or thing.depth_mm is None:
        return None
    return thing.width_mm.value, thing.depth_mm.value


def _jacks(old: Rig, new: Rig, before: str, after: str) -> list[tuple[Port, Port]]:
    """Each jack and outlet with the one of the same name and part, else the one that is as many-th of its part."""
    found = []
    have = _parts(new, after)
    for name, part in _parts(old, before).items():
        peers = [jack for jack, role in have.items() if role == part]
        nth = [jack for jack, role in _parts(old, before).items() if role == part].index(name)
        then = name if name in peers else peers[nth] if nth < len(peers) else None
        if then is not None:
            found.append((Port(before, name), Port(after, then)))
    return found


def _parts(rig: Rig, name: str) -> dict[str, str]:
    jacks = {jack.name: jack.role for jack in rig.things[name].jacks}
    supply = rig.supplies.get(name)
    return jacks if supply is None else {**jacks, **{outlet.name: "outlet" for outlet in supply.outlets}}
