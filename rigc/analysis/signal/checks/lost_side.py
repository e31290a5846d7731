"""Of a stereo pair of outputs one feeds something, and the other is not used; or into a pair of inputs the right one alone is fed.

Why it matters: one side silently disappears; many units give the sum of both only where nothing is plugged in on the right.
Into the right input alone most take no mono signal: its left side stays silent.
What to do: go on in stereo (`=>`), sum both sides in a mixer, or drop to mono on purpose on a unit that has a mono output.
Source: common practice, no source. Two sides in one jack that meet a mono jack are told as jack-mismatch.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from rigc.analysis.signal.sound_ways import Hookup, SoundWays
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.mend import Mend, Replace
from rigc.diagnostics.wording import listed
from rigc.model.jacks import AUDIO_IN, Port
from rigc.model.rig import Rig
from rigc.model.wishes import Connection

KIND = Kind(
    "lost-side",
    Level.WARNING,
    __doc__,
    "both sides of a stereo pair are used, or none",
    "common practice, no source",
)


def lost_side(rig: Rig, ways: SoundWays) -> Iterator[Diagnostic]:
    """One finding for each thing that loses a side; it names the scenarios where not all lose it."""
    found: dict[tuple[str, str, str], list[Hookup]] = {}
    for hookup in ways.hookups:
        used = {lead.start for lead in hookup.leads}
        for name in dict.fromkeys(lead.start.thing for lead in hookup.leads):
            for left, right in rig.things[name].pairs:
                for feeding, lost in ((left, right), (right, left)):
                    if (
                        Port(name, feeding) in used
                        and Port(name, lost) not in used
                        and _sounds(rig, hookup, name, lost)
                    ):
                        found.setdefault((name, feeding, lost), []).append(hookup)
    for (name, feeding, lost), hookups in found.items():
        yield _told(rig, name, feeding, lost, hookups, everywhere=len(hookups) == len(ways.hookups))
    yield from _into_the_right(rig)


def _into_the_right(rig: Rig) -> Iterator[Diagnostic]:
    """One finding for each unit whose left input nothing goes into, and the right one something. Where its block states the ways through it,
    these tell what comes of that."""
    into = {each.end: each for each in rig.connections if each.signal == "audio"}
    for unit in rig.units.values():
        for left, right in unit.pairs if unit.kind == "unit" and not unit.paths else ():
            lead = into.get(Port(unit.name, right))
            empty = unit.jack(left)
            if lead is None or Port(unit.name, left) in into or empty is None or empty.role != AUDIO_IN:
                continue
            there = f"{unit.name}.{left}"
            yield KIND.at(
                lead.span,
                f"'{lead.start}' goes into '{lead.end}', the right of a pair, and nothing goes into its left, '{there}'",
                subject=(unit.name, there, lead.start.thing),
                label="the right side alone",
                also=(Label(empty.span, "this side is empty"),),
                mends=(Mend(f"write '{there}'", (Replace(lead.span, there),)),)
                if lead.span.text == str(lead.end)
                else (),
                otherwise=f"lead it into '{there}', here and in the leads block",
            )


def _sounds(rig: Rig, hookup: Hookup, name: str, jack: str) -> bool:
    """Whether anything comes out there: a panel jack must be fed, a unit's output is."""
    return name not in rig.panels or any(lead.end == Port(name, jack) for lead in hookup.leads)


def _told(rig: Rig, name: str, feeding: str, lost: str, hookups: list[Hookup], everywhere: bool) -> Diagnostic:
    lead = next(each for each in hookups[0].leads if each.start == Port(name, feeding))
    scenarios = dict.fromkeys(each for hookup in hookups for each in hookup.scenarios)
    where = "" if everywhere or not scenarios else f" in scenario {listed(scenarios)}"
    jack = rig.jack(Port(name, lost))
    left = next((each for each in rig.connections if each.start == Port(name, lost) and each.signal == "audio"), None)
    if left is not None and scenarios and _stays_at_home(rig, left.end.thing, scenarios):
        return _at_home(lead, left, list(scenarios))
    return KIND.at(
        lead.span,
        f"'{name}.{feeding}' feeds '{lead.end}', but its other side '{name}.{lost}' is not used{where}",
        subject=(name, f"{name}.{lost}", lead.end.thing),
        label="one side ends here",
        also=(Label(jack.span, "this side is lost"),) if jack is not None else (),
        help=f"lead '{name}.{lost}' on (`=>`), sum both sides before '{lead.end.thing}', or check that '{feeding}' alone gives the sum",
    )


def _stays_at_home(rig: Rig, name: str, scenarios: Iterable[str]) -> bool:
    """Whether it is an amp or a desk that none of the scenarios uses."""
    used = [rig.scenarios[each].amps for each in scenarios]
    return name in rig.units and rig.units[name].ends and all(amps is not None and name not in amps for amps in used)


def _at_home(lead: Connection, left: Connection, scenarios: list[str]) -> Diagnostic:
    """The other side goes to an amp that these scenarios do not use."""
    amp, scenario = left.end.thing, f"scenario {listed(scenarios)}"
    return KIND.at(
        lead.span,
        f"'{lead.start}' feeds '{lead.end}', but its other side '{left.start}' feeds '{amp}', which is not among the amps of {scenario}",
        subject=(lead.start.thing, str(left.start), lead.end.thing, amp),
        label="one side ends here",
        also=(Label(left.span, "this side is lost"),),
        help=f"name '{amp}' in `amps` of {scenario}, or check that '{lead.start.jack}' alone gives the sum, and accept this",
    )


CHECK = lost_side
