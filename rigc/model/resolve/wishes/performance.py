"""Presets, songs and MIDI channels as stated: what is played, and what the units listen to."""

from __future__ import annotations

from typing import Any

from rigc.diagnostics.diagnostic import Label, Level
from rigc.diagnostics.mend import Delete, Mend
from rigc.diagnostics.near import bare, nearest, spelled_alike
from rigc.diagnostics.wording import listed
from rigc.model.resolve.context import Context
from rigc.model.resolve.ports import Ports
from rigc.model.scope import MISUSED, SAID_TWICE, UNCLEAR, UNKNOWN, corrected_text, stated_twice, twice
from rigc.model.things import UNITS, Unit
from rigc.model.units.measures import SHARE, TEMPO
from rigc.model.wishes import Channel, Preset, Song, SwitchLine
from rigc.source import Span
from rigc.syntax import nodes
from rigc.syntax.nodes import Word

_FEW_KNOBS = 4


def presets(context: Context, ports: Ports) -> dict[int, Preset]:
    """All presets by number."""
    found: dict[int, Preset] = {}
    for node in context.of(nodes.Preset):
        number = context.count(node.number, "preset number", 0, 9999)
        if number is None:
            continue
        if number in found:
            context.report(
                twice(f"preset {number}", node.number, Word("", found[number].span), "give one of them another number")
            )
        found[number] = _preset(context, ports, node, number)
    return found


def _preset(context: Context, ports: Ports, node: nodes.Preset, number: int) -> Preset:
    loops: list[Any] = []
    named: dict[str, list[Any]] = {"on": [], "off": [], "programs": [], "lines": [], "floors": []}
    tempo, notes = None, []
    scope = context.scopes["thing"]
    for item in node.items:
        if isinstance(item, nodes.PresetLoops):
            loops += _preset_loops(context, ports, item)
        elif isinstance(item, nodes.PresetOn | nodes.PresetOff):
            which = named["on" if isinstance(item, nodes.PresetOn) else "off"]
            which += [(name, word.span) for word in item.units if (name := scope.find(word, UNITS, "a unit"))]
        elif isinstance(item, nodes.Program):
            program, unit = (
                context.count(item.number, "program", 0, 128),
                scope.find(item.unit, (*UNITS, "source"), "a unit or a source"),
            )
            if program is not None and unit is not None:
                _hears(context, ports, unit, item)
                named["programs"].append((unit, program, item.span))
        elif isinstance(item, nodes.PresetLine):
            at = ports.of_roles(item.at, ("control out",), "jack that switches")
            if at is not None:
                text = item.text.value if item.text else ""
                named["lines"].append(SwitchLine(at, item.position.text, text, item.span))
        elif isinstance(item, nodes.PresetVolume):
            floor, treadle = context.amount(item.amount, SHARE), ports.unit(item.unit, "a unit")
            if floor is not None and treadle is not None and _has_treadle(context, treadle, item.unit):
                named["floors"].append((treadle.name, floor))
        elif isinstance(item, nodes.Tempo):
            tempo = context.amount(item.amount, TEMPO)
        elif isinstance(item, nodes.Note):
            notes.append(item.text.value)
    _on_or_off(context, number, dict(named["on"]), dict(named["off"]))
    title = node.title.value if node.title else ""
    lists = {key: tuple(value) for key, value in named.items()}
    return Preset(number, title, tuple(loops), **lists, tempo_bpm=tempo, notes=tuple(notes), span=node.span)


def _on_or_off(context: Context, number: int, on: dict[str, Span], off: dict[str, Span]) -> None:
    """A finding for each unit that one preset has both on and off."""
    for name in sorted(on.keys() & off.keys()):
        context.report(
            SAID_TWICE.at(
                off[name],
                f"preset {number} has '{name}' on and off",
                subject=(str(number), name),
                label="off here",
                also=(Label(on[name], "on here"),),
                help="delete one of them",
            )
        )


def _has_treadle(context: Context, thing: Unit, name: Word) -> bool:
    """Whether a unit is one whose treadle sets a volume; a finding where not."""
    if thing.treadle_mm is not None or thing.track_ohm is not None or not thing.jacks:  # not described yet
        return True
    context.report(
        MISUSED.at(
            name.span,
            f"'{name.text}' has no treadle; a floor is the least that a volume treadle lets through",
            subject=(name.text,),
            label="a volume treadle goes here",
            also=(Label(thing.declared, "declared here, without `treadle` and `track`"),),
            help=f"name a volume treadle, or state in the block of '{name.text}': track ___ kohm",
            level=Level.WARNING,
        )
    )
    return False


def _preset_loops(context: Context, ports: Ports, item: nodes.PresetLoops) -> list[tuple[str | None, int, Any]]:
    switcher = None
    if item.switcher is not None:
        thing = ports.switcher(item.switcher, "a switcher")
        switcher = thing.name if thing is not None else None
    numbers = [(context.count(word, "loop number", 1, 99), word.span) for word in item.loops]
    return [(switcher, number, span) for number, span in numbers if number is not None]


