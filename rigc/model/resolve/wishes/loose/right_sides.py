"""Leads of the right sides of stereo pairs that a chain joins by `->`, as mono: its arrows are to be `=>`."""

from __future__ import annotations

from collections.abc import Mapping

from rigc.diagnostics.diagnostic import Diagnostic, Label
from rigc.diagnostics.mend import Mend, Replace
from rigc.diagnostics.wording import joined
from rigc.model.jacks import Port
from rigc.model.resolve.wishes.loose.loose_lead import Caused, Joints, Left, LooseLead
from rigc.model.scope import LOOSE_LEAD
from rigc.model.things import AnyThing
from rigc.syntax.nodes import Word


def right_sides(left: Left, joints: Joints) -> Caused:
    """One finding for each chain of which leads join the right sides of pairs that it joins by their left sides alone."""
    for found in _by_chain(left, joints):
        yield [lead for lead, _ in found], _told(found)


def _by_chain(left: Left, joints: Joints) -> list[list[tuple[LooseLead, Word]]]:
    """The leads between the right sides of two stereo pairs that a `->` of a chain joins by their left sides; each with its arrow, by chains."""
    arrows = {
        hop.stop.span: (at, hop.link)
        for at, chain in enumerate(joints.chains)
        for hop in chain.path.hops
        if hop.link.text == "->"
    }
    found: dict[int, list[tuple[LooseLead, Word]]] = {}
    for lead in left.values():
        start, end = _left_of(joints.things, lead.start), _left_of(joints.things, lead.end)
        mono = None if start is None or end is None else joints.connections.get((start, end))
        if mono is not None and not mono.stereo and mono.span in arrows:
            at, arrow = arrows[mono.span]
            found.setdefault(at, []).append((lead, arrow))
    return [found[at] for at in sorted(found)]


def _left_of(things: Mapping[str, AnyThing], right: Port) -> Port | None:
    pair = next((pair for pair in things[right.thing].pairs if pair[1] == right.jack), None)
    return None if pair is None else Port(right.thing, pair[0])


def _told(right: list[tuple[LooseLead, Word]]) -> Diagnostic:
    """One finding for all hops of a chain that are written as mono, while leads are stated for both sides."""
    leads, arrows = zip(*right, strict=True)
    marks = [lead.mark for lead in leads]
    hops = "this hop" if len(arrows) == 1 else f"these {len(arrows)} hops"
    return LOOSE_LEAD.at(
        arrows[0].span,
        f"`->` joins the left sides alone, and {joined(marks)} {'joins' if len(marks) == 1 else 'join'} the right sides: "
        f"{joined(f'{lead.start} to {lead.end}' for lead in leads)}",
        subject=tuple(marks),
        label="one lead, of the left side",
        also=(Label(leads[0].span, "the right side"),),
        mends=(Mend(f"write `=>` at {hops}: stereo", tuple(Replace(arrow.span, "=>") for arrow in arrows)),),
        help=f"delete {joined(marks)} if the right side is not used",
    )
