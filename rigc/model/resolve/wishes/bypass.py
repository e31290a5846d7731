"""Bypass plans as stated -> from an output to an input, with the sound."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from rigc.diagnostics.diagnostic import Label
from rigc.model.jacks import Port
from rigc.model.resolve.context import Context
from rigc.model.resolve.ports import IN, Ports
from rigc.model.rig import BypassPlan
from rigc.model.scope import UNCLEAR
from rigc.model.ways.reached import reached
from rigc.model.wishes import Connection
from rigc.syntax import nodes


def bypass_plans(context: Context, ports: Ports, connections: Iterable[Connection]) -> tuple[BypassPlan, ...]:
    """All plans; a finding for each that runs against the sound, or whose jack is of the other direction."""
    onward: dict[str, set[str]] = {}
    for each in connections:
        if each.signal == "audio":
            onward.setdefault(each.start.thing, set()).add(each.end.thing)
    return tuple(plan for node in context.of(nodes.BypassPlan) if (plan := _plan(context, ports, node, onward)))


def _plan(context: Context, ports: Ports, node: nodes.BypassPlan, onward: dict[str, set[str]]) -> BypassPlan | None:
    start, end = ports.thing(node.start.thing), ports.thing(node.end.thing)
    if start is None or end is None:
        return None
    out = ports.jack(start, node.start.jack) if node.start.jack else None
    into = ports.jack(end, node.end.jack) if node.end.jack else None
    if (node.start.jack and out is None) or (node.end.jack and into is None):
        return None
    if _nowhere(context, ports, node, start, end):
        return None
    if _swapped(ports, start, end, onward):
        _against(context, node, out, into)
        return None
    fits = _directed(context, node.start, out, "out"), _directed(context, node.end, into, "in")
    if not all(fits):
        return None
    leaves, enters = ports.audio(start, "out", out, node.start.span), ports.audio(end, "in", into, node.end.span)
    return BypassPlan(leaves, enters, node.text.value, node.span) if leaves is not None and enters is not None else None


def _nowhere(context: Context, ports: Ports, node: nodes.BypassPlan, start: Any, end: Any) -> bool:
    """Whether a plan ends where it begins, and not across a loop, or at what carries no sound; a finding then."""
    lacking = next(
        (
            (stop, thing, word)
            for stop, thing, word in ((node.start, start, "output"), (node.end, end, "input"))
            if not any(ports.candidates(thing, way) for way in IN)
        ),
        None,
    )
    if start is end and not _across_loop(node, start):
        stop, said, help = node.end, f"this bypass begins and ends at '{start.name}'", "name what it goes round to"
    elif lacking is not None:
        stop, said = lacking[0], f"'{lacking[1].name}' has no audio {lacking[2]}, and a bypass carries sound"
        help = f"name a thing with an audio {lacking[2]}"
    else:
        return False
    also = (Label(start.declared if stop is node.start else end.declared, "declared here"),)
    context.report(UNCLEAR.at(stop.span, said, subject=(stop.thing.text,), label="this end", also=also, help=help))
    return True


def _across_loop(node: nodes.BypassPlan, thing: Any) -> bool:
    """Whether it goes from the send of a loop to its return."""
    if node.start.jack is None or node.end.jack is None:
        return False
    return any((loop.send, loop.back) == (node.start.jack.text, node.end.jack.text) for loop in thing.loops)


def _swapped(ports: Ports, start: Any, end: Any, onward: dict[str, set[str]]) -> bool:
    """Whether sound goes from the end to the start only, or only that way round has an output and an input."""
    back, forth = start.name in reached(onward, [end.name]), end.name in reached(onward, [start.name])
    if back or forth:
        return back and not forth
    here, there = ports.candidates(start, "out"), ports.candidates(end, "in")
    turned = ports.candidates(end, "out") and ports.candidates(start, "in")
    return bool(turned) and not (here and there)


def _against(context: Context, node: nodes.BypassPlan, out: Any, into: Any) -> None:
    turned = f'bypass {_named(node.end, into, "out")} -> {_named(node.start, out, "in")} "{node.text.value}"'
    context.report(
        UNCLEAR.at(
            node.span,
            f"this bypass runs from '{node.start}' to '{node.end}', against the sound: its two ends are swapped",
            subject=(node.start.thing.text, node.end.thing.text),
            label="the wrong way round",
            help=f"write first what the sound leaves: {turned}",
        )
    )


def _named(stop: nodes.Stop, jack: Any, direction: str) -> str:
    """The stop with its jack, if that suits the other end of a plan; else the thing alone."""
    return str(stop) if jack is None or jack.role in IN[direction] else stop.thing.text


def _directed(context: Context, stop: nodes.Stop, jack: Any, direction: str) -> bool:
    """Whether a named jack is of the direction in which a plan leaves or enters; a finding where not."""
    if jack is None or jack.role in IN[direction]:
        return True
    word = "leaves from an output" if direction == "out" else "arrives at an input"
    context.report(
        UNCLEAR.at(
            stop.span,
            f"a bypass {word}, and '{Port(stop.thing.text, jack.name)}' is declared as {jack.role}",
            subject=(str(stop), stop.thing.text),
            label=f"an {IN[direction][0]} goes here",
            also=(Label(jack.span, "declared here"),),
            help="name a jack of the other direction, or the thing alone",
        )
    )
    return False
