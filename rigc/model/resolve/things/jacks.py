"""Jack statements of a block -> jacks with places and levels; runs such as `s1..s8` spread evenly from first to last."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import partial
from typing import Any

from rigc.diagnostics.mend import Mend, Replace
from rigc.diagnostics.near import nearest
from rigc.model.fact import Fact, Quantity, Spread
from rigc.model.jacks import AUDIO_IN, AUDIO_OUT, Connector, InternalPath, Jack, Levels, LoopJacks, Phantom
from rigc.model.resolve.context import Context, Item
from rigc.model.resolve.things.contradictions import check_contacts, check_levels, check_phantom
from rigc.model.resolve.things.jack_directions import in_one_pair, is_audio, is_loop, is_pair, is_way
from rigc.model.scope import SAID_TWICE, UNKNOWN, corrected, twice
from rigc.model.slips.one_unit import of_one_unit
from rigc.model.slips.wrong_quantity import WRONG_QUANTITY
from rigc.model.units.measures import (
    BARREL,
    BYPASSED_OHM,
    INPUT_OHM,
    LEAD,
    LEVEL,
    LOAD_OHM,
    OFFSET,
    OUTPUT_OHM,
    TRACK_OHM,
    UP,
    VOLTAGE,
)
from rigc.source import Span
from rigc.syntax import nodes
from rigc.syntax.nodes import Word

RUN = r"(.*?)(\d{1,9})"
APPLIANCE_INLETS = ("C6", "C8", "C14", "C16", "C18", "C20")


def connector_of(context: Context, node: Any) -> Connector:
    """The connector that a statement names."""
    if isinstance(node, nodes.Barrel):
        outer, inner = context.shared_values(BARREL, node.outer, node.inner)
        if 0 < outer <= inner:
            _report_turned(context, node, outer == inner)
        return Connector("barrel", outer, inner)
    if isinstance(node, nodes.Appliance):
        return appliance_inlet(context, node.kind)
    return Connector(node.kind.text if isinstance(node, nodes.Connector) else str(node))


def appliance_inlet(context: Context, kind: Word) -> Connector:
    """The mains inlet of that number; a finding where there is none."""
    if kind.text not in APPLIANCE_INLETS:
        context.report(
            UNKNOWN.at(
                kind.span,
                f"'{kind.text}' is no appliance inlet of IEC 60320 that rigc knows",
                label="an inlet's number goes here",
                help=f"one of {', '.join(APPLIANCE_INLETS)}; a connector's number is one less than its inlet's",
            )
        )
    return Connector(kind.text)


def _report_turned(context: Context, node: nodes.Barrel, alike: bool) -> None:
    """A barrel larger inside than outside, with its numbers the other way round; or one of two sizes that are alike."""
    one, other = node.outer, node.inner
    if alike:
        context.report(
            WRONG_QUANTITY.at(
                node.span,
                f"'{node}' is as large inside as outside",
                label="outer x inner",
                help="measure both: the inner size is that of the hole",
            )
        )
        return
    edits = (
        (Replace(one.number.span, other.number.text), Replace(other.number.span, one.number.text))
        if one.unit is None
        else (Replace(one.span, str(other)), Replace(other.span, str(one)))
    )
    context.report(
        WRONG_QUANTITY.at(
            node.span,
            f"'{node}' is larger inside than outside",
            label="outer x inner",
            mends=(Mend("write the outer size of the barrel first", edits),),
        )
    )


_LONGEST_RUN = 200


def run(context: Context, names: nodes.Names) -> list[str]:
    """The names of `s1..s8`; the single name otherwise."""
    first = names.first.text
    if names.last is None:
        if dashed := re.fullmatch(r"([a-z]+)(\d+)-(?:\1)?(\d+)", first):
            _dashed(context, names, f"{dashed[1]}{dashed[2]}..{dashed[1]}{dashed[3]}")
            numbers = range(int(dashed[2]), int(dashed[3]) + 1)  # what uses them is judged by what was meant
            return [f"{dashed[1]}{number}" for number in numbers[:_LONGEST_RUN]] or [first]
        return [first]
    start, end = re.fullmatch(RUN, first), re.fullmatch(RUN, names.last.text)
    if start is not None and end is not None and start[1] == end[1] and 0 < int(start[2]) - int(end[2]) < _LONGEST_RUN:
        right = f"{names.last}..{first}"
        context.report(
            WRONG_QUANTITY.at(
                names.span,
                f"'{names}' runs from the higher to the lower",
                label="the lower first",
                mends=(Mend(f"write {right}", (Replace(names.span, right),)),),
            )
        )
        start, end = end, start
    if start is not None and end is not None and start[1] == end[1] and int(end[2]) - int(start[2]) >= _LONGEST_RUN:
        context.report(
            WRONG_QUANTITY.at(
                names.span,
                f"'{names}' are {int(end[2]) - int(start[2]) + 1} names; a run has at most {_LONGEST_RUN}",
                label="too long a run",
                help=f"write several lines of at most {_LONGEST_RUN} each",
            )
        )
        context.jacks_unsure = True
        return [first]
    if start is None or end is None or start[1] != end[1] or not 0 <= int(end[2]) - int(start[2]) < _LONGEST_RUN:
        context.report(
            WRONG_QUANTITY.at(
                names.span,
                f"'{names}' is no run of numbered names",
                label="from a lower to a higher number, with the same letters before it",
                help="write for example s1..s8; jacks whose names bear no numbers have a line each",
            )
        )
        context.jacks_unsure = True
        return [first]
    return [f"{start[1]}{number}" for number in range(int(start[2]), int(end[2]) + 1)]


def _dashed(context: Context, names: nodes.Names, meant: str) -> None:
    """`o1-o4` would be one name, and three outlets would be missing."""
    context.report(
        WRONG_QUANTITY.at(
            names.span,
            f"'{names}' would be the name of one alone: a run of numbered names has two dots",
            label="two dots go here",
            mends=(Mend(f"write {meant}", (Replace(names.span, meant),)),),
        )
    )


def spread(context: Context, location: nodes.Location | None, count: int, provenance: Any) -> list[dict[str, Any]]:
    """Side, offset, height and bushing of each of `count` jacks in a run."""
    if location is None:
        return [{} for _ in range(count)]
    facts = context.shared(OFFSET, location.offset, location.last, provenance=provenance)
    height = context.amount(location.height, UP, provenance)
    bushing = location.bushing.text if location.bushing else None
    at_one = len(facts) == 2 and facts[0] is not None and facts[1] is not None and facts[0].value == facts[1].value
    if (location.last is None or at_one) and count > 1:
        context.report(
            WRONG_QUANTITY.at(
                location.span,
                f"{count} jacks can't all lie at one place",
                label="one place for a run",
                help="write from where to where, for example rear 50..302 mm",
            )
        )
    first, last = facts[0], facts[-1]
    found = []
    for number in range(count):
        offset = first
        if first is not None and last is not None and count > 1:
            offset = _between(first, last, number / (count - 1), location.span)
        found.append({"side": location.side.text, "offset_mm": offset, "height_mm": height, "bushing": bushing})
    return found


def _between(first: Quantity, last: Quantity, part: float, span: Span) -> Quantity:
    """The place of a jack of a run, `part` of the way from the first to the last; it is off by what these are off by."""

    def there(one: float, other: float) -> float:
        return float(f"{one + (other - one) * part:.12g}")

    value, typed, off = there(first.value, last.value), "", None
    if first.spread is not None and last.spread is not None:
        ends = (first.spread, last.spread)
        least, most = there(ends[0].least, ends[1].least), there(ends[0].most, ends[1].most)
        typed = ends[0].typed if ends[0].typed == ends[1].typed else f"from {least:g} to {most:g} mm"
        off = Spread(least, most, typed)
    return Fact(value, f"{value:g} mm {typed}".rstrip(), span, first.provenance, off, first.measure)


def jacks_of(context: Context, items: list[Item], listens: bool = False) -> tuple[Jack, ...]:
    """All jacks of a block, with levels and bypassed impedances laid in; a name used twice is a finding. What `listens` may be headphones,
    of which an input has few ohms, also where the line that says so can't be read."""
    found: dict[str, Jack] = {}
    worn = listens or any(isinstance(item.fact, nodes.Headphones) for item in items)
    for item in items:
        for jack in context.of_all_alike(item.fact, item.provenance, partial(_jacks, context, item, worn), worn):
            if jack.name in found and not any(
                each.kind is SAID_TWICE and each.span is item.fact.span for each in context.findings
            ):
                context.report(
                    twice(
                        f"the jack '{jack.name}'",
                        Word(jack.name, jack.span),
                        Word(jack.name, found[jack.name].span),
                        "rename one of them",
                    )
                )
            found[jack.name] = jack
    lay_levels(context, items, found)
    for item in items:
        fact = item.fact
        if isinstance(fact, nodes.Impedance):
            bypassed = context.amount(fact.amount, BYPASSED_OHM, item.provenance)
            for name in _audio_named(context, found, fact.jacks, "an impedance"):
                found[name] = found[name].replace(bypassed_ohm=bypassed)
        elif isinstance(fact, nodes.Phantom):
            phantom = _phantom(context, item)
            for name in _audio_named(context, found, fact.jacks, "phantom power"):
                check_phantom(context, fact, found[name])
                found[name] = found[name].replace(phantom=phantom)
        elif isinstance(fact, nodes.JackLift):
            position = fact.position.text if fact.position else "unknown"
            for name in _audio_named(context, found, fact.jacks, "a ground lift"):
                found[name] = found[name].replace(lift=position)
    return tuple(found.values())


