"""A lead joins two jacks, or a plug and a jack, that do not carry the same.

Why it matters: a two-pole plug in a stereo jack shorts one side, a balanced lead in an insert joins send to return, and an
XLR output has no place in a two-pole input.
What to do: use the jack that carries the same, or a box made to convert (a DI, an isolator, a lead that says what its ring
does).
Source: common practice, no source; which pin of an XLR is which: AES14, from memory.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.mend import Mend, Replace
from rigc.model.jacks import Jack, Port
from rigc.model.rig import Rig
from rigc.model.ways.conductors import fits, meaning, named, three_conductors, told
from rigc.model.wishes import Connection, LeadFacts
from rigc.source import Span

KIND = Kind(
    "jack-mismatch",
    Level.ERROR,
    __doc__,
    "both ends of an audio lead carry the same on each conductor",
    "common practice, no source; pins of an XLR after AES14, from memory",
)

_HARMLESS = (("balanced", "mono"), ("mono", "balanced"), ("mono", "stereo"))
"""A ring that one end does not use: nothing is shorted that matters. A side that stays silent is told elsewhere."""


def jack_mismatch(rig: Rig) -> Iterator[Diagnostic]:
    """One finding for each pair of things joined by such leads, and one for each stated lead with a plug that does not fit."""
    wrong: dict[tuple[str, str], dict[tuple[Port, Port], Connection]] = {}
    for each in rig.connections:
        start, end = rig.jack(each.start), rig.jack(each.end)
        if each.signal == "audio" and start and end and start.audio and end.audio and not _agree(start, end):
            pair = wrong.setdefault((each.start.thing, each.end.thing), {})
            pair.setdefault((each.start, each.end), each)
    for leads in wrong.values():
        yield _told(rig, list(leads.values()))
    for lead in rig.lead_wishes.leads:
        yield from _plugs(rig, lead)


def _agree(start: Jack, end: Jack) -> bool:
    here, there = meaning(start), meaning(end)
    if "wireless" in (here, there):
        return True
    if "xlr" in (start.connector.kind, end.connector.kind) or "din" in (start.connector.kind, end.connector.kind):
        return here == there and (
            "din" not in (start.connector.kind, end.connector.kind) or start.connector == end.connector
        )
    return here == there or (here, there) in _HARMLESS


def _told(rig: Rig, leads: list[Connection]) -> Diagnostic:
    jacks = [(each, rig.jack(each.start), rig.jack(each.end)) for each in leads]
    parts = [
        f"'{each.start}' ({_kind(start)}) into '{each.end}' ({_kind(end)})"
        for each, start, end in jacks
        if start and end
    ]
    first, start, end = jacks[0]
    assert start is not None and end is not None
    return KIND.at(
        first.span,
        f"{', '.join(parts)} {'does' if len(leads) == 1 else 'do'} not fit: the ends carry different things",
        subject=(first.end.thing, first.start.thing, *(str(each.end) for each in leads)),
        label="this lead",
        also=(Label(start.span, told(start)), Label(end.span, told(end))),
        help=_help(start, end),
    )


def _help(start: Jack, end: Jack) -> str:
    if end.connector.kind == "xlr":
        return "put a DI between them"
    if start.connector.kind == "xlr":
        return "put a transformer box between them that leads an XLR to a jack; a microphone needs a preamplifier there"
    if "speaker" in (meaning(start), meaning(end)):
        return "a speaker output goes to a speaker only; take the unit's line or send output"
    if "stereo" in (meaning(start), meaning(end)):
        return "use a mono jack, or a stereo lead with a jack for each side"
    return "use a jack that carries the same, or a box that converts"


def _plugs(rig: Rig, lead: LeadFacts) -> Iterator[Diagnostic]:
    wrong = []
    start, end = rig.jack(lead.start), rig.jack(lead.end)
    three = start is not None and end is not None and three_conductors(start, end)
    ends = zip((lead.start, lead.end), (start, end), lead.plugs or (), lead.plug_spans, strict=False)
    for port, jack, name, said in ends:
        plug = rig.stock.plugs.get(name)
        if jack is not None and plug is not None and jack.audio and not fits(plug, jack, three=three):
            wrong.append((port, jack, plug, said))
    if not wrong:
        return
    parts = [f"plug '{plug.name}' does not fit '{port}' ({_kind(jack)})" for port, jack, plug, _ in wrong]
    yield KIND.at(
        lead.span,
        f"lead {lead.mark}: {', '.join(parts)}",
        subject=(lead.mark, *(str(port) for port, _, _, _ in wrong)),
        label="plugs stated here",
        also=tuple(Label(jack.span, told(jack)) for _, jack, _, _ in wrong),
        mends=_fitting(rig, lead, {said: jack for _, jack, _, said in wrong}, three),
        otherwise=f"declare a kind of plug that fits {_kind(wrong[0][1])}",
    )


def _fitting(rig: Rig, lead: LeadFacts, wrong: dict[Span, Jack], three: bool) -> tuple[Mend, ...]:
    """The first kind of the stock that fits each of the jacks, in place of what is stated; none if one has no such kind."""
    kinds = {
        said: next((plug.name for plug in rig.stock.plugs.values() if fits(plug, jack, three=three)), None)
        for said, jack in wrong.items()
    }
    if None in kinds.values():
        return ()
    words = " and ".join(f"'{kind}' instead of '{said.text}'" for said, kind in kinds.items())
    return (Mend(f"use {words} on {lead.mark}", tuple(Replace(said, str(kind)) for said, kind in kinds.items())),)


def _kind(jack: Jack) -> str:
    said = meaning(jack)
    return named(jack.connector) if said in ("mono", "wireless") else f"{named(jack.connector)} {said}"


CHECK = jack_mismatch
