"""Blocks of instruments and of other sources -> instruments, each with one output jack, and sources with jacks of their own."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, TypeVar

from rigc.diagnostics.diagnostic import Diagnostic
from rigc.diagnostics.mend import Mend, Replace
from rigc.model.jacks import AUDIO_OUT, Connector, Jack, Levels
from rigc.model.resolve.context import Context, Item
from rigc.model.resolve.things.contradictions import check_earth
from rigc.model.resolve.things.jacks import jacks_of, levels_of, pairs_of
from rigc.model.resolve.things.supply import mains_range
from rigc.model.resolve.things.things import AMOUNTS, Laid, battery_of, fuse_of, inherited, papers_of, taken_of_mains
from rigc.model.slips.wrong_quantity import WRONG_QUANTITY
from rigc.model.things import Instrument
from rigc.model.units.measures import CAPACITOR, LEAD, POT_OHM, SHARE
from rigc.source import Span
from rigc.syntax import nodes
from rigc.syntax.nodes.written import rule_of

Block = TypeVar("Block", nodes.Instrument, nodes.SoundSource)


def instruments(context: Context) -> dict[str, Instrument]:
    """All instruments by name; each has one output jack, `out`. Other sources follow, with their own."""
    return {**_instruments(context), **_sources(context)}


def _sources(context: Context) -> dict[str, Instrument]:
    found: dict[str, Instrument] = {}
    for name, block, items, fields in _blocks(context, nodes.SoundSource):
        for item in items:
            if isinstance(item.fact, nodes.SourceKind):
                fields["flags"] = frozenset({item.fact.kind.text})
            elif isinstance(item.fact, nodes.Earth):
                fields["earth"] = item.fact.kind.text
            elif isinstance(item.fact, nodes.Mains):
                fields["mains"] = (*fields.get("mains", ()), mains_range(context, item.fact))
            elif isinstance(item.fact, nodes.Takes):
                fields.update(taken_of_mains(context, item))
            elif isinstance(item.fact, nodes.Fuse):
                fields["fuses"] = (*fields.get("fuses", ()), *fuse_of(context, item))
        jacks = jacks_of(context, items)
        pairs = pairs_of(context, items, jacks)
        context.unsure_if_lost(name)
        title = block.title.value if block.title else ""
        found[name] = Instrument(
            name, title, block.name.span, jacks=jacks, pairs=pairs, active=True, kind="source", **fields
        )
    return found


def _instruments(context: Context) -> dict[str, Instrument]:
    found: dict[str, Instrument] = {}
    for name, block, items, fields in _blocks(context, nodes.Instrument):
        fields["flags"] = frozenset(i.fact.words.text for i in items if isinstance(i.fact, nodes.Flag))
        levels = [levels_of(context, item, (AUDIO_OUT,)) for item in items if isinstance(item.fact, nodes.Level)]
        out = Jack("out", AUDIO_OUT, Connector("ts"), block.name.span, levels=levels[-1] if levels else Levels())
        title = block.title.value if block.title else ""
        found[name] = Instrument(name, title, block.name.span, jacks=(out,), **fields)
    return found


def _blocks(context: Context, kind: type[Block]) -> Iterator[tuple[str, Block, list[Item], dict[str, Any]]]:
    """Each block of a kind with its name, its items, and what both kinds of source say alike."""
    blocks = {node.name.text: node for node in context.of(kind)}
    laid = Laid()
    for name, block in blocks.items():
        items = inherited(context, block, blocks, laid=laid)
        fields: dict[str, Any] = {}
        for item in items:
            _instrument_fact(context, item, fields)
        fields["papers"] = papers_of(context, items)
        check_earth(context, name, items)
        fields["notes"] = tuple(item.fact.text.value for item in items if isinstance(item.fact, nodes.Note))
        yield name, block, items, fields


def _tone_turned(fact: nodes.Tone) -> Diagnostic | None:
    """`tone 22 nF 500 kohm`: the capacitor before the resistance."""
    one, other = fact.resistance, fact.capacitor
    units = [each.own_unit.text for each in (one, other) if each is not None and each.own_unit is not None]
    if other is None or len(units) < 2 or not (units[0].endswith("F") and units[1].endswith(("ohm", "Ω", "Ω"))):
        return None
    return WRONG_QUANTITY.at(
        Span(one.span.source, one.span.start, other.span.end),
        f"the capacitor '{one.span.text}' stands before the resistance '{other.span.text}'",
        label="the resistance goes first",
        mends=(
            Mend(
                f"write tone {other.span.text} {one.span.text}",
                (Replace(one.span, other.span.text), Replace(other.span, one.span.text)),
            ),
        ),
    )


def _instrument_fact(context: Context, item: Item, fields: dict[str, Any]) -> None:
    fact, known = item.fact, item.provenance
    if (rule := rule_of(type(fact))) in AMOUNTS:
        field, measure = AMOUNTS[rule]
        fields[field] = context.amount(fact.amount, measure, known)
    elif isinstance(fact, nodes.Volume):
        fields["volume_ohm"] = context.amount(fact.amount, POT_OHM, known)
        fields["volume_setting"] = context.amount(fact.setting, SHARE, known)
    elif isinstance(fact, nodes.Tone):
        if (turned := _tone_turned(fact)) is not None:
            context.report(turned)
            return
        fields["tone_ohm"] = context.amount(fact.resistance, POT_OHM, known)
        fields["tone_nf"] = context.amount(fact.capacitor, CAPACITOR, known)
        fields["tone_setting"] = context.amount(fact.setting, SHARE, known)
    elif isinstance(fact, nodes.GuitarLead | nodes.PlainLead):
        which = "lead" if isinstance(fact, nodes.GuitarLead) else "plain"
        fields[f"{which}_mm"] = context.amount(fact.length, LEAD, known)
        fields[f"{which}_cable"] = context.scopes["cable"].find(fact.cable, (), "a cable")
    elif isinstance(fact, nodes.Battery):
        fields["battery"] = battery_of(context, item)
    elif isinstance(fact, nodes.Active):
        fields["active"] = True
