"""A unit that is used lacks its body, what it needs of a supply, or a jack that it is wired to; or a rig has no chain, deck or plugs.

Why it matters: whatever follows from the missing fact stays blank in the documents.
What to do: measure it and write it down; where it must be guessed, mark it `assumed`. Of a rig without a chain, a deck or kinds
of plugs it is told only what can't be checked.
Source: common practice, no source.
"""

from __future__ import annotations

from bisect import bisect
from collections.abc import Iterable, Iterator

from rigc.analysis.deck.used_units import used_units
from rigc.analysis.feeds.unit_needs import current_of, inlet_of, needs_of
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level
from rigc.diagnostics.wording import joined, listed
from rigc.model.rig import Rig
from rigc.model.slips.use_line import use_line
from rigc.model.things import Unit

KIND = Kind(
    "missing-fact",
    Level.ERROR,
    __doc__,
    "a unit in use has a body, supply facts and the jacks it is wired to; a rig has a chain, a deck and kinds of plugs",
    "common practice, no source",
)

_LINES = {
    "an audio input": "`input in ts ___ Mohm right ___ mm up ___ mm`",
    "an audio output": "`output out ts ___ kohm left ___ mm up ___ mm`",
    "its inlet": "`inlet dc barrel ___ x ___ mm rear ___ mm up ___ mm`",
    "the voltage it needs": "`needs ___ V dc`",
    "the current it draws": "`draws ___ mA`",
    "its body": "`body ___ x ___ x ___ mm`",
}
"""The line that states each fact, with blanks for what only a measurement can give."""
_ASKED = {"its inlet": inlet_of, "the voltage it needs": needs_of, "the current it draws": current_of}
_MOST_NAMED = 6
_CABLES, _STRIPS, _POWER, _WIRING = "cable list", "mounting strips", "power table", "wiring sheet"


def missing_fact(rig: Rig) -> Iterator[Diagnostic]:
    """One finding for each unit that lacks facts, naming them and the sheets that stay blank there; what is like it and lacks the same is
    told with it."""
    gaps: dict[str, dict[str, None]] = {}
    for gap in rig.gaps:
        gaps.setdefault(gap.thing, {})[gap.direction] = None
    fed = {name for feed in rig.power.feeds for name in feed.units}
    found: dict[str, tuple[Unit, dict[str, tuple[str, ...]], bool]] = {}
    for unit in used_units(rig):
        lacking = _jacks(gaps.get(unit.name, {}))
        if unit.kind == "unit":
            needs = _needs_inlet(unit, unit.name in gaps)
            lacking |= _supply(unit, unit.name in fed, needs) | _body(unit)
        else:
            needs = False
            lacking |= _supply(unit, True, needs) if unit.name in fed else {}
        if lacking:
            found[unit.name] = (unit, lacking, needs)
    alike: dict[str, list[str]] = {}
    for name, first in _first(rig, found).items():
        whole = found.get(first)
        alike.setdefault(first if whole is not None and whole[1:] == found[name][1:] else name, []).append(name)
    for name, others in alike.items():
        yield _told(*found[name], tuple(each for each in others if each != name))
    yield from _whole(rig)


def _first(rig: Rig, lacking: Iterable[str]) -> dict[str, str]:
    """By unit the one in whose block its first jack is stated: another, where it is like that."""
    blocks = sorted((each.declared.source.name, each.declared.start, each.name) for each in rig.units.values())
    found = {}
    for name in lacking:
        jacks = rig.units[name].jacks
        at = bisect(blocks, (jacks[0].span.source.name, jacks[0].span.start, "")) if jacks else 0
        found[name] = blocks[at - 1][2] if at else name
    return found


def _whole(rig: Rig) -> Iterator[Diagnostic]:
    """What the rig as a whole does not state."""
    name, span = rig.head.name, rig.head.span
    if not rig.chains:
        message = f"'{name}' states no chain; the {_WIRING} and the audio leads stay blank"
        yield KIND.cant_check(span, message, subject=(name, "chain"), help="write it: chain guitar -> ... -> amp")
    if not rig.decks:
        message = f"'{name}' states no deck; the {_STRIPS} and the lengths in the {_CABLES} stay blank"
        yield KIND.cant_check(span, message, subject=(name, "deck"), help="write its block: deck NAME { ... }")
    if not rig.stock.plugs and rig.places and any(each.signal == "audio" for each in rig.connections):
        message = f"'{name}' has no kinds of plugs: no lead has a length, and no plug its room"
        asks = ("the plug kind at...", "a plug kind in the stock...")
        mends = (use_line("stock/plugs.rig"),)
        help = "declare the plugs that you use"
        yield KIND.cant_check(span, message, subject=(name, "plugs"), help=help, mends=mends, asks_for=asks)


def _jacks(directions: Iterable[str]) -> dict[str, tuple[str, ...]]:
    """The audio jacks that a chain goes through, of which the unit declares none."""
    return {f"an audio {direction}put": (_WIRING, _CABLES) for direction in directions}


def _supply(unit: Unit, fed: bool, needs: bool) -> dict[str, tuple[str, ...]]:
    lacking: dict[str, tuple[str, ...]] = {}
    if unit.own_mains or unit.on_battery:
        return lacking  # a battery beside an outlet is told by a rule of its own
    if unit.inlet is None and (fed or needs):
        lacking["its inlet"] = (_POWER, _CABLES)
    if unit.powered or fed or needs:
        if unit.volts is None:
            lacking["the voltage it needs"] = (_POWER,)
        if unit.draws_ma is None:
            lacking["the current it draws"] = (_POWER,)
    return lacking


def _needs_inlet(unit: Unit, in_chain: bool) -> bool:
    """Whether it has to take power: sound goes through it, it is not said to be passive, and has no inlet and no battery."""
    sounds = in_chain or any(jack.audio for jack in unit.jacks)
    plain = unit.inlet is None and unit.battery is None and not unit.own_mains
    return sounds and plain and "passive" not in unit.flags


def _body(unit: Unit) -> dict[str, tuple[str, ...]]:
    whole = unit.width_mm is not None and unit.depth_mm is not None
    return {} if whole else {"its body": (_CABLES, _STRIPS)}


def _told(unit: Unit, lacking: dict[str, tuple[str, ...]], needs: bool, alike: tuple[str, ...]) -> Diagnostic:
    blank = sorted({sheet for sheets in lacking.values() for sheet in sheets})
    facts = list(lacking)
    names = (unit.name, *alike)
    all_named = len(names) <= _MOST_NAMED
    every = listed(names) if all_named else f"'{unit.name}' and {len(alike)} units that are like it"
    pole = ("`polarity ___`",) if "its inlet" in facts and unit.polarity is None else ()
    who = f"{every} are" if alike else f"'{unit.name}' is"
    return KIND.at(
        unit.declared,
        f"{who} used but {'lack' if alike else 'lacks'} {joined(facts)}; {'their' if alike else 'its'} place in the {joined(blank)} stays blank",
        subject=(*names, *facts),
        label="declared here",
        help=f"measure it and write in the block of '{unit.name}': {', '.join((*(_LINES[fact] for fact in facts), *pole))}"
        + ("; if it takes no power, say `passive`" if needs and "its inlet" in facts else ""),
        note=f"{listed(alike)} {'is' if len(alike) == 1 else 'are'} like it" if alike and all_named else "",
        asks_for=tuple(of(name) for fact, of in _ASKED.items() if fact in lacking for name in names),
    )


CHECK = missing_fact
