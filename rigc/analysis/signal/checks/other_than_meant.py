"""A line says what is meant of the way of sound, and it is not so: an order that the chains do not have, a feedback without a way back, a
mute behind which nothing is heard, a bypass that goes round nothing.

Why it matters: the sheets print it as meant, and whoever trusts them looks at the wrong place when it is silent or howls.
What to do: correct the line to what the chains say, or the chains to the line; else delete it.
Source: arithmetic on the stated chains.
"""

from __future__ import annotations

import json
from collections.abc import Iterator

from rigc.analysis.signal.audio_graph import AudioGraph
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level
from rigc.diagnostics.mend import Delete, Mend, Replace
from rigc.model.jacks import Port
from rigc.model.rig import BypassPlan, Intent, Rig
from rigc.model.ways.jack_use import with_audio

KIND = Kind(
    "other-than-meant",
    Level.WARNING,
    __doc__,
    "an order, a feedback, a mute and a bypass that are stated as meant are so on the stated chains",
    "arithmetic on the stated chains",
)


def other_than_meant(rig: Rig, graph: AudioGraph) -> Iterator[Diagnostic]:
    """One finding for each such line of units that are wired up."""
    wired = {port.thing for port in with_audio(rig)}
    for intent in rig.intents:
        if intent.unit not in wired or (intent.kind == "order" and intent.word not in wired):
            continue
        if intent.kind == "order":
            yield from _order(rig, graph, intent)
        elif intent.kind == "feedback" and not _comes_back(rig, graph, intent.unit):
            message = f"'{intent.unit}' is said to feed back, and no sound that leaves it comes back to it"
            yield _told(intent, message, (intent.unit,))
        elif intent.kind == "mute" and _mutes_nothing(rig, graph, intent.unit):
            message = f"'{intent.unit}' is said to mute the rig, and no sound goes through it to an end"
            yield _told(intent, message, (intent.unit,))
    for plan in rig.bypass_plans:
        if _goes_round_nothing(graph, plan):
            message = f"the bypass from {plan.start} to {plan.end} goes round nothing: one lead joins the two"
            yield _told(plan, message, (plan.start.thing, plan.end.thing))


def _order(rig: Rig, graph: AudioGraph, intent: Intent) -> Iterator[Diagnostic]:
    first, second = _ports(rig, intent.unit), _ports(rig, intent.word)
    if graph.after(first) & second:
        return
    if graph.after(second) & first:
        text = f" {json.dumps(intent.text, ensure_ascii=False)}" if intent.text else ""
        turned = f"order {intent.word} before {intent.unit}{text}"
        message = f"'{intent.unit}' is said to stand before '{intent.word}', and the sound comes to it behind that"
        yield _told(
            intent, message, (intent.unit, intent.word), Mend(f"write `{turned}`", (Replace(intent.span, turned),))
        )
    else:
        message = f"'{intent.unit}' is said to stand before '{intent.word}', and no sound goes from one to the other"
        yield _told(intent, message, (intent.unit, intent.word))


def _ports(rig: Rig, name: str) -> frozenset[Port]:
    return frozenset(Port(name, jack.name) for jack in rig.units[name].jacks if jack.audio)


def _comes_back(rig: Rig, graph: AudioGraph, name: str) -> bool:
    return any(port in graph.after(graph.onward.get(port, ())) for port in _ports(rig, name))


def _mutes_nothing(rig: Rig, graph: AudioGraph, name: str) -> bool:
    """Whether what plays is heard, but by no way through this unit."""
    ends = frozenset(port for unit in rig.units.values() if unit.ends for port in _ports(rig, unit.name))
    plays = [Port(each.name, jack.name) for each in rig.instruments.values() for jack in each.jacks]
    heard = graph.after(plays)
    through = graph.after(_ports(rig, name) & heard)
    return bool(heard & ends) and not through & ends


def _goes_round_nothing(graph: AudioGraph, plan: BypassPlan) -> bool:
    behind = graph.after([plan.start])
    between = {port.thing for port in behind & graph.before([plan.end])} - {plan.start.thing, plan.end.thing}
    return plan.end in behind and not between


def _told(said: Intent | BypassPlan, message: str, subject: tuple[str, ...], *mends: Mend) -> Diagnostic:
    away = Mend(f"delete `{said.span.text}`", (Delete(said.span),))
    return KIND.at(said.span, message, subject=subject, label="not so", mends=(*mends, away))


CHECK = other_than_meant
