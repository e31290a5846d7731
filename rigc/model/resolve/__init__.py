"""Statements as written -> the rig they describe, every name and quantity checked. `resolve` is the one entry."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from rigc.diagnostics.diagnostic import Diagnostic, Label
from rigc.diagnostics.mend import Delete, Mend
from rigc.model.deck import Place
from rigc.model.resolve import head
from rigc.model.resolve.apart import two_things
from rigc.model.resolve.context import Context
from rigc.model.resolve.deck import deck, hints
from rigc.model.resolve.deck.inside_deck import check_lanes, check_panels, check_rooms, check_through
from rigc.model.resolve.ports import Ports
from rigc.model.resolve.record import built, readings, records
from rigc.model.resolve.things import instruments, panels, stock, things
from rigc.model.resolve.things.known_things import KnownThings
from rigc.model.resolve.wishes import bypass, leads, performance, power, signal
from rigc.model.resolve.wishes.cable_signals import cable_signals
from rigc.model.rig import Intent, Rig
from rigc.model.scope import MISUSED, TAKEN, UNKNOWN, article
from rigc.model.slips.empty_texts import empty_texts
from rigc.model.slips.said_again import said_once
from rigc.model.slips.unknown_names import each_name_once, with_idle_name
from rigc.model.slips.way_slips import DEAD_END, Ways, way_slips
from rigc.model.things import ENDS, Unit
from rigc.record import Record
from rigc.source import Span
from rigc.syntax import nodes
from rigc.syntax.nodes import Node, Word

__all__ = ["FAMILIES", "KnownThings", "Resolved", "mentions", "resolve", "resolved"]

FAMILIES: dict[type[Node], tuple[str, str]] = {
    nodes.Instrument: ("thing", "instrument"),
    nodes.SoundSource: ("thing", "source"),
    nodes.Amp: ("thing", "amp"),
    nodes.Listener: ("thing", "listener"),
    nodes.Desk: ("thing", "desk"),
    nodes.Unit: ("thing", "unit"),
    nodes.Supply: ("thing", "supply"),
    nodes.MainsStrip: ("thing", "mains strip"),
    nodes.Panel: ("thing", "panel"),
    nodes.Scenario: ("scenario", "scenario"),
    nodes.Cable: ("cable", "cable"),
    nodes.Plug: ("plug", "plug kind"),
    nodes.Strip: ("strip", "strip"),
    nodes.Deck: ("deck", "deck"),
    nodes.Case: ("case", "case"),
}


class Resolved(Record):
    """The rig, or None where no rig block is declared; what is wrong with names and quantities; and by family (`thing`, `cable` ...)
    every place at which a statement names something declared, but for `like` and `accept`."""

    rig: Rig | None
    findings: tuple[Diagnostic, ...]
    mentioned: dict[str, tuple[Word, ...]]


def resolved(
    statements: tuple[Node, ...], reserved: frozenset[str], end: Span, known: KnownThings | None = None
) -> Resolved:
    """What the statements say. `reserved` are the grammar's words, `end` is where a finding about something that is nowhere points to. What is
    `known` of the same blocks is not made again, and what is made is known from then on."""
    once, again = said_once(statements)
    made, slips = _resolved(once, reserved, end, known), (*again, *empty_texts(once))
    return made.replace(findings=(*slips, *made.findings)) if slips else made


def _resolved(
    statements: tuple[Node, ...], reserved: frozenset[str], end: Span, known: KnownThings | None = None
) -> Resolved:
    kept, doubles = _declared(statements, reserved, end)
    context = Context(kept, reserved, end)
    rig = _rig(context, known or KnownThings())
    told = (_of_another_kind(context, finding) for finding in _not_of(doubles, context.findings))
    mentioned = {family: tuple(scope.mentioned) for family, scope in context.scopes.items()}
    once = each_name_once((*doubles, *told))
    return Resolved(rig, with_idle_name(once, context.scopes["thing"], end.source), mentioned)


def resolve(
    statements: tuple[Node, ...], reserved: frozenset[str], end: Span
) -> tuple[Rig | None, tuple[Diagnostic, ...]]:
    """The rig and the findings of `resolved`."""
    made = resolved(statements, reserved, end)
    return made.rig, made.findings


def mentions(statements: tuple[Node, ...], reserved: frozenset[str], end: Span) -> dict[str, tuple[Word, ...]]:
    """The mentions of `resolved`, those of doubled statements too."""
    return _resolved(statements, reserved, end).mentioned


def _rig(context: Context, known: KnownThings) -> Rig | None:
    statements, end = context.statements, context.end
    for statement in statements:
        family = FAMILIES.get(type(statement))
        if family is not None:
            context.scopes[family[0]].declare(family[1], statement.name)  # type: ignore[attr-defined]
    top = head.head(context)
    units, supplies, strips = things.things(context, known)
    guitars, boards = instruments.instruments(context), panels.panels(context)
    everything: dict[str, Any] = {**guitars, **units, **supplies, **strips, **boards}
    ports = Ports(context, everything)
    decks = deck.decks(context)
    sound = signal.Signal(context, ports).read()
    intents = _intents(context)
    slips = way_slips(_ways(sound, ports, intents))
    if context.jack_said_twice:  # one of the two may have been the output
        slips = tuple(slip for slip in slips if slip.kind is not DEAD_END)
    for slip in slips:
        context.report(slip)
    fed = power.power(context, supplies, units, guitars)
    wired = leads.Leads(context, ports, sound.connections)
    lead_wishes = wired.read(fed, frozenset((*context.unsure, *(name for slip in slips for name in slip.subject))))
    reels = stock.stock(context, known)
    known.settle()
    cable_signals(context, lead_wishes.leads, tuple(sound.connections.values()), reels, supplies)
    check_lanes(context, decks, lead_wishes.lanes)
    check_through(context, decks, lead_wishes.leads)
    check_panels(context, decks, boards)
    places, (stated_rooms, later_rooms) = deck.places(context, decks), hints.rooms(context)
    off_board = deck.off_board(context, places)
    check_rooms(context, decks, stated_rooms)
    _only_bodies(context, units, places)
    presets = performance.presets(context, ports)
    channels, master = performance.channels(context, ports)
    expected, taken, upkeep = readings.tests(context, ports, wired.marks)
    changes = tuple(change.number for change in top.changes) if top else ()
    fields: dict[str, Any] = {
        "head": top,
        "scenarios": head.scenarios(context, ports),
        "instruments": guitars,
        "units": units,
        "supplies": supplies,
        "mains_strips": strips,
        "panels": boards,
        "decks": decks,
        "cases": deck.cases(context),
        "stock": reels,
        "chains": tuple(sound.chains),
        "loops": tuple(sound.loops),
        "blends": tuple(sound.blends),
        "connections": tuple(sound.connections.values()),
        "gaps": tuple(ports.gaps),
        "bypass_plans": bypass.bypass_plans(context, ports, sound.connections.values()),
        "intents": intents,
        "presets": presets,
        "songs": performance.songs(context, ports),
        "channels": channels,
        "midi_master": master,
        "power": fed,
        "places": places,
        "off_board": off_board,
        "hints": hints.hints(context, decks, off_board),
        "reserved_rooms": stated_rooms,
        "later_rooms": later_rooms,
        "weights": hints.weights(context),
        "joins": _joins(context, wired),
        "lead_wishes": lead_wishes,
        "mounting": leads.mounting(context),
        "expected": expected,
        "readings": taken,
        "upkeep": upkeep,
        "spares": records.spares(context, _sounding(sound)),
        "as_built": built.as_built(context, wired.marks, changes, top),
        "field_notes": records.field_notes(context),
        "accepts": records.accepts(context),
        "notes": tuple(node.text.value for node in _notes(context)),
        "end": end,
    }
    return Rig(**fields) if top is not None else None


def _only_bodies(context: Context, units: dict[str, Unit], places: dict[str, Place]) -> None:
    """A finding for each amp, desk or listener on the deck that states no body: most stand beside it."""
    for place in places.values():
        thing = units.get(place.thing)
        if thing is not None and thing.kind in ENDS and thing.width_mm is None:
            context.report(
                MISUSED.at(
                    place.span,
                    f"'{thing.name}' is {article(thing.kind)} and states no body; what has a place on the deck has a body",
                    subject=(thing.name,),
                    label="a place on the deck",
                    also=(Label(thing.declared, "declared here"),),
                    mends=(Mend(f"delete `{place.span.text}`: it stands beside the board", (Delete(place.span),)),),
                    help=f"if it stands on the deck, measure it and write its body into the block of '{thing.name}': "
                    "body ___ x ___ x ___ mm",
                )
            )


def _declared(
    statements: tuple[Node, ...], reserved: frozenset[str], end: Span
) -> tuple[tuple[Node, ...], tuple[Diagnostic, ...]]:
    """The statements without second declarations of a name, and a finding for each of those."""
    trial = Context(statements, reserved, end)
    kept = []
    for statement in statements:
        family = FAMILIES.get(type(statement))
        if family is None or trial.scopes[family[0]].declare(family[1], statement.name):  # type: ignore[attr-defined]
            kept.append(statement)
    return tuple(kept), tuple(finding for finding in trial.findings if finding.kind is TAKEN)


def _of_another_kind(context: Context, finding: Diagnostic) -> Diagnostic:
    """An unknown name that is declared, but among things of another family, says as what."""
    name = finding.subject[0] if finding.kind is UNKNOWN and len(finding.subject) == 1 else ""
    homes = [scope.declared[name] for scope in context.scopes.values() if name in scope.declared]
    before, goes, wanted = finding.message.partition("; ")
    if not homes or not wanted.endswith("goes here") or not before.startswith("nothing declares"):
        return finding
    kind, first = homes[0]
    told: Diagnostic = finding.replace(
        message=f"'{name}' is {article(kind)}{goes}{wanted}",
        label=wanted,
        also=(*finding.also, Label(first.span, "declared here")),
    )
    return told


def _not_of(doubles: tuple[Diagnostic, ...], findings: list[Diagnostic]) -> Iterator[Diagnostic]:
    """The findings without those that only say that one of two things of a name is not the other, or stands at the other's place."""
    names = {name for double in doubles for name in double.subject}
    for finding in findings:
        if finding.kind not in (MISUSED, TAKEN) or not names & set(finding.subject):
            yield finding


