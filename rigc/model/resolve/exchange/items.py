"""Statements of a rig, a unit and its substitute -> those statements that go on holding, and a line for each that does not."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from rigc.model.resolve.exchange.jacks import jack_words
from rigc.model.things import Unit
from rigc.record import Record
from rigc.syntax import nodes
from rigc.syntax.nodes import Node, Word

_MIDI_LINK = (("midi out", "midi thru"), ("midi in",))
_CONTROL_LINK = (("expression out", "control out"), ("expression in", "control in"))


class Counterparts(Record):
    """Unit `out`, its substitute `into`, the jack of `into` for each jack of `out`, and which words name `out`."""

    out: Unit
    into: Unit
    jacks: dict[str, str]
    named: Callable[[Word], bool]

    def lost(self, end: Any) -> bool:
        """Whether a stop or endpoint names a jack of `out` that has no counterpart."""
        return end is not None and self.named(end.thing) and end.jack is not None and end.jack.text not in self.jacks

    def said(self, node: Node) -> str:
        """A statement as it is told: its first line."""
        return str(node).split("\n")[0].removesuffix(" {")


def kept(node: Any, parts: Counterparts, tell: Callable[[str], None]) -> Any | None:
    """A statement or an item of a block, less what `into` can't do; None where nothing of it is left."""
    by = parts.into.name
    if isinstance(node, nodes.LoopHolds | nodes.LoopEmpty):
        if parts.named(node.switcher) and not _has_loop(parts.into, node.number):
            tell(f"{parts.said(node)}: '{by}' has no loop {node.number}")
            return None
    elif isinstance(node, nodes.Blend):
        if parts.named(node.name) and not parts.into.loops:
            tell(f"{parts.said(node)}: '{by}' has no loops to blend")
            return None
    elif isinstance(node, nodes.PresetLoops):
        return _preset_loops(node, parts, tell)
    elif isinstance(node, nodes.Feed):
        return _feed(node, parts, tell)
    elif isinstance(node, nodes.MidiLink | nodes.ControlLink):
        return _link(node, parts, tell, _MIDI_LINK if isinstance(node, nodes.MidiLink) else _CONTROL_LINK)
    elif isinstance(node, nodes.Channel | nodes.Program):
        if parts.named(node.unit) and _hears(parts.out) and not _hears(parts.into):
            tell(f"{parts.said(node)}: '{by}' has no MIDI input")
            return None
    elif isinstance(node, nodes.SpareUnit):
        if node.name.text == by:
            tell(f"{parts.said(node)}: '{by}' is on the board now")
            return None
    elif isinstance(node, nodes.Setting):
        if parts.named(node.unit) and not _turns(node.knob.value, parts):
            tell(f"{parts.said(node)}: '{by}' has no such knob")
            return None
    else:
        return _at_jacks(node, parts, tell)
    return node


def _at_jacks(node: Any, parts: Counterparts, tell: Callable[[str], None]) -> Any | None:
    """Statements that name a jack."""
    ends = {
        nodes.Lead: ("start", "end"),
        nodes.Expected: ("point",),
        nodes.GroundLift: ("at",),
        nodes.PresetLine: ("at",),
    }.get(type(node), ())
    for field in ends:
        end = getattr(node, field)
        if parts.lost(end):
            jack = parts.out.jack(end.jack.text)
            what = jack_words(jack) if jack is not None else "such jack"
            tell(f"{parts.said(node)}: '{parts.into.name}' has no {what} for '{end}'")
            return None
    return node


def _has_loop(unit: Unit, number: Word) -> bool:
    return number.text.isdigit() and unit.loop(int(number.text)) is not None


def _preset_loops(node: nodes.PresetLoops, parts: Counterparts, tell: Callable[[str], None]) -> Any | None:
    if node.switcher is None or not parts.named(node.switcher):
        return node
    there = tuple(word for word in node.loops if _has_loop(parts.into, word))
    gone = [word.text for word in node.loops if word not in there]
    if gone:
        tell(f"{parts.said(node)}: '{parts.into.name}' has no loop {', '.join(gone)}")
    return node.replace(loops=there) if there else None


def _feed(node: nodes.Feed, parts: Counterparts, tell: Callable[[str], None]) -> Any | None:
    if parts.into.powered or not any(map(parts.named, node.units)):
        return node
    tell(f"{parts.said(node)}: '{parts.into.name}' takes no power; tie that lead back")
    left = tuple(word for word in node.units if not parts.named(word))
    how = None if len(left) == 1 and node.how is not None and node.how.text == "shared" else node.how
    return node.replace(units=left, how=how) if left else None


def _link(node: Any, parts: Counterparts, tell: Callable[[str], None], roles: Any) -> Any | None:
    """A MIDI or control link; a jack that was clear without a name gets one where it no longer is."""
    for field, fitting in zip(("start", "end"), roles, strict=True):
        end = getattr(node, field)
        if not parts.named(end.thing):
            continue
        mine = [jack.name for jack in parts.out.jacks if jack.role in fitting]
        name = end.jack.text if end.jack is not None else mine[0] if len(mine) == 1 else ""
        if name not in parts.jacks:
            tell(
                f"{parts.said(node)}: '{parts.into.name}' has no {' or '.join(fitting).replace('midi', 'MIDI')} for it"
            )
            return None
        node = node.replace(**{field: end.replace(jack=Word(name, end.span))})
    return node


def _hears(unit: Unit) -> bool:
    return any(jack.role == "midi in" for jack in unit.jacks)


def _turns(knob: str, parts: Counterparts) -> bool:
    """Whether the substitute has that knob, too; not judged where neither unit says which knobs it has."""
    return all(spot.name != knob for spot in parts.out.knobs) or any(spot.name == knob for spot in parts.into.knobs)
