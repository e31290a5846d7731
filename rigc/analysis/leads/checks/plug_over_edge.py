"""A plug, with the bend of its cable, reaches over the edge of the deck.

Why it matters: it is the first thing that a case wall, a door post or a boot meets, and it takes the jack with it.
What to do: use a right-angle plug there, or move the unit inwards. The outgoing plug at the left end is often forgotten.
Source: geometry on stated sizes; common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.body_clash import BodyClash
from rigc.analysis.laying.place_finder import PlaceFinder
from rigc.analysis.leads.lead_edits import as_mend, kinds_in_words, plug_edits
from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.narrower_plug import narrower_plug, reach_mm
from rigc.analysis.leads.plugs.plug_bodies import PlugBodies, PlugBody, UnknownPlug
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.figures import short
from rigc.diagnostics.mend import Mend
from rigc.diagnostics.wanted import how_to_state
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.stock import Plug

KIND = Kind(
    "plug-over-edge",
    Level.WARNING,
    __doc__,
    "stand-out + bend of a plug ≤ what is left of the deck before it",
    "geometry on stated sizes; common practice, no source",
)
_HAIR_MM = 1e-6


def plug_over_edge(
    rig: Rig, leads: Leads, plugs: PlugBodies, clash: BodyClash, finder: PlaceFinder
) -> Iterator[Diagnostic]:
    """One finding for each unit with plugs beyond an edge, unless it overhangs itself; can't-checks for decks of unknown size and units of
    unknown plugs."""
    over: dict[str, list[tuple[PlugBody, float]]] = {}
    unsized: dict[str, PlugBody] = {}
    for plug in plugs.all:
        room = _room(rig, plug)
        if room is None:
            unsized.setdefault(plug.point.deck or "", plug)
        elif plug.needs_mm - room > _HAIR_MM and plug.thing not in clash.beyond:
            over.setdefault(plug.thing, []).append((plug, room))
    for found in over.values():
        yield finder.moving(_told(rig, leads, found), found[0][0].thing)
    yield from (_unsized(rig, deck, plug) for deck, plug in unsized.items())
    for thing in dict.fromkeys(each.port.thing for each in plugs.unknown):
        yield _unknown([each for each in plugs.unknown if each.port.thing == thing])


def _room(rig: Rig, plug: PlugBody) -> float | None:
    """The deck that is left before a plug, in mm along its cable; None where the deck's size is not known."""
    deck, point = rig.decks.get(plug.point.deck or ""), plug.point
    if deck is None or deck.width_mm is None or deck.depth_mm is None:
        return None
    sizes = (
        (deck.width_mm.value, point.x_mm, point.dx, point.dy),
        (deck.depth_mm.value, point.y_mm, point.dy, point.dx),
    )
    return min(_before_edge(size, at, way, aside * plug.width_mm / 2) for size, at, way, aside in sizes if way)


def _before_edge(size: float, at: float, way: float, aside: float) -> float:
    """How far a plug may stand out towards one edge; of one askew, the corner that is nearer to the edge counts."""
    left = size - at if way > 0 else at
    return (left - (abs(aside) if abs(way) < 1 else 0.0)) / abs(way)


def _edge(plug: PlugBody) -> str:
    """The edge that a plug looks at most."""
    point = plug.point
    if abs(point.dx) > abs(point.dy):
        return "right" if point.dx > 0 else "left"
    return "rear" if point.dy > 0 else "front"


def _told(rig: Rig, leads: Leads, found: list[tuple[PlugBody, float]]) -> Diagnostic:
    worst, room = max(found, key=lambda each: each[0].needs_mm - each[1])
    needed = worst.needs_mm
    mends, help = _shorter(rig, leads, found)
    return KIND.at(
        worst.span,
        "; ".join(_over(plug, left) for plug, left in found),
        subject=(worst.thing, *(str(plug.port) for plug, _ in found)),
        label=f"'{worst.plug}' at '{worst.port}'",
        also=tuple(Label(plug.span, f"'{plug.plug}' at '{plug.port}'") for plug, _ in found if plug is not worst),
        numbers=(
            Number("stand-out and bend", needed, "mm"),
            Number("room", room, "mm"),
            Number("over the edge", needed - room, "mm"),
        ),
        mends=mends,
        help=help,
    )


def _over(plug: PlugBody, room: float) -> str:
    needed = plug.needs_mm
    return (
        f"the plug at '{plug.port}' reaches {short(needed - room)} mm over the {_edge(plug)} edge: "
        f"'{plug.plug}' needs {plug.stand_out_mm:g} + {plug.bend_mm:g} = {needed:g} mm and has {short(room)} mm"
    )


def _shorter(rig: Rig, leads: Leads, found: list[tuple[PlugBody, float]]) -> tuple[tuple[Mend, ...], str]:
    """Kinds of the stock that stay on the deck, as an edit; nothing if there are none for all of these plugs."""
    kinds: dict[Port, Plug] = {}
    for plug, room in found:
        better = narrower_plug(rig, (plug.port,), lambda each, room=room: reach_mm(each) - room <= _HAIR_MM)  # type: ignore[misc]
        if better is None:
            return (), ""
        kinds[plug.port] = better
    names = {port: kind.name for port, kind in kinds.items()}
    needs = f": it needs {reach_mm(next(iter(kinds.values()))):g} mm" if len(kinds) == 1 else ""
    return as_mend(f"{kinds_in_words(names)}{needs}", plug_edits(rig, leads, names))


def _unsized(rig: Rig, deck: str, plug: PlugBody) -> Diagnostic:
    known, size = rig.decks.get(deck), f"the size of deck '{deck}'"
    return KIND.cant_check(
        plug.span if known is None else known.declared,
        "whether plugs reach over the deck's edge is not known: the deck has no size",
        subject=(deck or plug.thing,),
        help="write its block: `deck NAME { ... }`" if known is None else how_to_state(size),
        wants=() if known is None else (size,),
    )


def _unknown(plugs: list[UnknownPlug]) -> Diagnostic:
    facts = list(dict.fromkeys(each.missing for each in plugs))
    thing = plugs[0].port.thing
    return KIND.cant_check(
        plugs[0].span,
        f"whether plugs of '{thing}' reach over the deck's edge is not known, for want of {', '.join(facts)}",
        subject=(thing,),
        help=how_to_state(facts[0]),
        wants=tuple(facts),
    )


CHECK = plug_over_edge