def _notes(context: Context) -> list[nodes.Note]:
    found = []
    for statement in context.statements:
        if isinstance(statement, nodes.Note):
            found.append(statement)
        elif isinstance(
            statement,
            nodes.Rig | nodes.MidiBlock | nodes.ControlBlock | nodes.PowerBlock | nodes.PlaceBlock | nodes.LeadsBlock
            | nodes.MountingBlock | nodes.TestsBlock | nodes.SparesBlock | nodes.AsBuilt | nodes.Blend | nodes.AllUnits,
        ):  # fmt: skip
            found += [item for item in statement.items if isinstance(item, nodes.Note)]
    return found


def _ways(sound: signal.Signal, ports: Ports, intents: tuple[Intent, ...]) -> Ways:
    return Ways(
        ports.things,
        tuple(sound.chains),
        tuple(sound.loops),
        tuple(sound.blends),
        tuple(sound.connections.values()),
        tuple(ports.gaps),
        frozenset(intent.unit for intent in intents if intent.kind == "feedback"),
    )


def _intents(context: Context) -> tuple[Intent, ...]:
    found = []
    scope = context.scopes["thing"]
    for node in context.statements:
        if isinstance(node, nodes.Mute):
            if unit := scope.find(node.unit, ("unit",), "a unit"):
                found.append(Intent("mute", unit, node.how.text, "", node.span))
        elif isinstance(node, nodes.Feedback):
            if unit := scope.find(node.unit, ("unit",), "a unit"):
                found.append(Intent("feedback", unit, "", node.text.value if node.text else "", node.span))
        elif isinstance(node, nodes.Order):
            first, second = scope.find(node.first, ("unit",), "a unit"), scope.find(node.second, ("unit",), "a unit")
            if first and second and two_things(context, node.first, node.second, "units"):
                found.append(Intent("order", first, second, node.text.value if node.text else "", node.span))
    return tuple(found)


def _sounding(sound: signal.Signal) -> set[str]:
    """What stands in a chain, a loop or a blend."""
    ways = [chain.stops for chain in sound.chains] + [use.stops for use in sound.loops]
    ways += [path.stops for blend in sound.blends for path in blend.paths]
    return {stop.thing for stops in ways for stop in stops}


def _joins(context: Context, wired: leads.Leads) -> tuple[tuple[str, str, tuple[str, ...]], ...]:
    found = []
    for node in context.of(nodes.Join):
        first, second = (context.scopes["deck"].find(word, (), "a deck") for word in (node.first, node.second))
        known = [leads.known_mark(context, word, wired.marks) for word in node.leads]
        if first and second and all(known) and two_things(context, node.first, node.second, "decks"):
            found.append((first, second, tuple(word.text for word in node.leads)))
    return tuple(found)