def _phantom(context: Context, item: Item) -> Phantom:
    fact, how = item.fact, item.fact.how.text
    volts = context.amount(fact.voltage, VOLTAGE, item.provenance)
    if (how in ("gives", "needs")) != (fact.voltage is not None):
        told = "so many volts" if fact.voltage is None else "no voltage"
        context.report(
            WRONG_QUANTITY.at(
                fact.span,
                f"a jack that {how} phantom power says {told}" if fact.voltage is None else f"`{how}` bears {told}",
                label="the voltage is missing" if fact.voltage is None else "a voltage too many",
                help=f"write `phantom {fact.jacks} {how} 48 V`"
                if fact.voltage is None
                else f"write `phantom {fact.jacks} {how}`",
            )
        )
    return Phantom(how, volts, fact.span)


def lay_levels(context: Context, items: list[Item], jacks: dict[str, Any]) -> None:
    """Gives each jack (by name) the levels that a `level` statement states of it."""
    for item in items:
        if isinstance(item.fact, nodes.Level):
            names = _audio_named(context, jacks, item.fact.jacks, "a level")
            levels = levels_of(context, item, [jacks[name].role for name in names])
            for name in names:
                jacks[name] = jacks[name].replace(levels=levels)


def levels_of(context: Context, item: Item, roles: Sequence[str]) -> Levels:
    """The levels of a `level` statement on jacks of these roles."""
    fact, before = item.fact, len(context.findings)
    levels = Levels(
        *(
            context.amount(amount, LEVEL, item.provenance)
            for amount in (fact.nominal, fact.peak, fact.maximum, fact.sensitivity)
        )
    )
    context.findings[before:] = of_one_unit(context.findings[before:])
    check_levels(context, levels, roles)
    return levels


