"""Presets, songs, channels, tests, spares, as-built facts, field notes and accepted findings, as stated."""

from __future__ import annotations

from typing import Any

from rigc.model.jacks import Port
from rigc.model.quantities import CURRENT, LENGTH, SHARE, TEMPO, VOLTAGE, factor
from rigc.model.records import Accept, AsBuilt, BuiltLead, Expected, FieldNote, Reading, Spare
from rigc.model.resolve.context import Context
from rigc.model.resolve.leads import known_mark
from rigc.model.resolve.ports import Ports
from rigc.model.scope import UNCLEAR, UNKNOWN, twice
from rigc.model.wishes import Channel, Preset, Song
from rigc.syntax import nodes
from rigc.syntax.nodes import Word

UNITS = ("unit", "amp", "desk")


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
    named: dict[str, list[Any]] = {"on": [], "off": [], "programs": [], "floors": []}
    tempo, notes = None, []
    scope = context.scopes["thing"]
    for item in node.items:
        if isinstance(item, nodes.PresetLoops):
            loops += _preset_loops(context, ports, item)
        elif isinstance(item, nodes.PresetOn | nodes.PresetOff):
            which = named["on" if isinstance(item, nodes.PresetOn) else "off"]
            which += [(name, word.span) for word in item.units if (name := scope.find(word, UNITS, "a unit"))]
        elif isinstance(item, nodes.Program):
            program, unit = context.count(item.number, "program", 0, 128), scope.find(item.unit, UNITS, "a unit")
            if program is not None and unit is not None:
                named["programs"].append((unit, program, item.span))
        elif isinstance(item, nodes.PresetVolume):
            floor, unit = context.amount(item.amount, SHARE), scope.find(item.unit, UNITS, "a unit")
            if floor is not None and unit is not None:
                named["floors"].append((unit, floor))
        elif isinstance(item, nodes.Tempo):
            tempo = context.amount(item.amount, TEMPO)
        elif isinstance(item, nodes.Note):
            notes.append(item.text.value)
    title = node.title.value if node.title else ""
    lists = {key: tuple(value) for key, value in named.items()}
    return Preset(number, title, tuple(loops), **lists, tempo_bpm=tempo, notes=tuple(notes), span=node.span)


def _preset_loops(context: Context, ports: Ports, item: nodes.PresetLoops) -> list[tuple[str | None, int, Any]]:
    switcher = None
    if item.switcher is not None:
        thing = ports.thing(item.switcher, "a switcher")
        switcher = thing.name if thing is not None else None
    numbers = [(context.count(word, "loop number", 1, 99), word.span) for word in item.loops]
    return [(switcher, number, span) for number, span in numbers if number is not None]


def songs(context: Context, known: dict[int, Preset]) -> tuple[Song, ...]:
    """All songs in order."""
    found = []
    for node in context.of(nodes.Song):
        fields: dict[str, Any] = {"preset": None, "tempo_bpm": None, "tuning": "", "settings": (), "notes": ()}
        for item in node.items:
            if isinstance(item, nodes.SongPreset):
                fields["preset"] = _song_preset(context, item, known)
            elif isinstance(item, nodes.Tempo):
                fields["tempo_bpm"] = context.amount(item.amount, TEMPO)
            elif isinstance(item, nodes.Tuning):
                fields["tuning"] = item.text.value
            elif isinstance(item, nodes.Setting):
                unit = context.scopes["thing"].find(item.unit, UNITS, "a unit")
                hour = context.count(item.hour, "hour of the clock", 1, 12)
                if unit is not None and hour is not None:
                    fields["settings"] = (*fields["settings"], (unit, item.knob.value, hour))
            elif isinstance(item, nodes.Note):
                fields["notes"] = (*fields["notes"], item.text.value)
        found.append(Song(node.title.value, **fields, span=node.span))
    return tuple(found)


