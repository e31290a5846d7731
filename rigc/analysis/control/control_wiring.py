"""Control connections -> the two jacks of each, in what their wiring differs, and what would mend it."""

from __future__ import annotations

from rigc.diagnostics.mend import Mend, Replace
from rigc.model.jacks import Jack, Port
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.source import Span


class ControlLink(Record):
    """An expression or switch connection with the jacks at both ends; `differences` is empty where they suit each other.

    `mends` are the edits that mend all of them, `remedy` what else does.
    """

    start: Port
    end: Port
    here: Jack
    there: Jack
    differences: tuple[str, ...]
    mends: tuple[Mend, ...]
    remedy: str
    span: Span


def control_links(rig: Rig) -> tuple[ControlLink, ...]:
    """Every control connection in the order of the source."""
    links = []
    for each in rig.connections:
        here, there = rig.jack(each.start), rig.jack(each.end)
        if each.signal == "control" and here is not None and there is not None:
            differences, mends, remedy = _differences(here, there, each.crossover, each.span)
            links.append(ControlLink(each.start, each.end, here, there, differences, mends, remedy, each.span))
    return tuple(links)


def unsaid_taper(link: ControlLink) -> Port | None:
    """The end of an expression connection that does not say its taper where the other does."""
    ends = ((link.start, link.here), (link.end, link.there))
    silent = [port for port, jack in ends if is_expression(jack) and jack.taper is None]
    return silent[0] if len(silent) == 1 and all(is_expression(jack) for _, jack in ends) else None


def is_expression(jack: Jack) -> bool:
    """Whether it takes or gives an expression treadle's divider, as against a switch line."""
    return jack.role.startswith("expression")


def wiring(jack: Jack) -> tuple[str, str, str]:
    """What tip, ring and sleeve of an expression jack carry; of a switch line, as far as that is common to all."""
    if jack.wiper == "tip-wiper":
        return "wiper", "supply", "ground"
    if jack.wiper == "ring-wiper":
        return "supply", "wiper", "ground"
    return "switch", "second switch, if any" if jack.connector.kind != "ts" else "", "common"


def crossed(span: Span) -> Mend:
    """The statement of a MIDI or control lead, made a crossover lead."""
    text = span.text
    turned = text.replace(" shield", " crossover shield", 1) if " shield" in text else f"{text} crossover"
    return Mend(
        "use a crossover lead (tip to ring, ring to tip), marked at both ends: write `crossover` behind the link",
        (Replace(span, turned),),
    )


def uncrossed(span: Span) -> Mend:
    """The same, made straight."""
    return Mend("use a straight lead, and delete `crossover`", (Replace(span, span.text.replace(" crossover", "", 1)),))


def _differences(here: Jack, there: Jack, turned: bool, span: Span) -> tuple[tuple[str, ...], tuple[Mend, ...], str]:
    if is_expression(here) != is_expression(there):
        kinds = ["an expression jack" if is_expression(jack) else "a switch line" for jack in (here, there)]
        return (f"{kinds[0]} meets {kinds[1]}",), (), "use a jack of the same kind at both ends"
    if not is_expression(here):
        return (), (), ""
    found: list[str] = []
    mends: list[Mend] = []
    remedies: list[str] = []
    if here.wiper != there.wiper and not turned:
        found.append(f"{here.wiper} meets {there.wiper}")
        mends.append(crossed(span))
    elif here.wiper == there.wiper and turned:
        found.append(f"both are {here.wiper}, and a crossover lead joins tip to ring")
        mends.append(uncrossed(span))
    if here.track_ohm is not None and there.track_ohm is not None and here.track_ohm.value != there.track_ohm.value:
        found.append(f"a track of {here.track_ohm.typed} meets a jack for {there.track_ohm.typed}")
        remedies.append(f"take a treadle of {there.track_ohm.typed}, then calibrate")
    if here.taper is not None and there.taper is not None and here.taper != there.taper:
        found.append(f"a {here.taper} track meets a jack for a {there.taper} one")
        remedies.append(f"take a treadle of a {there.taper} track, or set the curve of the unit to {here.taper}")
    if remedies:  # an edit alone would not do
        return tuple(found), (), "; ".join((*(mend.words for mend in mends), *remedies))
    return tuple(found), tuple(mends), ""