def _jacks_named(context: Context, jacks: dict[str, Jack], names: nodes.Names) -> list[str]:
    return [name for name in run(context, names) if _jack_named(context, jacks, Word(name, names.span))]


def _audio_named(context: Context, jacks: dict[str, Jack], names: nodes.Names, what: str) -> list[str]:
    """The jacks of a run, of which `what` is said; a finding where sound goes through none of them."""
    named = _jacks_named(context, jacks, names)
    return [name for name in named if is_audio(context, jacks[name], names.span, what)]


def _jacks(context: Context, item: Item, worn: bool) -> list[Jack]:
    fact, provenance = item.fact, item.provenance
    check_contacts(context, fact)
    if isinstance(fact, nodes.Input | nodes.Output):
        names = run(context, fact.names)
        role = AUDIO_IN if isinstance(fact, nodes.Input) else AUDIO_OUT
        carries = fact.carries.text if fact.carries else None
        taken = LOAD_OHM if worn or carries == "speaker" else INPUT_OHM
        impedance = context.amount(fact.impedance, taken if role == AUDIO_IN else OUTPUT_OHM, provenance)
        places = spread(context, fact.location, len(names), provenance)
        return [
            Jack(
                name,
                role,
                Connector(fact.jack.text),
                fact.names.span,
                impedance_ohm=impedance,
                carries=carries,
                **place,
            )
            for name, place in zip(names, places, strict=True)
        ]
    if isinstance(fact, nodes.Inlet | nodes.MidiJack | nodes.Expression | nodes.ControlJack | nodes.Usb):
        place = spread(context, fact.location, 1, provenance)[0]
        return [_other_jack(context, fact, provenance).replace(**place)]
    return []