def _song_preset(context: Context, item: nodes.SongPreset, known: dict[int, Preset]) -> int | None:
    number = context.count(item.number, "preset number", 0, 9999)
    if number is not None and number not in known:
        numbers = ", ".join(map(str, known)) or "none"
        context.report(
            UNKNOWN.at(
                item.number.span,
                f"no preset {number} is declared",
                label=f"declared are {numbers}",
                help=f"declare preset {number}, or correct the number",
            )
        )
    return number


def channels(context: Context) -> tuple[tuple[Channel, ...], str | None]:
    """MIDI channels in order, and who is master."""
    found: dict[str, Channel] = {}
    master: str | None = None
    scope = context.scopes["thing"]
    for block in context.of(nodes.MidiBlock):
        for node in block.items:
            if isinstance(node, nodes.Master):
                master = scope.find(node.unit, UNITS, "a unit")
            elif isinstance(node, nodes.Channel):
                unit = scope.find(node.unit, UNITS, "a unit")
                number = context.count(node.number, "MIDI channel", 1, 16)
                first = context.count(node.first, "first program number", 0, 1) if node.first else None
                if unit is None or number is None:
                    continue
                if unit in found:
                    context.report(
                        twice(f"the channel of '{unit}'", node.unit, Word("", found[unit].span), "delete one of them")
                    )
                found[unit] = Channel(unit, number, first, node.deliberate is not None, node.span)
    return tuple(found.values()), master


def tests(
    context: Context, ports: Ports
) -> tuple[tuple[Expected, ...], tuple[Reading, ...], tuple[tuple[int, str], ...]]:
    """Expected readings, readings taken, and upkeep as (every so many shows, what)."""
    expected: list[Expected] = []
    readings: list[Reading] = []
    upkeep: list[tuple[int, str]] = []
    for block in context.of(nodes.TestsBlock):
        for node in block.items:
            if isinstance(node, nodes.Every):
                number = context.count(node.number, "number of shows", 1, 9999)
                if number is not None:
                    upkeep.append((number, node.task.value))
            elif isinstance(node, nodes.Expected | nodes.Reading):
                test = context.count(node.number, "test number", 1, 99)
                point, amount = _point(ports, node.point), _reading(context, node.amount)
                if test is None or point is None or amount is None:
                    continue
                if isinstance(node, nodes.Expected):
                    expected.append(Expected(test, point, amount, node.span))
                else:
                    readings.append(Reading(node.date.text, test, point, amount, node.who.value, node.span))
    return tuple(expected), tuple(readings), tuple(upkeep)


def _point(ports: Ports, end: nodes.Endpoint) -> str | None:
    thing = ports.thing(end.thing, "a thing of this rig")
    if thing is None:
        return None
    outlets = [outlet.name for outlet in getattr(thing, "outlets", ())]
    if end.jack is None or end.jack.text in outlets:
        return str(end)
    return str(Port(thing.name, end.jack.text)) if ports.jack(thing, end.jack) else None


def _reading(context: Context, amount: nodes.Amount) -> Any:
    unit = amount.unit.text if amount.unit else "V"
    try:
        measure = CURRENT if factor(unit, "mA") is not None else VOLTAGE
        if factor(unit, "V") is None and factor(unit, "mA") is None:
            return _other_reading(context, amount)
    except LookupError:
        measure = VOLTAGE
    return context.amount(amount, measure)


def _other_reading(context: Context, amount: nodes.Amount) -> Any:
    from rigc.model.quantities import DURATION, GAIN, IMPEDANCE, LEVEL, PERCENT

    unit = amount.unit.text if amount.unit else ""
    for measure in (IMPEDANCE, DURATION, GAIN, LEVEL, PERCENT):
        if unit == measure.unit or (measure.unit not in ("dB", "dBu", "%") and factor(unit, measure.unit) is not None):
            return context.amount(amount, measure)
    return context.amount(amount, VOLTAGE)


