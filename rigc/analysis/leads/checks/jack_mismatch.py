"""A lead joins two jacks, or a plug and a jack, that do not carry the same.

Why it matters: a two-pole plug in a stereo jack shorts one side, a balanced lead in an insert joins send to return, and an
XLR output has no place in a two-pole input. Of cable with one conductor in its screen a balanced lead has no second leg: it is weaker, hums,
and carries no phantom power, and of a stereo lead one side is lost.
What to do: use the jack that carries the same, or a box made to convert (a DI, an isolator, a lead that says what its ring
does); cable of two conductors and a screen between jacks that both carry more than a mono signal.
Source: common practice, no source; which pin of an XLR is which: AES14, from memory.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.leads.leads import Lead, Leads
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.mend import Mend, Replace
from rigc.diagnostics.wording import joined
from rigc.model.jacks import Jack, Port
from rigc.model.rig import Rig
from rigc.model.stock import Cable
from rigc.model.ways.conductors import THREE, conducting_paths, fits, meaning, named, three_conductors, told
from rigc.model.ways.jack_use import joined_inputs
from rigc.model.wishes import Connection, LeadFacts
from rigc.source import Span

KIND = Kind(
    "jack-mismatch",
    Level.ERROR,
    __doc__,
    "both ends of an audio lead carry the same on each conductor",
    "common practice, no source; pins of an XLR after AES14, from memory",
)

_KINDS = 3  # of plugs that are offered; each is tried
_WAYS = 3  # hot, cold and screen; or left, right and ground
_CARRIES = {"balanced": "a balanced signal", "stereo": "a stereo signal", "insert": "a send and a return"}

_HARMLESS = (("balanced", "mono"), ("mono", "balanced"), ("mono", "stereo"))
"""A ring that one end does not use: nothing is shorted that matters. A side that stays silent is told elsewhere."""


def jack_mismatch(rig: Rig, leads: Leads) -> Iterator[Diagnostic]:
    """One finding for each pair of things joined by such leads, one for each stated lead with a plug that does not fit, and one for the
    leads of each cable that has too few conductors for them."""
    wrong: dict[tuple[str, str], dict[tuple[Port, Port], Connection]] = {}
    joined_there = joined_inputs(rig)
    for each in rig.connections:
        start, end = rig.jack(each.start), rig.jack(each.end)
        if each.end in joined_there and start and meaning(start) != "speaker":
            continue  # one of the leads there is wrong altogether, which is told; what burns is told besides
        if each.signal == "audio" and start and end and start.audio and end.audio and not _agree(start, end):
            pair = wrong.setdefault((each.start.thing, each.end.thing), {})
            pair.setdefault((each.start, each.end), each)
    for joined_so in wrong.values():
        yield _told(rig, list(joined_so.values()))
    unlike = {ends for pair in wrong.values() for ends in pair}
    for wish in rig.lead_wishes.leads:
        if (wish.start, wish.end) not in unlike:  # its jacks are told, and which plugs it wants follows from them
            yield from _plugs(rig, wish)
    for cable, thin in _thin(rig, leads).items():
        yield _too_few(rig, rig.stock.cables[cable], thin)


def _thin(rig: Rig, leads: Leads) -> dict[str, list[Lead]]:
    """The leads between jacks that agree and both carry more than a mono signal, by their cable, where that has no way for all three."""
    found: dict[str, list[Lead]] = {}
    for lead in leads.all:
        start, end = rig.jack(lead.start), rig.jack(lead.end)
        cable = rig.stock.cables.get(lead.cable or "")
        ways = None if cable is None else conducting_paths(cable)
        if lead.signal != "audio" or start is None or end is None or cable is None or ways is None:
            continue
        if ways < _WAYS and three_conductors(start, end) and _agree(start, end):
            found.setdefault(cable.name, []).append(lead)
    return found


def _too_few(rig: Rig, cable: Cable, thin: list[Lead]) -> Diagnostic:
    several = len(thin) > 1
    better = next(
        (
            each.name
            for each in rig.stock.cables.values()
            if each.signal == "audio" and (conducting_paths(each) or 0) >= _WAYS
        ),
        "",
    )
    marks = [lead.mark for lead in thin]
    jack = rig.jack(thin[0].start)
    assert jack is not None
    return KIND.at(
        thin[0].span,
        f"{joined(marks)} {'carry' if several else 'carries'} {_CARRIES[meaning(jack)]} on '{cable.name}', which has one conductor in "
        "its screen",
        subject=(cable.name, *marks),
        label="this lead",
        also=(Label(jack.span, told(jack)),),
        help=f"use '{better}', which has two conductors and a screen"
        if better
        else "declare a cable of two conductors and a screen (`carries audio`, `conductors 2`), and name it there",
    )


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
    panel, other = (start, end) if start.role == "panel" else (end, start)
    if panel.role == "panel" and panel.connector.kind in THREE and panel.carries is None:
        return f"if the panel's jack joins all three contacts, write `{meaning(other)}` behind it"
    if end.connector.kind == "xlr":
        return "put a DI between them"
    if start.connector.kind == "xlr":
        return "put a transformer box between them that leads an XLR to a jack; a microphone needs a preamplifier there"
    if meaning(end) == "speaker" and meaning(start) != "speaker" and end.role == "input":
        return (
            f"use an input that takes no speaker's signal; or take `speaker` off '{end.name}' if it is an ordinary one"
        )
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
    """The kinds of the stock that fit, in place of what is stated: of one end the first few, of both ends the first of each."""
    kinds = {
        said: [each.name for each in rig.stock.plugs.values() if not each.soldered and fits(each, jack, three=three)][
            :_KINDS
        ]
        for said, jack in wrong.items()
    }
    ways = min(map(len, kinds.values()))
    return tuple(
        _instead(lead, {said: names[at] for said, names in kinds.items()})
        for at in range(ways if len(kinds) == 1 else min(ways, 1))
    )


def _instead(lead: LeadFacts, kinds: dict[Span, str]) -> Mend:
    words = " and ".join(f"'{kind}' instead of '{said.text}'" for said, kind in kinds.items())
    return Mend(f"use {words} on {lead.mark}", tuple(Replace(said, kind) for said, kind in kinds.items()))


def _kind(jack: Jack) -> str:
    said = meaning(jack)
    return named(jack.connector) if said in ("mono", "wireless") else f"{named(jack.connector)} {said}"


CHECK = jack_mismatch