def _other_jack(context: Context, fact: Any, provenance: Any) -> Jack:
    name, span = fact.name.text, fact.name.span
    if isinstance(fact, nodes.Inlet):
        captive = context.amount(fact.captive.length, LEAD, provenance) if fact.captive else None
        return Jack(name, "inlet", connector_of(context, fact.connector), span, captive_mm=captive)
    if isinstance(fact, nodes.MidiJack):
        form = fact.form.form.text if fact.form else None
        return Jack(name, f"midi {fact.direction.text}", Connector(fact.jack.text), span, midi_form=form)
    if isinstance(fact, nodes.Expression):
        track = context.amount(fact.track, TRACK_OHM, provenance)
        kind = Connector(fact.jack.text)
        taper = fact.taper.text if fact.taper else None
        return Jack(
            name, f"expression {fact.direction.text}", kind, span, wiper=fact.wiper.text, track_ohm=track, taper=taper
        )
    if isinstance(fact, nodes.ControlJack):
        contact = fact.contact.text if fact.contact else None
        return Jack(name, f"control {fact.direction.text}", Connector(fact.jack.text), span, contact=contact)
    return Jack(name, "usb", Connector("usb"), span)


def _jack_named(context: Context, jacks: dict[str, Jack], name: Word) -> bool:
    if name.text in jacks:
        return True
    context.jacks_unsure = True
    near = {"input": "in", "output": "out"}.get(name.text, "")
    near = near if near in jacks else nearest(name.text, jacks)
    mends = corrected(name, near) if near and name.span.text == name.text else ()  # not within a run
    context.report(
        UNKNOWN.at(
            name.span,
            f"this block declares no jack '{name.text}'",
            subject=(name.text,),
            label=f"did you mean '{near}'?" if near else "no such jack here",
            help="" if mends else f"declare the jack '{name.text}', or name one of {', '.join(jacks) or 'its jacks'}",
            mends=mends,
        )
    )
    return False


def pairs_of(context: Context, items: list[Item], jacks: tuple[Any, ...]) -> tuple[tuple[str, str], ...]:
    """Stereo pairs, left first."""
    by_name = {jack.name: jack for jack in jacks}
    facts = [item.fact for item in items if isinstance(item.fact, nodes.StereoPair)]
    found: dict[tuple[str, str], nodes.StereoPair] = {}
    for fact in facts:
        if (
            _jack_named(context, by_name, fact.left)
            and _jack_named(context, by_name, fact.right)
            and is_pair(context, by_name[fact.left.text], by_name[fact.right.text], fact.span)
            and in_one_pair(context, fact, found)
        ):
            found[fact.left.text, fact.right.text] = fact
    context.jacks_unsure |= len(found) < len(facts)
    return tuple(found)


def loops_of(context: Context, items: list[Item], jacks: tuple[Jack, ...]) -> tuple[LoopJacks, ...]:
    """The loops of a switcher, blender or amp with their send and return jacks."""
    by_name = {jack.name: jack for jack in jacks}
    found: list[LoopJacks] = []
    for fact in (item.fact for item in items):
        if not isinstance(fact, nodes.LoopJacks):
            continue
        first = context.count(fact.first, "loop number", 1, 99)
        last = context.count(fact.last, "loop number", 1, 99) if fact.last else first
        sends, backs = run(context, fact.sends), run(context, fact.returns)
        count = 0 if first is None or last is None else last - first + 1
        if first is not None and last is not None and not count == len(sends) == len(backs):
            context.report(
                WRONG_QUANTITY.at(
                    fact.span,
                    f"{max(count, 0)} loops, {len(sends)} sends and {len(backs)} returns do not match",
                    label="as many sends and returns as loops",
                    help="write runs of equal length, for example loop 1..8 send s1..s8 return r1..r8",
                )
            )
        count = min(len(sends), len(backs))  # what uses them is judged by what was meant
        known = [_jack_named(context, by_name, Word(name, fact.sends.span)) for name in sends[:count]]
        known += [_jack_named(context, by_name, Word(name, fact.returns.span)) for name in backs[:count]]
        used = (*sends[:count], *backs[:count])
        if all(known) and is_loop(context, fact, [by_name[name] for name in used], count):
            mix = fact.mix.text if fact.mix else None
            lowest = min(first or 1, last or 1)
            found += [LoopJacks(lowest + at, sends[at], backs[at], mix, fact.span) for at in range(count)]
        else:
            context.jacks_unsure = True
    return tuple(found)


def paths_of(context: Context, items: list[Item], jacks: tuple[Jack, ...]) -> tuple[InternalPath, ...]:
    """Stated paths inside a unit."""
    by_name = {jack.name: jack for jack in jacks}
    facts = [item.fact for item in items if isinstance(item.fact, nodes.InternalPath)]
    return tuple(
        InternalPath(fact.start.text, fact.end.text, fact.how.text, fact.span)
        for fact in facts
        if _jack_named(context, by_name, fact.start)
        and _jack_named(context, by_name, fact.end)
        and is_way(context, by_name[fact.start.text], by_name[fact.end.text], fact.span)
    )
