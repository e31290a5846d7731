"""A unit that wants to see the pickup is fed by a buffer, or by another output of low impedance.

Why it matters: such a unit (an old-style fuzz, some wahs) works together with the pickup's own impedance: behind a buffer
it sounds harsh, and the guitar's volume control no longer cleans it up.
What to do: move it before the buffer, or put something before it that looks like a pickup and can be switched out.
Source: common practice, no source; an output below 2 kΩ counts as a buffer, and a passive treadle or a transformer in between
hides the pickup no less.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.signal.at_limit import over
from rigc.analysis.signal.loading.loading import Loading
from rigc.analysis.signal.loading.section import Section
from rigc.analysis.signal.loading.section_walk import OUTSIDE, PICKUP
from rigc.analysis.signal.loading.state_words import remedy, states_told
from rigc.analysis.signal.unit_mode import STAGE, TRACK, WINDING
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.figures import ohms
from rigc.diagnostics.mend import Mend, Replace
from rigc.diagnostics.wording import listed
from rigc.facts.loading import LOW_OUTPUT_OHM
from rigc.model.rig import Rig
from rigc.model.ways.state_ways import UNKNOWN

KIND = Kind(
    "hidden-pickup",
    Level.WARNING,
    __doc__,
    "no buffered output, and none below 2 kΩ, feeds a unit that wants the pickup, directly or through passive units",
    "common practice, no source",
)
_BUFFERED = ("buffered", "trails", "always-on")


def hidden_pickup(rig: Rig, loading: Loading) -> Iterator[Diagnostic]:
    """One finding for each unit that wants the pickup, listing what hides it; can't-check for each source not known."""
    feeding: dict[str, list[Section]] = {}
    for section in loading.played:
        for name in dict.fromkeys(load.port.thing for load in section.loads if load.wants_pickup):
            feeding.setdefault(name, []).extend(_drivers(loading, section))
    for name, sections in feeding.items():
        hiding = [section for section in sections if _hides(rig, section)]
        if hiding:
            yield _told(rig, loading, name, hiding)
        sources = {section.source.thing for section in hiding}
        unsure = [each for each in sections if each.source_ohm is None and each.source.thing not in sources]
        for source in dict.fromkeys(section.source.thing for section in unsure):
            yield _cant(rig, name, next(each for each in unsure if each.source.thing == source))


def _drivers(loading: Loading, section: Section) -> list[Section]:
    """What drives a section in the end, pickups left out: what stands before the treadles and windings that it hangs on."""
    found, seen, waiting = [], set(), [section]
    while waiting:
        here = waiting.pop()
        if id(here) in seen or here.how == PICKUP:
            continue
        seen.add(id(here))
        if here.how in (TRACK, WINDING):
            waiting += reversed(_before(loading, here))
        else:
            found.append(here)
    return found


def _before(loading: Loading, section: Section) -> list[Section]:
    """The sections that end, in one state with it, at the treadle or winding that drives this one."""
    states = {state.name for state in loading.states(section)}
    return [
        each
        for each in loading.played
        if any(load.port.thing == section.source.thing and load.what == section.how for load in each.loads)
        and states & {state.name for state in loading.states(each)}
    ]


def _hides(rig: Rig, section: Section) -> bool:
    if section.how in (OUTSIDE, UNKNOWN):
        return False
    if section.source.thing in rig.instruments or (
        section.source_ohm is not None and over(LOW_OUTPUT_OHM.value, section.source_ohm)
    ):
        return True
    bypass = rig.units[section.source.thing].bypass
    return section.how == STAGE and bypass is not None and bypass.value in _BUFFERED


def _told(rig: Rig, loading: Loading, name: str, hiding: list[Section]) -> Diagnostic:
    sources = list(dict.fromkeys(section.source.thing for section in hiding))
    known = {section.source.thing: section.source_ohm for section in hiding}
    by = " and ".join(f"'{each}'" + (f" ({ohms(ohm)})" if (ohm := known[each]) is not None else "") for each in sources)
    unit, mends = rig.units[name], tuple[Mend, ...]()
    else_do = "put something before it that looks like a pickup"
    if not any(_is_first_of_all(rig, source) for source in sources):
        mends, else_do = _moved(rig, name, sources), f"move '{name}' before {listed(sources)}, or {else_do}"
    return KIND.at(
        unit.declared,
        f"'{name}' wants to see the pickup, but {by} feed{'s' if len(sources) == 1 else ''} it ({states_told(loading, hiding)})",
        subject=(name, *sources),
        label="wants the pickup",
        also=tuple(Label(rig.things[each].declared, "feeds it") for each in sources),
        mends=mends,
        help="" if mends else else_do,
        otherwise=else_do,
    )


def _is_first_of_all(rig: Rig, source: str) -> bool:
    """Whether nothing can stand before it: a radio's receiver, or an instrument with a buffer of its own."""
    thing = rig.units.get(source)
    return thing is None or any(jack.connector.kind == "wireless" for jack in thing.jacks)


def _moved(rig: Rig, name: str, sources: list[str]) -> tuple[Mend, ...]:
    """The chain with the unit before the first of its sources, where all of them stand in one mono chain."""
    for chain in rig.chains:
        things = [stop.thing for stop in chain.stops]
        if name not in things or not {*sources} <= {*things[: things.index(name)]}:
            continue
        last, first = things.index(name), min(map(things.index, sources))
        part = chain.stops[first : last + 1]
        whole = part[0].span.up_to(part[-1].span)
        if first == 0 or any(chain.stereo[first - 1 : last]) or "#" in whole.text or any(stop.jack for stop in part):
            continue
        names = " -> ".join((name, *things[first:last]))
        return (Mend(f"move '{name}' before '{things[first]}' in the chain", (Replace(whole, names),)),)
    return ()


def _cant(rig: Rig, name: str, section: Section) -> Diagnostic:
    thing = rig.things[section.source.thing]
    return KIND.cant_check(
        thing.declared,
        f"whether '{name}' sees the pickup can't be checked: {section.missing_end[-1]}",
        subject=(thing.name, name),
        help=remedy(section.missing_end[-1]),
    )


CHECK = hidden_pickup