def songs(context: Context, ports: Ports) -> tuple[Song, ...]:
    """All songs in order."""
    found: list[Song] = []
    titles: dict[str, Span] = {}
    for node in context.of(nodes.Song):
        before = titles.setdefault(bare(node.title.value), node.span)
        if before is not node.span:
            title = Word(node.title.value, node.title.span)
            context.report(
                twice(f'the song "{title}"', title, Word("", before), "put both into one block, or correct the title")
            )
        fields: dict[str, Any] = {
            "preset": None,
            "tempo_bpm": None,
            "tuning": "",
            "settings": (),
            "notes": (),
            "preset_span": None,
        }
        for item in node.items:
            if isinstance(item, nodes.SongPreset):
                fields["preset"] = context.count(item.number, "preset number", 0, 9999)
                fields["preset_span"] = item.number.span
            elif isinstance(item, nodes.Tempo):
                fields["tempo_bpm"] = context.amount(item.amount, TEMPO)
            elif isinstance(item, nodes.Tuning):
                fields["tuning"] = item.text.value
            elif isinstance(item, nodes.Setting):
                unit = ports.unit(item.unit, "a unit")
                hour = context.count(item.hour, "hour of the clock", 1, 12)
                if unit is not None:
                    _knob(context, unit, item.knob)
                if unit is not None and hour is not None:
                    fields["settings"] = (*fields["settings"], (unit.name, item.knob.value, hour))
            elif isinstance(item, nodes.Note):
                fields["notes"] = (*fields["notes"], item.text.value)
        found.append(Song(node.title.value, **fields, span=node.span))
    return tuple(found)


def _knob(context: Context, thing: Unit, named: nodes.Text) -> None:
    """A finding where a knob is written otherwise than where it is declared."""
    names = [spot.name for spot in thing.knobs]
    right = next((name for name in names if spelled_alike(name, named.value)), None)
    if named.value not in names and right is not None:
        context.report(
            UNKNOWN.at(
                named.span,
                f'\'{thing.name}\' has no knob "{named.value}"; it has one "{right}"',
                subject=(thing.name,),
                label="written otherwise",
                mends=corrected_text(named.span, right),
            )
        )
    elif any(names) and named.value not in names:
        near = nearest(named.value, [name for name in names if name])
        context.report(
            UNKNOWN.at(
                named.span,
                f"'{thing.name}' has no knob \"{named.value}\"",
                subject=(thing.name,),
                label="no such knob",
                also=tuple(
                    Label(spot.span, f'its knob "{spot.name}"') for spot in thing.knobs[:_FEW_KNOBS] if spot.name
                ),
                mends=corrected_text(named.span, near) if near else (),
                help=f'name one of {listed(name for name in names if name)}, or declare it in its block: knob "{named.value}" at ___, ___ mm',
                level=Level.WARNING,
            )
        )


def _hears(context: Context, ports: Ports, unit: str, node: nodes.Program) -> None:
    """A finding for a program of a unit whose jacks are stated, and none of them takes MIDI."""
    thing = ports.things.get(unit)
    jacks = getattr(thing, "jacks", ())
    if not jacks or unit in context.unsure or any(jack.role in ("midi in", "usb") for jack in jacks):
        return
    context.report(
        MISUSED.at(
            node.span,
            f"'{unit}' has no MIDI input, and shall go to program {node.number}",
            subject=(unit,),
            label="nothing tells it so",
            also=(Label(node.unit.span if thing is None else thing.declared, "declared here"),),
            mends=(Mend("delete this line", (Delete(node.span),)),),
            help="declare its jack: midi in midi din; or name the unit that is meant",
            level=Level.WARNING,
        )
    )


def channels(context: Context, ports: Ports) -> tuple[tuple[Channel, ...], str | None]:
    """MIDI channels in order, and who is master."""
    found: dict[str, Channel] = {}
    master: str | None = None
    scope = context.scopes["thing"]
    for block in context.of(nodes.MidiBlock):
        for node in block.items:
            if isinstance(node, nodes.Master):
                master = scope.find(node.unit, (*UNITS, "source"), "a unit or a source")
                if master is not None:
                    _sends(context, ports, node.unit)
            elif isinstance(node, nodes.Channel):
                unit = scope.find(node.unit, (*UNITS, "source"), "a unit or a source")
                number = context.count(node.number, "MIDI channel", 1, 16)
                first = context.count(node.first, "first program number", 0, 1) if node.first else None
                if unit is None or number is None:
                    continue
                if unit in found:
                    context.report(stated_twice(f"the channel of '{unit}'", node.unit, Word("", found[unit].span)))
                found[unit] = Channel(unit, number, first, node.deliberate is not None, node.span)
    return tuple(found.values()), master


def _sends(context: Context, ports: Ports, name: Word) -> None:
    """A finding where the MIDI master has no jack by which it could send."""
    thing = ports.things[name.text]
    if thing.jacks and not any(jack.role in ("midi out", "usb") for jack in thing.jacks):
        able = [each.name for each in ports.things.values() if any(jack.role == "midi out" for jack in each.jacks)]
        context.report(
            UNCLEAR.at(
                name.span,
                f"'{name.text}' is the MIDI master and has no MIDI output",
                subject=(name.text,),
                label="sends nothing",
                also=(Label(thing.declared, "declared here"),),
                help=f"name what sends: {listed(able, 'or')}" if able else f"declare the MIDI output of '{name.text}'",
                level=Level.WARNING,
            )
        )
