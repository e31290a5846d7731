"""With one of the instruments, or in one of the scenarios, no sound leaves the rig; or an instrument stands in no chain at all.

Why it matters: it is found when that instrument is plugged in, before the audience.
What to do: let its chain go on to an amp, a desk or a panel jack. A lead of a chain that holds `with` another instrument is not
there with this one: what both share is a chain of its own, without `with`. One that travels in case another breaks is a spare.
Source: arithmetic on the stated chains. Nothing is told while an open chain is that lacks its instrument. One that is declared in a file which the
rig uses, or that sends MIDI or data only, may be in no chain.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.signal.one_at_a_time import also_played, led_to
from rigc.analysis.signal.open_ends import OpenEnds, without_chain
from rigc.analysis.signal.sound_ways import Hookup, SoundWays
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.mend import AddTo, Mend
from rigc.diagnostics.wording import listed
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.slips.torn_chains import torn_chains
from rigc.model.things import Instrument
from rigc.model.ways.inner_ways import main_inputs, sinks
from rigc.model.ways.reached import reached
from rigc.model.wishes import Connection

KIND = Kind(
    "unheard-instrument",
    Level.WARNING,
    __doc__,
    "each instrument is heard in each scenario in which it is played",
    "arithmetic on the stated chains",
)

_MOST_WAYS = 2


def unheard_instrument(rig: Rig, ends: OpenEnds, ways: SoundWays) -> Iterator[Diagnostic]:
    """One finding for each instrument; it names the scenarios where it is heard in others."""
    if not ends.unreached:
        yield from (_chainless(rig, each) for each in without_chain(rig))
    if ends.unreached or ends.stuck or torn_chains(rig):
        return
    heard: dict[str, list[Hookup]] = {}
    silent: dict[str, list[tuple[Hookup, frozenset[Port]]]] = {}
    for hookup in ways.hookups:
        out = _ends(rig, hookup)
        for name, sources in _by_thing(hookup).items():
            ports = reached(hookup.onward, sources)
            if ports & out:
                heard.setdefault(name, []).append(hookup)
            else:
                silent.setdefault(name, []).append((hookup, ports))
    for name, found in silent.items():
        yield _told(rig, name, found, somewhere=name in heard)


def _chainless(rig: Rig, instrument: Instrument) -> Diagnostic:
    """It is played where another instrument is, if that fits; or into an amp or a desk."""
    name = instrument.name
    taken = {port for each in rig.connections for port in (each.start, each.end)}
    amps = [unit for unit in rig.units.values() if unit.ends]
    free = [port for unit in amps for port in main_inputs(unit) if port not in taken] if not instrument.pairs else []
    mends = (*also_played(rig, name)[:_MOST_WAYS], *led_to(name, free[:_MOST_WAYS]))
    spare = Mend(f"name it among the spares: {name}", (AddTo("spares", "", name),))
    return KIND.at(
        instrument.declared,
        f"'{name}' stands in no chain: nothing is heard of it",
        subject=(name,),
        label="declared here",
        mends=(*mends, spare),
    )


def _by_thing(hookup: Hookup) -> dict[str, list[Port]]:
    """The jacks at which sound begins. Where one side of a stereo source is heard, that the other is not is told of the side."""
    found: dict[str, list[Port]] = {}
    for source in hookup.sources:
        found.setdefault(source.thing, []).append(source)
    return found


def _ends(rig: Rig, hookup: Hookup) -> frozenset[Port]:
    """Where sound leaves while these leads are in: also a panel jack whose lead to an amp is not."""
    starts = {lead.start for lead in hookup.leads}
    panels = {port for port in hookup.wired if port.thing in rig.panels and port not in starts}
    return frozenset({*sinks(rig), *panels})


def _told(rig: Rig, name: str, found: list[tuple[Hookup, frozenset[Port]]], somewhere: bool) -> Diagnostic:
    hookup, ports = found[0]
    scenarios = dict.fromkeys(each for one, _ in found for each in one.scenarios)
    where = f" in {listed(scenarios)}" if somewhere and scenarios else ""
    away = _left_at_home(rig, hookup, ports)
    if away:
        return _without_its_amp(rig, name, away, hookup)
    on = _going_on(rig, hookup, ports)
    first = next(lead for lead in hookup.leads if lead.start.thing == name)
    others = dict.fromkeys(lead.when.instrument for lead in on if lead.when.instrument)
    shared = ""
    if on and others:
        shared = f", or write `chain {on[0].start} -> {on[0].end} ...`, which holds with {listed(others)} alone, as a chain without `with`"
    return KIND.at(
        first.span,
        f"with '{name}'{where} no sound reaches an amp, a desk or a panel jack",
        subject=(name,),
        label="goes on to nothing that is heard",
        also=tuple(
            Label(lead.span, f"holds with {listed((lead.when.instrument,))} alone")
            for lead in on[:1]
            if lead.when.instrument
        ),
        help=f"let its chain go on to an amp{shared}",
    )


def _left_at_home(rig: Rig, hookup: Hookup, ports: frozenset[Port]) -> tuple[str, ...]:
    """The amps and desks to which a lead goes from where the sound comes to, and which the scenarios' `amps` leave out."""
    used = [rig.scenarios[each].amps for each in hookup.scenarios]
    if not used or None in used:
        return ()
    there = {name for names in used for name in names or ()}
    return tuple(
        dict.fromkeys(
            each.end.thing
            for each in rig.connections
            if each.signal == "audio"
            and each.start in ports
            and each.end.thing in rig.units
            and rig.units[each.end.thing].ends
            and each.end.thing not in there
        )
    )


def _without_its_amp(rig: Rig, name: str, away: tuple[str, ...], hookup: Hookup) -> Diagnostic:
    first = next(lead for lead in hookup.leads if lead.start.thing == name)
    scenarios = hookup.scenarios
    several = len(scenarios) > 1
    return KIND.at(
        first.span,
        f"with '{name}' no sound is heard in {listed(scenarios)}, {'whose' if several else 'where'} `amps` {'leave' if several else 'leaves'} out "
        f"{listed(away)}",
        subject=(name,),
        label="goes on to what is not there",
        also=tuple(Label(rig.scenarios[each].declared, "its `amps` leave it out") for each in scenarios),
        help=f"name {listed(away)} among the `amps` of {listed(scenarios)}; or let its chain go to one that is there",
    )


def _going_on(rig: Rig, hookup: Hookup, ports: frozenset[Port]) -> list[Connection]:
    """Leads that go on from where the sound comes to, and are not there."""
    things = {port.thing for port in ports}
    there = {(lead.start, lead.end) for lead in hookup.leads}
    return [
        each
        for each in rig.connections
        if each.signal == "audio"
        and each.start.thing in things
        and (each.start, each.end) not in there
        and each.start.thing not in rig.instruments
    ]


CHECK = unheard_instrument
