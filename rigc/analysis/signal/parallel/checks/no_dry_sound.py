"""All sound that comes to any amp or desk goes through a delay or a reverb that is set to wet only, and none comes to it dry.

Why it matters: what is played is not heard, only its echoes: the attack is gone.
What to do: take the unit back to a mix of dry and wet, or give the dry sound a way beside it: a blender, a parallel loop, another amp.
An amp that is said to be `wet` hears no dry sound on purpose.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.signal.amp_ends import amp_ends
from rigc.analysis.signal.parallel.leg import TIME
from rigc.analysis.signal.sound_ways import Hookup, SoundWays
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.wording import listed
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.ways.inner_ways import main_inputs
from rigc.model.ways.reached import reached

KIND = Kind(
    "no-dry-sound",
    Level.WARNING,
    __doc__,
    "of the amps and desks that an instrument is heard by, one at least hears it by a way without units that are set to wet only",
    "common practice, no source",
)


def no_dry_sound(rig: Rig, ways: SoundWays) -> Iterator[Diagnostic]:
    """One finding for all instruments and scenarios in which the same units let no dry sound through."""
    wet = {name for name, unit in rig.units.items() if unit.flags & TIME and "set wet" in unit.flags}
    found: dict[tuple[str, ...], dict[str, None]] = {}
    for hookup in ways.hookups if wet else ():
        for source in hookup.sources:
            stops = _stops(rig, hookup, source, wet)
            if stops:
                found.setdefault(stops, {})[source.thing] = None
    for stops, instruments in found.items():
        yield _told(rig, stops, tuple(instruments))


def _stops(rig: Rig, hookup: Hookup, source: Port, wet: set[str]) -> tuple[str, ...]:
    """The units set to wet without which an instrument would be heard dry; none where it is, or is not heard at all."""
    ends = {port for unit in rig.units.values() if unit.ends for port in amp_ends(unit, hookup.wired)}
    ends |= {port for unit in rig.units.values() if unit.ends for port in main_inputs(unit) if _blends(rig, port)}
    heard = reached(hookup.onward, (source,))
    amps = {port.thing for port in heard & ends}
    if not amps or any(rig.units[name].role == "wet" for name in amps):
        return ()
    dry = {
        start: tuple(end for end in after if not (start.thing == end.thing in wet))
        for start, after in hookup.onward.items()
    }
    if reached(dry, (source,)) & ends:
        return ()
    return tuple(sorted({port.thing for port in heard} & wet))


def _blends(rig: Rig, port: Port) -> bool:
    """Whether an amp lets what comes in there through beside a parallel loop."""
    return any(loop.mix == "parallel" for loop in rig.units[port.thing].loops)


def _told(rig: Rig, stops: tuple[str, ...], instruments: tuple[str, ...]) -> Diagnostic:
    units = [rig.units[name] for name in stops]
    return KIND.at(
        units[0].declared,
        f"{listed(stops)} {'is' if len(stops) == 1 else 'are'} set to wet only, and {listed(instruments)} {'is' if len(instruments) == 1 else 'are'} "
        "heard by no other way: no dry sound is left",
        subject=(*stops, *instruments),
        label="lets no dry sound through",
        also=tuple(Label(unit.declared, "nor does this") for unit in units[1:]),
        help=f"delete `set wet` in {listed(stops)} and mix the dry sound in there; or lead the dry sound round {'it' if len(stops) == 1 else 'them'}",
    )


CHECK = no_dry_sound