def spares(context: Context) -> tuple[Spare, ...]:
    """Spares carried."""
    found = []
    for block in context.of(nodes.SparesBlock):
        for node in block.items:
            if not isinstance(node, nodes.SpareLead | nodes.SparePlug | nodes.SpareThing):
                continue
            count = context.count(node.number, "number of spares", 1, 999)
            bag = node.bag.value if node.bag else ""
            length = context.amount(node.length, LENGTH) if isinstance(node, nodes.SpareLead) else None
            if isinstance(node, nodes.SpareLead):
                what = f"{node.signal} lead"
            elif isinstance(node, nodes.SparePlug):
                what = f"plug {context.scopes['plug'].find(node.plug, (), 'a plug kind') or ''}".strip()
            else:
                what = node.what.value
            if count is not None:
                found.append(Spare(count, what, length, bag, node.span))
    return tuple(found)


def as_built(context: Context, marks: dict[str, Word], changes: tuple[int, ...]) -> tuple[AsBuilt, ...]:
    """What differs on the built board."""
    found = []
    for block in context.of(nodes.AsBuilt):
        leads: list[BuiltLead] = []
        swaps: list[Any] = []
        done: list[int] = []
        for node in block.items:
            if isinstance(node, nodes.BuiltLead):
                length = context.amount(node.length, LENGTH)
                plugs = (node.plugs.first.text, node.plugs.second.text) if node.plugs else None
                if known_mark(context, node.mark, marks) and length is not None:
                    date, by = node.date.text if node.date else "", node.who.value if node.who else ""
                    leads.append(BuiltLead(node.mark.text, length, plugs, date, by, node.span))
            elif isinstance(node, nodes.Swap):
                note = context.count(node.note, "field note number", 1, 9999) if node.note else None
                out = context.scopes["thing"].find(node.out, UNITS, "a unit")
                into = context.scopes["thing"].find(node.into, UNITS, "a unit")
                if out is not None and into is not None:
                    swaps.append((out, into, note))
            elif isinstance(node, nodes.Done):
                done += [number for word in node.changes if (number := _change(context, word, changes)) is not None]
        found.append(AsBuilt(block.letter.text, tuple(leads), tuple(swaps), tuple(done), block.span))
    return tuple(found)


def _change(context: Context, word: Word, changes: tuple[int, ...]) -> int | None:
    number = context.count(word, "change number", 1, 9999)
    if number is None or number in changes:
        return number
    context.report(
        UNKNOWN.at(
            word.span,
            f"the rig block states no change {number}",
            label=f"stated are {', '.join(map(str, changes)) or 'none'}",
            help=f"state it in the rig block: change {number} design TEXT",
        )
    )
    return None


def field_notes(context: Context) -> tuple[FieldNote, ...]:
    """Field notes in order."""
    found: dict[int, FieldNote] = {}
    for node in context.of(nodes.FieldNote):
        number = context.count(node.number, "field note number", 1, 9999)
        if number is None:
            continue
        if number in found:
            context.report(
                twice(
                    f"field note {number}", node.number, Word("", found[number].span), "give one of them another number"
                )
            )
        folded = node.state is not None and node.state.text == "folded"
        by = node.who.value if node.who else ""
        found[number] = FieldNote(number, node.date.text, node.text.value, by, folded, node.span)
    return tuple(found.values())


def accepts(context: Context) -> tuple[Accept, ...]:
    """Accepted findings; what they are about, a thing, a lead or the rig itself, must exist."""
    found = []
    rigs = {node.name.text for node in context.of(nodes.Rig)}
    for node in context.of(nodes.Accept):
        target: str | None = None
        if isinstance(node.target, nodes.LeadMark):
            target = node.target.mark.text
        elif node.target is not None:
            target = str(node.target)
            name = node.target.thing
            families = [scope for scope in context.scopes.values() if name.text in scope.declared]
            if not families and name.text not in rigs:
                context.scopes["thing"].find(name, (), "what the finding is about")
                continue
        if not node.reason.value.strip() or not node.who.value.strip():
            context.report(
                UNCLEAR.at(
                    node.span,
                    f"{node.rule} is accepted without a reason or a name",
                    label="empty",
                    help="write why it may stay, and who says so",
                )
            )
            continue
        found.append(
            Accept(node.rule.text, target, node.reason.value, node.who.value, node.date.text, node.span, node.rule.span)
        )
    return tuple(found)
