"""A plug meets another plug, the body of another unit, or the deck.

Why it matters: it cannot be pushed home, or it bends the jack each time a foot comes down beside it.
What to do: use a narrower plug, or shift one of the two: staggering two units by a plug's width saves a whole plug's depth.
A plug needs its stand-out and the bend of its cable. Jacks on one face need half of both widths between their middles, or half of both
heights where one is above the other;
facing plugs that overlap sideways and in height need what both need and {clearance.PLUG_GAP_MM}, a plug before a body what it needs and
{clearance.PLUG_GAP_MM}. Half of a plug's height must not be more than its jack is high above the base; what strip or feet lift a base by is
not counted. Of two things that overlap only the overlap is told.
Source: geometry on stated sizes; the {clearance.PLUG_GAP_MM} are common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.body_clash import BodyClash
from rigc.analysis.laying.place_finder import PlaceFinder
from rigc.analysis.leads.lead_edits import as_mend, kinds_in_words, plug_edits
from rigc.analysis.leads.lead_plugs import fitting_plugs, socket
from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.narrower_plug import narrower_plug, reach_mm
from rigc.analysis.leads.plugs.plug_bodies import PlugBodies, PlugBody
from rigc.analysis.leads.plugs.plug_clash import IntoDeck, PlugClash, PlugMeeting, SideBySide
from rigc.analysis.leads.plugs.tier_fronts import is_tier, tier_name
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level, Number
from rigc.diagnostics.figures import short
from rigc.diagnostics.mend import Mend
from rigc.diagnostics.wanted import how_to_state
from rigc.diagnostics.wording import listed
from rigc.facts.clearance import PLUG_GAP_MM
from rigc.model.jacks import Connector, Port
from rigc.model.rig import Rig
from rigc.model.stock import Plug
from rigc.source import Span

KIND = Kind(
    "plugs-collide",
    Level.ERROR,
    __doc__,
    f"pitch of plugs on one face at least (b₁ + b₂)/2, or as much of their heights above one another; facing plugs n₁ + n₂ + {PLUG_GAP_MM}; a plug before a body n + {PLUG_GAP_MM}, with n its "
    "stand-out and bend; half of its height ≤ the height of its jack, where the deck is below it",
    f"geometry on stated sizes; the {PLUG_GAP_MM} are common practice, no source",
)
_HAIR_MM = 1e-6
_KIND_AT = "the plug kind at"
_PAIRS_NAMED = 3  # more pairs than these are told as a list of jacks


def plugs_collide(
    rig: Rig, leads: Leads, clash: PlugClash, plugs: PlugBodies, bodies: BodyClash, finder: PlaceFinder
) -> Iterator[Diagnostic]:
    """One finding for each unit whose own plugs collide, one for each two things of which a plug meets the other (unless the
    two overlap themselves), one for each unit with plugs that reach into the deck."""
    pairs: dict[str, list[SideBySide]] = {}
    for pair in clash.side_by_side:
        pairs.setdefault(pair.one.thing, []).append(pair)
    yield from (_beside(rig, leads, each) for each in pairs.values())
    meetings: dict[tuple[str, str], list[PlugMeeting]] = {}
    for meeting in clash.meetings:
        if not bodies.between(*meeting.things):
            meetings.setdefault(meeting.things, []).append(meeting)
    yield from (_parted(rig, leads, each, finder) for each in meetings.values())
    sunk: dict[str, list[IntoDeck]] = {}
    for into in clash.into_deck:
        sunk.setdefault(into.plug.thing, []).append(into)
    yield from (_into_deck(rig, leads, each) for each in sunk.values())
    yield from _unjudged(rig, clash, plugs)


def _beside(rig: Rig, leads: Leads, pairs: list[SideBySide]) -> Diagnostic:
    thing = pairs[0].one.thing
    groups: dict[tuple[float, float], list[SideBySide]] = {}
    for pair in pairs:
        groups.setdefault((pair.pitch_mm, pair.needed_mm), []).append(pair)
    worst = max(pairs, key=lambda pair: pair.needed_mm - pair.pitch_mm)
    mends, help = _narrower(rig, leads, pairs)
    return KIND.at(
        worst.one.span,
        f"plugs of '{thing}' collide: " + "; ".join(_group(each) for each in groups.values()),
        subject=(thing, *(str(plug.port) for plug in _in_order(pairs))),
        label=f"'{worst.one.plug}' and '{worst.other.plug}'",
        numbers=(
            Number("pitch", worst.pitch_mm, "mm"),
            Number("needed", worst.needed_mm, "mm"),
            Number("short", worst.needed_mm - worst.pitch_mm, "mm"),
        ),
        note=f"({worst.one.width_mm:g} + {worst.other.width_mm:g})/2 = {worst.needed_mm:g} mm needed{_or_above(worst)}",
        mends=mends,
        help=help,
    )


def _or_above(pair: SideBySide) -> str:
    """What would do as well where one jack is above the other."""
    apart, one, other = _apart_in_height(pair), pair.one.height_mm, pair.other.height_mm
    if apart is None or one is None or other is None:
        return ""
    return f", or ({one:g} + {other:g})/2 = {(one + other) / 2:g} mm in height, of which there are {apart:g} mm"


def _group(pairs: list[SideBySide]) -> str:
    pitch, needed = pairs[0].pitch_mm, pairs[0].needed_mm
    if len(pairs) > _PAIRS_NAMED:
        jacks = [plug.port.jack for plug in _in_order(pairs)]
        named = f"the {len(jacks)} jacks {listed(jacks)}"
    else:
        named = ", ".join(f"'{pair.one.port.jack}' and '{pair.other.port.jack}'" for pair in pairs)
    return f"{named} are {pitch:g} mm apart and need {needed:g} mm, short by {needed - pitch:g} mm"


def _in_order(pairs: list[SideBySide]) -> list[PlugBody]:
    """The plugs of the pairs along their faces."""
    plugs = {plug.port: plug for pair in pairs for plug in (pair.one, pair.other)}
    return sorted(plugs.values(), key=lambda plug: (plug.point.dx, plug.point.dy, plug.point.x_mm, plug.point.y_mm))


def _narrower(rig: Rig, leads: Leads, pairs: list[SideBySide]) -> tuple[tuple[Mend, ...], str]:
    """A kind of the stock that is narrow enough for all of them, as an edit; else in words."""
    widest = max((plug for plug in _in_order(pairs)), key=lambda plug: plug.width_mm).plug
    ports = [plug.port for plug in _in_order(pairs) if plug.plug == widest]

    def free(plug: Plug, pair: SideBySide) -> float:
        return pair.pitch_mm - _needed(pair, ports, plug)

    better = narrower_plug(
        rig, ports, lambda plug: all(free(plug, pair) >= 0 or _over_one_another(pair, ports, plug) for pair in pairs)
    )
    if better is None:
        size = "narrow" if all(_apart_in_height(pair) is None for pair in pairs) else "narrow or low"
        return (
            (),
            f"no plug kind in stock is {size} enough for {_jacks(ports)}: state one that is, or leave a jack empty",
        )
    words = f"use '{better.name}' at {_jacks(ports)}: "
    tightest = min(pairs, key=lambda pair: free(better, pair))
    if free(better, tightest) >= 0:
        one, other = _widths(tightest, ports, better)
        words += f"it needs ({one:g} + {other:g})/2 = {(one + other) / 2:g} mm, {free(better, tightest):g} mm stay free"
    else:
        words += "it is so low that one goes over the other"
    return as_mend(words, plug_edits(rig, leads, dict.fromkeys(ports, better.name)))


def _over_one_another(pair: SideBySide, ports: list[Port], plug: Plug) -> bool:
    """Whether their heights no longer overlap once this kind is in those of the jacks that are named."""
    apart = _apart_in_height(pair)
    tall = [
        (None if plug.height_mm is None else plug.height_mm.value) if end.port in ports else end.height_mm
        for end in (pair.one, pair.other)
    ]
    return apart is not None and None not in tall and apart - sum(filter(None, tall)) / 2 >= -_HAIR_MM


def _apart_in_height(pair: SideBySide) -> float | None:
    """How far the two jacks lie one above the other, in mm; None where they do not, or their heights are not known."""
    one, other = pair.one.point.height_mm, pair.other.point.height_mm
    return None if one is None or other is None or one == other else abs(one - other)


def _needed(pair: SideBySide, ports: list[Port], plug: Plug) -> float:
    return sum(_widths(pair, ports, plug)) / 2


def _widths(pair: SideBySide, ports: list[Port], plug: Plug) -> tuple[float, float]:
    assert plug.width_mm is not None
    new = plug.width_mm.value
    one, other = (new if end.port in ports else end.width_mm for end in (pair.one, pair.other))
    return one, other


def _jacks(ports: list[Port]) -> str:
    return f"these {len(ports)} jacks" if len(ports) > _PAIRS_NAMED else listed(port.jack for port in ports)


def _meeting(rig: Rig, leads: Leads, meetings: list[PlugMeeting]) -> Diagnostic:
    worst = _worst(meetings)
    mends, help = _apart(rig, leads, worst)
    ports = dict.fromkeys(str(plug.port) for each in meetings for plug in (each.plug, each.other) if plug is not None)
    return KIND.at(
        worst.plug.span,
        "; ".join(map(_met, meetings)),
        subject=(*worst.things, *ports),
        label=f"'{worst.plug.plug}' at '{worst.plug.port}'",
        numbers=(Number("room", worst.room_mm, "mm"), Number("needed", worst.needed_mm, "mm")),
        mends=mends,
        help=help,
    )


def _parted(rig: Rig, leads: Leads, meetings: list[PlugMeeting], finder: PlaceFinder) -> Diagnostic:
    """The finding with a place for one of the things; plugs of one thing need other plugs."""
    found, worst = _meeting(rig, leads, meetings), _worst(meetings)
    if worst.plug.thing == worst.thing:
        return found
    things = (worst.plug.thing,) if is_tier(worst.thing) else (worst.thing, worst.plug.thing)
    return finder.moving(found, *things)


def _worst(meetings: list[PlugMeeting]) -> PlugMeeting:
    return max(meetings, key=lambda meeting: meeting.needed_mm - meeting.room_mm)


def _met(meeting: PlugMeeting) -> str:
    plug, other = meeting.plug, meeting.other
    if other is None:
        return (
            f"the plug at '{plug.port}' needs {short(meeting.needed_mm)} mm of room in front of {_named(meeting.thing)} "
            f"but has {short(meeting.room_mm)} mm"
        )
    if (plug.point.dx, plug.point.dy) == (-other.point.dx, -other.point.dy):
        return (
            f"the plugs at '{plug.port}' and '{other.port}' face each other over {short(meeting.room_mm)} mm "
            f"but need {short(meeting.needed_mm)} mm"
        )
    return f"the plugs at '{plug.port}' and '{other.port}' reach {short(meeting.needed_mm)} mm into each other"


def _apart(rig: Rig, leads: Leads, meeting: PlugMeeting) -> tuple[tuple[Mend, ...], str]:
    """A plug kind that fits."""
    better, port = _shorter(rig, meeting), meeting.plug.port
    if better is not None:
        return as_mend(f"use '{better.name}' at '{port}'", plug_edits(rig, leads, {port: better.name}))
    own = meeting.plug.thing == meeting.thing
    return (), f"use a shorter or narrower plug at '{meeting.plug.port}'" if own else ""


def _named(thing: str) -> str:
    return f"the tier '{tier_name(thing)}'" if is_tier(thing) else f"'{thing}'"


def _into_deck(rig: Rig, leads: Leads, found: list[IntoDeck]) -> Diagnostic:
    worst = max(found, key=lambda each: each.into_mm)
    plug = worst.plug
    mends, help = _flatter(rig, leads, [each.plug for each in found])
    return KIND.at(
        plug.span,
        "; ".join(map(_sunk, found)),
        subject=(plug.thing, *(str(each.plug.port) for each in found)),
        label=f"'{plug.plug}' at '{plug.port}'",
        numbers=(Number("into the deck", worst.into_mm, "mm"),),
        mends=mends,
        help=help,
    )


def _sunk(found: IntoDeck) -> str:
    plug = found.plug
    return (
        f"the plug at '{plug.port}' would reach {short(found.into_mm)} mm into the deck: '{plug.plug}' is "
        f"{plug.height_mm or 0:g} mm tall, half of it {(plug.height_mm or 0) / 2:g} mm, and the jack is "
        f"{plug.point.height_mm or 0:g} mm up"
    )


def _flatter(rig: Rig, leads: Leads, plugs: list[PlugBody]) -> tuple[tuple[Mend, ...], str]:
    """Kinds of the stock that are flat enough for all of them, as an edit; else in words."""
    kinds: dict[Port, str] = {}
    for plug in plugs:
        up = plug.point.height_mm or 0.0
        better = narrower_plug(rig, (plug.port,), lambda each, up=up: _clears(each, up))  # type: ignore[misc]
        if better is None:
            return (), f"state a plug of {2 * up:g} mm height or less, or raise '{plug.thing}' on a plate"
        kinds[plug.port] = better.name
    return as_mend(kinds_in_words(kinds), plug_edits(rig, leads, kinds))


def _clears(plug: Plug, up_mm: float) -> bool:
    return plug.height_mm is not None and plug.height_mm.value / 2 - up_mm <= _HAIR_MM


def _shorter(rig: Rig, meeting: PlugMeeting) -> Plug | None:
    """The narrowest kind that needs so little room that all fits as it is; only before a body or a plug that faces it."""
    if meeting.other is not None and not meeting.room_mm:
        return None
    most = meeting.plug.needs_mm - (meeting.needed_mm - meeting.room_mm)
    return narrower_plug(rig, (meeting.plug.port,), lambda plug: reach_mm(plug) - most <= _HAIR_MM)


def _unjudged(rig: Rig, clash: PlugClash, plugs: PlugBodies) -> Iterator[Diagnostic]:
    """One for each unit: sizes or places of plugs, and heights where seen from above something is in the way. A connector of several things
    that no kind of the stock fits is told once, for all of them."""
    lacking = _fit_by_none(rig, plugs)
    yield from (_no_kind(rig, connector, ports) for connector, ports in lacking.items())
    asked = {f"{_KIND_AT} '{port}'" for ports in lacking.values() for port in ports}
    missing: dict[str, dict[str, Span]] = {}
    for each in (*plugs.unknown, *clash.unjudged):
        missing.setdefault(each.port.thing, {}).setdefault(each.missing, each.span)
    for thing, spans in missing.items():
        facts = sorted(spans)
        yield KIND.cant_check(
            rig.things[thing].declared if thing in rig.things else spans[facts[0]],
            f"whether the plugs of '{thing}' have room is not known, for want of {', '.join(facts)}",
            subject=(thing,),
            help=how_to_state(facts[0]),
            wants=tuple(facts),
            asks_for=tuple(
                fact for fact in facts if fact.startswith(_KIND_AT) and fact not in asked
            ),  # all else the length of its lead asks for
        )


def _fit_by_none(rig: Rig, plugs: PlugBodies) -> dict[Connector, list[Port]]:
    """The connectors that no plug of the stock fits, of two things or more, each with its jacks; no kind of plug at all is told by itself."""
    found: dict[Connector, list[Port]] = {}
    for each in plugs.unknown if rig.stock.plugs else ():
        jack = socket(rig, each.port)
        connector = None if jack is None else jack.connector
        if each.missing.startswith(_KIND_AT) and connector is not None and not connector.is_appliance:
            found.setdefault(connector, []).append(each.port)
    return {
        connector: ports
        for connector, ports in found.items()
        if len({port.thing for port in ports}) > 1 and not fitting_plugs(rig, connector)
    }


def _no_kind(rig: Rig, connector: Connector, ports: list[Port]) -> Diagnostic:
    return KIND.cant_check(
        rig.things[ports[0].thing].declared,
        f"no kind of plug in the stock fits {connector}, which {listed(ports)} are: whether such plugs have room is not known",
        subject=tuple(dict.fromkeys(port.thing for port in ports)),
        help=f"measure one and declare it: `plug NAME {{` with the lines `fits {_as_typed(connector)}`, `stands out ___ mm`, `leaves at ___ mm`, "
        "`wide ___ mm` and `tall ___ mm`",
        asks_for=tuple(
            f"{what} '{port}'" for port in ports for what in (_KIND_AT, "a plug kind in the stock that fits")
        ),
    )


def _as_typed(connector: Connector) -> str:
    if connector.outer_mm is None or connector.inner_mm is None:
        return connector.kind
    return f"{connector.kind} {connector.outer_mm:g} x {connector.inner_mm:g} mm"


CHECK = plugs_collide
